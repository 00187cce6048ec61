import type { Craft } from '../../../build/craft.ts';
import { formatQuantity } from '../../../units/formatQuantity.ts';
import type { Finding } from '../../types.ts';
import type { HitReport, HitsReport } from '../airframeData.ts';

const TRADE = 'common practice, no source';
const METHOD = 'docs/method/airframe-facts.md';

/** The way that breaks an arm soonest, and what stands in the way of a blow. */
export function hitFindings(craft: Craft, report: HitsReport): readonly Finding[] {
  return [...weakestWay(craft, report.hits), ...strikes(craft, report.hits), ...exposed(craft, report)];
}

function weakestWay(craft: Craft, hits: readonly HitReport[]): readonly Finding[] {
  const worst = hits
    .filter(({ surface, way }) => surface === 'wood' && way !== 'prop strike')
    .sort((a, b) => b.chance - a.chance)[0];
  if (worst === undefined || worst.chance < 0.5 || worst.breakingSpeed === undefined) return [];
  // Of the weakest arm on grass, as the table beside it has it: it need not be the one that is weakest on wood.
  const onGrass = hits
    .filter(({ way, surface }) => way === worst.way && surface === 'grass')
    .toSorted((a, b) => b.chance - a.chance)[0];
  const grass = onGrass === undefined ? '' : `; on grass ${percent(onGrass.chance)}`;
  return [
    {
      id: 'arm-breaks',
      sheet: 'knocks',
      severity: (onGrass?.chance ?? 0) > 0.5 ? 'risk' : 'note',
      says: `Struck squarely ${said(worst)} on wood at ${speed(worst.speed)}, ${many(worst.chance)} ${worst.arm}s break${grass}.`,
      number: { value: worst.breakingSpeed, limit: worst.speed, quantity: 'speed' },
      remedy:
        craft.frame.construction === 'one-piece plate'
          ? 'Thicker sheet, or separate arms that change in half an hour.'
          : 'Thicker or wider arms, or keep spare ones.',
      source: METHOD,
      ...placeOf(craft, worst.arm),
      parts: ['frame'],
    },
  ];
}

function strikes(craft: Craft, hits: readonly HitReport[]): readonly Finding[] {
  const worst = hits.filter(({ way }) => way === 'prop strike').sort((a, b) => a.reserve - b.reserve)[0];
  if (worst === undefined || worst.reserve >= 1.5) return [];
  return [
    {
      id: 'blade-outlasts-arm',
      sheet: 'knocks',
      severity: worst.reserve < 1 ? 'risk' : 'note',
      says: `A blade of this propeller holds on long enough to load the ${worst.arm} to ${Math.round(100 / worst.reserve)} % of its strength.`,
      number: { value: worst.reserve, limit: 1.5, quantity: 'ratio' },
      remedy: 'Softer propellers that break before the arm does, or stronger arms.',
      source: METHOD,
      ...placeOf(craft, worst.arm),
      parts: ['propellers', 'frame'],
    },
  ];
}

function exposed(craft: Craft, { landsFirst, leadsNose }: HitsReport): readonly Finding[] {
  const findings: Finding[] = [];
  if (landsFirst.what === 'pack') {
    const reach = Math.max(
      ...craft.motors.map(({ place }) => Math.hypot(place.position[0], place.position[1])),
    );
    const askew = Math.round((Math.atan2(landsFirst.lead, reach) * 180) / Math.PI);
    findings.push({
      id: 'pack-lands-first',
      sheet: 'knocks',
      severity: 'risk',
      says: `The pack hangs ${formatQuantity(landsFirst.lead, 'length')} below everything else: coming down within ${askew} degrees of level it lands on its pack, which spares the arms.`,
      number: { value: landsFirst.lead, limit: 0, quantity: 'length' },
      remedy:
        'The pack on top; or a skid or pad under it. A dented lithium pack is not flown or charged again.',
      source: TRADE,
      place: { x: craft.pack.place[0], y: craft.pack.place[1] },
      parts: ['pack'],
    });
  }
  if (leadsNose.what.endsWith('camera') && leadsNose.lead > 0.005) {
    const role = leadsNose.what === 'flying camera' ? 'flying' : 'recording';
    const at = craft.cameras.find((camera) => camera.role === role)?.place;
    findings.push({
      id: 'camera-leads',
      sheet: 'knocks',
      severity: 'note',
      says: `The ${leadsNose.what} stands ${formatQuantity(leadsNose.lead, 'length')} in front of everything else: it takes what comes from ahead.`,
      number: { value: leadsNose.lead, limit: 0, quantity: 'length' },
      remedy: 'A lens guard or soft mount, or the camera further back where the picture allows it.',
      source: TRADE,
      ...(at === undefined ? {} : { place: { x: at[0], y: at[1] } }),
      parts: ['cameras'],
    });
  }
  return findings;
}

function said({ way }: HitReport): string {
  switch (way) {
    case 'flat':
      return 'from below';
    case 'end-on':
      return 'along the arm';
    case 'side-on':
      return 'across the arm';
    case 'from ahead':
      return 'from straight ahead';
    case 'prop strike':
      return 'by a propeller';
  }
}

function placeOf(craft: Craft, name: string): Pick<Finding, 'place'> {
  const arm = craft.frame.arms.find((each) => each.name === name);
  return arm === undefined ? {} : { place: { x: arm.tip[0], y: arm.tip[1] } };
}

const percent = (share: number) =>
  share > 0.995 ? 'nearly all' : share < 0.005 ? 'hardly any' : `${Math.round(100 * share)} %`;
const many = (share: number) => `${percent(share)}${share > 0.995 || share < 0.005 ? '' : ' of'}`;
const speed = (value: number) => formatQuantity(value, 'speed');
