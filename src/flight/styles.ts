import type { Style } from './types.ts';

const source = 'common practice, no source';

/**
 * How people fly, as shares of flying time at a thrust over weight; `throttle: 1` is a punch. Set so that on a
 * usual craft of the kind freestyle lasts about half the hover time, race a quarter to a fifth, and a
 * gentle flight nearly all of it.
 */
export const styles = {
  novice: {
    name: 'gentle novice',
    bins: [
      { share: 0.2, thrustToWeight: 0.8 },
      { share: 0.5, thrustToWeight: 1 },
      { share: 0.25, thrustToWeight: 1.3 },
      { share: 0.05, thrustToWeight: 2 },
    ],
    source,
  },
  filming: {
    name: 'filming',
    bins: [
      { share: 0.15, thrustToWeight: 0.8 },
      { share: 0.5, thrustToWeight: 1 },
      { share: 0.3, thrustToWeight: 1.2 },
      { share: 0.05, thrustToWeight: 1.8 },
    ],
    source,
  },
  cruise: {
    name: 'cruise',
    bins: [
      { share: 0.15, thrustToWeight: 0.9 },
      { share: 0.4, thrustToWeight: 1.1 },
      { share: 0.35, thrustToWeight: 1.3 },
      { share: 0.1, thrustToWeight: 1.8 },
    ],
    source,
  },
  freestyle: {
    name: 'freestyle',
    bins: [
      { share: 0.22, thrustToWeight: 0.3 },
      { share: 0.38, thrustToWeight: 1 },
      { share: 0.2, thrustToWeight: 1.5 },
      { share: 0.13, thrustToWeight: 2.5 },
      { share: 0.05, thrustToWeight: 4 },
      { share: 0.02, throttle: 1 },
    ],
    source,
  },
  race: {
    name: 'race',
    bins: [
      { share: 0.22, thrustToWeight: 1 },
      { share: 0.3, thrustToWeight: 1.6 },
      { share: 0.25, thrustToWeight: 2.5 },
      { share: 0.17, thrustToWeight: 4 },
      { share: 0.06, throttle: 1 },
    ],
    source,
  },
} as const satisfies Record<string, Style>;
