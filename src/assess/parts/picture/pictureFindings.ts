import type { Craft } from '../../../build/craft.ts';
import { formatQuantity, withUnit } from '../../../units/formatQuantity.ts';
import type { Finding, Measure } from '../../types.ts';
import type { PictureChange, PictureReport } from '../airframeData.ts';
import { cameraName } from './seenBy.ts';

const TRADE = 'common practice, no source';

/** Half a per mille of a picture is nothing one sees; this much of a recording is seen in every shot. */
export const CLEAR = 5e-4;
const SPOILT = 5e-3;
/** A pilot flies round a propeller at the edge; not round this much. */
const IN_THE_WAY = 0.1;
/** Guards and frame are allowed for up to this. */
const BODY_ALLOWED = 0.01;

/** What stands in the way of one camera, with the smallest change that clears it. */
export function pictureFindings(
  craft: Craft,
  report: PictureReport,
  measures: readonly Measure[],
): readonly Finding[] {
  const placed = craft.cameras[report.camera];
  if (placed === undefined) return [];
  const name = cameraName(craft, report.camera);
  const id = name.replaceAll(' ', '-');
  const place = { x: placed.place[0], y: placed.place[1] };
  const findings: Finding[] = [];
  const bandOf = (measure: string) => measures.find((each) => each.id === measure)?.band;
  const share = (value: number, band = [0.8 * value, 1.2 * value] as const) =>
    formatQuantity(value, 'share', { band });
  if (report.discsTouch > CLEAR) {
    const spoils = report.role === 'recording' ? SPOILT : IN_THE_WAY;
    findings.push({
      id: `${id}-sees-propellers`,
      sheet: 'picture',
      severity: report.discsTouch > spoils ? 'risk' : 'note',
      says: `Propellers stand in ${share(report.discsTouch, bandOf(`${id}-propellers`))} of the picture of the ${name} and take ${share(report.byGroup.discs, bandOf(`${id}-covered`))} of its light.`,
      number: { value: report.discsTouch, limit: CLEAR, quantity: 'share' },
      remedy: clearingWords(report),
      source: TRADE,
      place,
      parts: [`cameras[${report.camera}]`, 'propellers', 'frame'],
    });
  }
  const { guards, arms, frame, antenna, load } = report.byGroup;
  if (guards > BODY_ALLOWED) {
    findings.push({
      id: `${id}-sees-guards`,
      sheet: 'picture',
      severity: 'note',
      says: `Guards cover ${share(guards)} of the picture of the ${name}.`,
      number: { value: guards, limit: BODY_ALLOWED, quantity: 'share' },
      remedy: 'A nose carried forward, a narrower lens, or cropping.',
      source: TRADE,
      place,
      parts: [`cameras[${report.camera}]`, 'frame'],
    });
  }
  const body = Math.max(arms, frame, antenna, load);
  if (body > BODY_ALLOWED) {
    const guessed = craft.build.cameras.some((camera) => camera.place === undefined);
    const what =
      body === arms ? 'an arm' : body === frame ? 'the frame' : body === antenna ? 'an antenna' : 'its load';
    findings.push({
      id: `${id}-sees-itself`,
      sheet: 'picture',
      severity: guessed ? 'note' : 'risk',
      says: `The aircraft's own body, mostly ${what}, covers ${share(body)} of the picture of the ${name}.`,
      number: { value: body, limit: BODY_ALLOWED, quantity: 'share' },
      remedy: guessed
        ? 'Where the cameras stand is our guess: tell their places in the build.'
        : 'Move the camera in front of it; check the places told in the build.',
      source: TRADE,
      place,
      parts: [`cameras[${report.camera}]`, 'frame'],
    });
  }
  return findings;
}

const WORDS = {
  forward: (by: number) => `carry the camera ${millimetres(by)} forward`,
  up: (by: number) => `raise it ${millimetres(by)}`,
  'tilt up': (by: number) => `tilt it ${degrees(by)} further up`,
  'tilt down': (by: number) => `tilt it ${degrees(by)} down`,
  'smaller propellers': (by: number) => `propellers ${millimetres(2 * by)} smaller in diameter`,
} as const;

function clearingWords({ role, discsTouch, clearing, oneSizeDown }: PictureReport): string {
  if (clearing === undefined)
    return 'Carry the camera forward, tilt it up, or look at a layout with the front arms swung aside.';
  const ways = clearing.flatMap(({ change, amount }: PictureChange) =>
    // A size down is told as sizes come.
    amount === undefined || (change === 'smaller propellers' && oneSizeDown?.clears)
      ? []
      : [WORDS[change](amount)],
  );
  if (oneSizeDown?.clears) ways.push('propellers one size smaller');
  if (ways.length === 0) {
    const nose = clearing.find(({ change }) => change === 'forward')?.beyondReach;
    const longer =
      nose === undefined
        ? ''
        : `a frame whose nose carries the lens ${millimetres(nose)} further forward, or `;
    const left =
      role === 'flying' && discsTouch <= IN_THE_WAY
        ? ' Many pilots fly with this much of them in the corners.'
        : '';
    return `No single move within reach of what holds the camera clears it. What does: ${longer}front arms swung further aside.${left}`;
  }
  return `${ways.length > 1 ? 'Any one of these clears it' : 'This clears it'}: ${ways.join('; ')}.`;
}

const millimetres = (length: number) => withUnit(Math.ceil(length * 1000 - 0.05), 'mm');
const degrees = (angle: number) => `${Math.ceil((angle * 180) / Math.PI - 0.05)} degrees`;
