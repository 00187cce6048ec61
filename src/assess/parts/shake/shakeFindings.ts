import type { Craft } from '../../../build/craft.ts';
import { formatQuantity } from '../../../units/formatQuantity.ts';
import { wholePercent } from '../../../units/wholePercent.ts';
import type { Finding, Measure } from '../../types.ts';
import type {
  CrossingReport,
  ModeReport,
  ShakePoint,
  ShakeReport,
  StiffeningChange,
} from '../airframeData.ts';
import { FELT } from './respond.ts';
import { kindOf } from './structure.ts';

const TRADE = 'common practice, no source';
const METHOD = 'Campbell diagram, docs/method/airframe-facts.md';
/** Below this the flight controller's own work begins [Hz], and jello is plain to see above this [pixels]. */
const CONTROLLER_BAND = 100;
const JELLO = 1;
/** Worst gyro shake that filters cope with [rad/s]. */
const NOISY = (40 * Math.PI) / 180;
/** Of it, what one wants no more of in hover. */
const CALM = NOISY / 4;
/** How much over the middle of the range counts as ringing. */
const RINGING = 1.3;

/** What rings where, what the gyro and the cameras make of it, and what moves it. */
export function shakeFindings(
  craft: Craft,
  report: ShakeReport,
  measures: readonly Measure[],
  currency: string,
  hoverThrottle?: number,
): readonly Finding[] {
  const told: Told = { report, measures, currency };
  return [
    ...hoverResonance(told, hoverThrottle),
    ...rangesToAvoid(report, hoverThrottle),
    ...lowModes(told),
    ...jello(craft, report),
    ...noise(told),
  ];
}

interface Told {
  readonly report: ShakeReport;
  readonly measures: readonly Measure[];
  /** Of the brief. */
  readonly currency: string;
}

/** A measure as a sentence says it: no finer than its band. */
function measured({ measures }: Told, id: string): { readonly value: number; readonly says: string } {
  const found = measures.find((measure) => measure.id === id);
  if (found === undefined) return { value: 0, says: 'nothing known' };
  const { value, quantity, band } = found;
  return { value, says: formatQuantity(value, quantity, { band }) };
}

function hoverResonance(told: Told, hover: number | undefined): readonly Finding[] {
  const { report } = told;
  const crossing = report.crossings.find(
    ({ avoid, what }) =>
      hover !== undefined && what !== 'motor ripple' && hover >= avoid[0] && hover <= avoid[1],
  );
  if (crossing === undefined || hover === undefined) return [];
  const mode = report.modes[crossing.mode];
  if (mode === undefined) return [];
  const [fresh, nicked] = [measured(told, 'hover-gyro-rate'), measured(told, 'nicked-gyro-rate')];
  return [
    {
      id: 'hover-resonance',
      sheet: 'shake',
      severity: fresh.value > CALM || nicked.value > NOISY ? 'risk' : 'note',
      says: `In hover (${wholePercent(hover)} throttle) ${said(crossing)} meets the frame's ${mode.shape} mode at ${ringsAt(mode)}: the gyro shakes by ${fresh.says}, with one nicked blade by ${nicked.says}.`,
      number: { value: hover, limit: crossing.throttle, quantity: 'share' },
      remedy: wayOut(told, crossing),
      source: METHOD,
      parts: ['frame', 'propellers', 'motors'],
    },
  ];
}

function rangesToAvoid(report: ShakeReport, hover: number | undefined): readonly Finding[] {
  const usual = [...report.response].sort((a, b) => a.gyroTurnRate - b.gyroTurnRate);
  const middle = usual[Math.floor(usual.length / 2)]?.gyroTurnRate ?? 0;
  const others = report.crossings.filter(
    ({ avoid, what, throttle }) =>
      what !== 'motor ripple' &&
      (nearest(report.response, throttle)?.gyroTurnRate ?? 0) > RINGING * middle &&
      !(hover !== undefined && hover >= avoid[0] && hover <= avoid[1]),
  );
  const ranges = merged(others.map(({ avoid }) => avoid)).filter(([, high]) => high > 0.05);
  if (ranges.length === 0) return [];
  const told = ranges.map(([low, high]) => `${wholePercent(low)} to ${wholePercent(high)}`).join(' and at ');
  return [
    {
      id: 'throttle-ranges-that-ring',
      sheet: 'shake',
      severity: 'note',
      says: `The frame rings where the throttle stays at ${told}.`,
      remedy: 'Fly through it rather than in it, and keep fresh, balanced propellers.',
      source: METHOD,
      parts: ['frame', 'propellers'],
    },
  ];
}

function lowModes({ report, currency }: Told): readonly Finding[] {
  const lowest = report.modes.find(({ felt }) => felt > FELT);
  if (lowest === undefined || lowest.frequency >= CONTROLLER_BAND) return [];
  const shift = [...report.changes]
    .map((change) => ({ change, to: kindOf(lowest.shape) === 'upright' ? change.upright : change.sideways }))
    .sort((a, b) => b.to - a.to)[0];
  return [
    {
      id: 'mode-in-controller-band',
      sheet: 'shake',
      severity: 'note',
      says: `The frame's ${lowest.shape} mode rings at ${ringsAt(lowest)}, low enough for the flight controller to answer it.`,
      number: { value: lowest.frequency, limit: CONTROLLER_BAND, quantity: 'frequency' },
      remedy:
        shift === undefined
          ? 'Stiffer or shorter arms.'
          : `${capital(shift.change.what)}: ${formatQuantity(shift.to, 'frequency', { band: bandAt(lowest, shift.to) })}; ${priceOf(shift.change, currency)}.`,
      source: TRADE,
      parts: ['frame', 'flightController'],
    },
  ];
}

