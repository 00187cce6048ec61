import type { Learning } from './types.ts';

/**
 * Chance that each flight ends in a crash, flight 1 first: a hazard that falls exponentially from
 * `first` to `settled` with flights flown, times this pilot's factor; chance = 1 - exp(-hazard).
 * The falling exponential is one of the two usual forms of a learning curve (Heathcote, Brown and
 * Mewhort 2000, Psychonomic Bulletin and Review 7(2)); its numbers are the caller's.
 *
 * @param factor this pilot against the average one, >= 0
 */
export function crashChances(learning: Learning, flights: number, factor = 1): Float64Array {
  const chances = new Float64Array(flights);
  for (let flight = 0; flight < flights; flight++) {
    chances[flight] = 1 - Math.exp(-factor * crashHazard(learning, flight));
  }
  return chances;
}

/** Crashes expected in the flight after so many of the forecast have been flown, by the average pilot. */
export function crashHazard(learning: Learning, flown: number): number {
  const { first, settled, flightsToLearn, flightsBefore } = learning;
  return settled + (first - settled) * Math.exp(-(flightsBefore + flown) / flightsToLearn);
}
