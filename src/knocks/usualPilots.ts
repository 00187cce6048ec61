import type { HitKind, Learning } from './types.ts';

export type KnockPurpose = 'race' | 'freestyle' | 'guarded filming' | 'cruising far' | 'micro';
export type KnockPilot = 'new' | 'some hours' | 'seasoned';

/** All numbers in this file: common practice, no source. They are starting points for the user's own. */
interface Habit {
  readonly first: number;
  readonly settled: number;
  readonly flightsToLearn: number;
  /** Typical speed of a hit in flight [m/s]. */
  readonly hitSpeed: number;
  /** Weights of drops, hits ahead, hits aside and prop strikes. */
  readonly weights: readonly [flat: number, endOn: number, sideOn: number, strike: number];
}

const HABITS: Readonly<Record<KnockPurpose, Habit>> = {
  race: { first: 1.2, settled: 0.35, flightsToLearn: 60, hitSpeed: 13, weights: [2, 4, 2, 4] },
  freestyle: { first: 1, settled: 0.2, flightsToLearn: 60, hitSpeed: 9, weights: [4, 2, 2, 4] },
  'guarded filming': { first: 0.5, settled: 0.05, flightsToLearn: 40, hitSpeed: 4, weights: [3, 2, 2, 1] },
  'cruising far': { first: 0.3, settled: 0.02, flightsToLearn: 40, hitSpeed: 9, weights: [4, 1, 1, 2] },
  micro: { first: 2, settled: 0.8, flightsToLearn: 50, hitSpeed: 4, weights: [3, 3, 3, 3] },
};

const FLIGHTS_BEFORE: Readonly<Record<KnockPilot, number>> = { new: 0, 'some hours': 60, seasoned: 400 };
/** Speed of a craft falling out of a low hover or a lost line [m/s]. */
const DROP_SPEED = 6;
/** Blades meet twigs and grass at any flying speed; it hardly matters to them. */
const STRIKE_SHARE = 0.6;

/** A learning curve to start from, for a purpose and a pilot; pilots of a kind differ by a gamma shape of 3. */
export function usualLearning(purpose: KnockPurpose, pilot: KnockPilot): Learning {
  const { first, settled, flightsToLearn } = HABITS[purpose];
  return { first, settled, flightsToLearn, flightsBefore: FLIGHTS_BEFORE[pilot], pilotShape: 3 };
}

/** Hit kinds to start from: `flat`, `end-on`, `side-on`, `prop strike`. */
export function usualHits(purpose: KnockPurpose): HitKind[] {
  const { hitSpeed, weights } = HABITS[purpose];
  const [flat, endOn, sideOn, strike] = weights;
  return [
    { id: 'flat', weight: flat, medianSpeed: DROP_SPEED, logDeviation: 0.4 },
    { id: 'end-on', weight: endOn, medianSpeed: hitSpeed, logDeviation: 0.5 },
    { id: 'side-on', weight: sideOn, medianSpeed: 0.8 * hitSpeed, logDeviation: 0.5 },
    { id: 'prop strike', weight: strike, medianSpeed: STRIKE_SHARE * hitSpeed, logDeviation: 0.5 },
  ];
}