function jello(craft: Craft, report: ShakeReport): readonly Finding[] {
  return report.cameras.flatMap((seen): readonly Finding[] => {
    const placed = craft.cameras[seen.camera];
    const worst = Math.max(seen.wobble, seen.nickedWobble);
    if (placed === undefined || worst <= JELLO) return [];
    const fresh = seen.wobble > JELLO;
    return [
      {
        id: `${seen.role}-camera-jello`,
        sheet: 'picture',
        severity: fresh && seen.role === 'recording' ? 'risk' : 'note',
        says: fresh
          ? `Rows of the ${seen.role} camera's picture stand ${seen.wobble.toFixed(1)} pixels of 720 apart in hover: jello.`
          : `One nicked blade gives the ${seen.role} camera ${seen.nickedWobble.toFixed(1)} pixels of 720 of jello in hover.`,
        number: { value: worst, limit: JELLO, quantity: 'pixels' },
        remedy: fresh
          ? 'Balance the propellers, a softer camera mount, a longer exposure by a grey filter.'
          : 'Change a nicked propeller before recording.',
        source: TRADE,
        place: { x: placed.place[0], y: placed.place[1] },
        parts: [`cameras[${seen.camera}]`, 'propellers'],
      },
    ];
  });
}

function noise(told: Told): readonly Finding[] {
  const { report } = told;
  const worst = [...report.response]
    .filter(({ throttle }) => throttle >= 0.1)
    .sort((a, b) => b.gyroTurnRate - a.gyroTurnRate)[0];
  if (worst === undefined || worst.gyroTurnRate <= NOISY) return [];
  return [
    {
      id: 'gyro-noise',
      sheet: 'shake',
      severity: 'note',
      says: `At ${wholePercent(worst.throttle)} throttle the gyro shakes by ${measured(told, 'worst-gyro-rate').says}.`,
      number: { value: worst.gyroTurnRate, limit: NOISY, quantity: 'angularSpeed' },
      remedy: 'Softer rubber under the board, balanced propellers, or a stiffer frame.',
      source: TRADE,
      parts: ['flightController', 'propellers', 'frame'],
    },
  ];
}

/** The lightest change that takes the mode a tenth and more from where the order meets it. */
function wayOut({ report, currency }: Told, crossing: CrossingReport): string {
  const mode = report.modes[crossing.mode];
  if (mode === undefined) return 'Stiffer arms.';
  const kind = kindOf(mode.shape);
  const firstOfKind = report.modes.find(({ shape }) => kindOf(shape) === kind)?.frequency ?? mode.frequency;
  const moving = report.changes
    .map((change) => ({
      change,
      ratio: (kind === 'upright' ? change.upright : change.sideways) / firstOfKind,
    }))
    .filter(({ ratio }) => ratio > 1.1 || ratio < 0.9)
    .sort((a, b) => a.change.mass - b.change.mass)[0];
  const tame = 'fresh, balanced propellers tame it';
  if (moving === undefined)
    return `No small change moves it out: ${tame}; another propeller size or cell count does.`;
  return `${capital(moving.change.what)} moves it to ${formatQuantity(mode.frequency * moving.ratio, 'frequency', { band: bandAt(mode, mode.frequency * moving.ratio) })} (${priceOf(moving.change, currency)}); ${tame}.`;
}

function priceOf({ mass, price }: StiffeningChange, currency: string): string {
  // Sheet is weighed by its plan: good to a tenth.
  const grams = formatQuantity(mass, 'mass', { band: [0.9 * mass, 1.1 * mass] });
  return price === undefined
    ? `${mass < 0 ? '' : '+'}${grams}`
    : `${mass < 0 ? '' : '+'}${grams}, ${price < 0 ? '' : '+'}${formatQuantity(price, 'money', { currency })}`;
}

/** A mode's frequency, no finer than its band. */
const ringsAt = ({ frequency, band }: ModeReport): string => formatQuantity(frequency, 'frequency', { band });

/** The same mode moved elsewhere is known as well in proportion. */
const bandAt = ({ frequency, band: [low, high] }: ModeReport, moved: number): readonly [number, number] => [
  (moved * low) / frequency,
  (moved * high) / frequency,
];

function said({ what, order }: CrossingReport): string {
  return what === 'imbalance' ? 'the propellers’ turning' : `the passing of ${order} blades`;
}

function merged(ranges: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  const result: [number, number][] = [];
  for (const [low, high] of [...ranges].sort((a, b) => a[0] - b[0])) {
    const last = result.at(-1);
    if (last !== undefined && low <= last[1] + 0.01) last[1] = Math.max(last[1], high);
    else result.push([low, high]);
  }
  return result;
}

const nearest = (response: readonly ShakePoint[], throttle: number): ShakePoint | undefined =>
  [...response].sort((a, b) => Math.abs(a.throttle - throttle) - Math.abs(b.throttle - throttle))[0];

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
