import type { Purpose } from '../build/schema/brief.ts';

/** One thing a builder wants of a build, and how much it counts. The user's to change. */
export interface Want {
  /** Id of a measure. */
  readonly measure: string;
  /** Over the sum of all weights it is the share of the decision. */
  readonly weight: number;
}

/** What a newcomer of a purpose usually weighs (common practice, no source): a start, shown and changeable. */
export function usualWants(purpose: Purpose): readonly Want[] {
  const money = { measure: 'first-flight-cost', weight: 3 };
  const time = { measure: 'flown-time', weight: 2 };
  const lift = { measure: 'thrust-to-weight', weight: 2 };
  const throttle = { measure: 'hover-throttle', weight: 1 };
  const heat = { measure: 'full-throttle-time-to-limit', weight: 1 };
  const even = { measure: 'hardest-motor-load', weight: 0.5 };
  const mass = { measure: 'all-up-mass', weight: 1 };
  switch (purpose) {
    case 'race':
      return [{ ...lift, weight: 4 }, { ...mass, weight: 2 }, money, heat, { ...even, weight: 1 }];
    case 'freestyle':
      return [money, time, lift, throttle, heat, even, mass];
    case 'guarded filming':
      return [money, { ...time, weight: 3 }, throttle, even, mass];
    case 'cruising':
      return [money, { ...time, weight: 5 }, throttle, lift, mass];
    case 'micro':
      return [money, time, lift, { ...mass, weight: 2 }, heat];
  }
}
