import { hoverThrottleWindowOf, packShareWindow, thrustToWeightWindow } from '../../assess/windows.ts';
import type { Brief, Purpose } from '../../build/schema/brief.ts';
import { usualWants, type Want } from '../wants.ts';
import type { Scale, SoftWant } from './softWants.ts';

/** What flown minutes are worth nothing and worth everything for a purpose [s] (ours: shown and changeable). */
const FLOWN: Readonly<Record<Purpose, readonly [worst: number, best: number]>> = {
  race: [90, 300],
  freestyle: [120, 480],
  micro: [180, 600],
  'guarded filming': [180, 720],
  cruising: [300, 1800],
};

/**
 * The scale a measure is judged on under a brief, where nothing else is said: money from half the
 * budget to all of it, mass from half the limit to all of it, minutes by purpose, trade windows where there
 * are some. Undefined for a measure that has no usual scale.
 */
export function usualScale(measure: string, brief: Brief): Scale | undefined {
  const budget = brief.budget?.currency === brief.currency ? brief.budget.amount : 1500;
  const heaviest = brief.massLimit ?? 1.5;
  const [short, long] = FLOWN[brief.purpose];
  switch (measure) {
    case 'first-flight-cost':
    case 'aircraft-cost':
      return ramp(budget, 0.5 * budget);
    case 'missing-cost':
      return ramp(0.1 * budget, 0);
    case 'all-up-mass':
      return ramp(heaviest, 0.5 * heaviest);
    case 'flown-time':
      return ramp(short, long);
    case 'hover-endurance':
      return ramp(1.5 * short, 2 * long);
    case 'thrust-to-weight':
    case 'thrust-to-weight-at-reserve':
      // What is more than enough costs money and minutes, which are wanted by themselves; too twitchy is the throttle's to tell.
      return enough(thrustToWeightWindow(brief.purpose).low);
    case 'hover-throttle':
      return windowOf(hoverThrottleWindowOf(brief.purpose));
    case 'pack-share':
      return windowOf(packShareWindow(brief.purpose));
    case 'full-throttle-time-to-limit':
      return ramp(0, 30);
    case 'hardest-motor-load':
      return ramp(1.5, 1);
    case 'hover-winding-temperature':
    case 'hover-case-temperature':
      return ramp(373.15, 313.15);
    default:
      return undefined;
  }
}

const ramp = (worst: number, best: number): Scale => ({ kind: 'ramp', worst, best });
const enough = (low: number): Scale => ramp(0.5 * low, low);
const windowOf = ({ low, high }: { readonly low: number; readonly high: number }): Scale => ({
  kind: 'window',
  low,
  high,
});

/** The usual wants of a brief's purpose, each on its usual scale. */
export function usualSoftWants(
  brief: Brief,
  wants: readonly Want[] = usualWants(brief.purpose),
): readonly SoftWant[] {
  return wants.map(({ measure, weight }) => {
    const scale = usualScale(measure, brief);
    if (scale === undefined) throw new RangeError(`wants: ${measure} has no usual scale`);
    return { measure, weight, scale };
  });
}
