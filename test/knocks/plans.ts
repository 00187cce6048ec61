import type { KnockPlan } from '../../src/knocks/types.ts';

/** An invented beginner's freestyle craft of the Gannet Point club; prices and speeds are made up. */
export const beginnerPlan: KnockPlan = {
  flights: 30,
  flightsPerDay: 1.5,
  learning: { first: 0.6, settled: 0.1, flightsToLearn: 40, flightsBefore: 0, pilotShape: 3 },
  hits: [
    { id: 'flat', weight: 4, medianSpeed: 6, logDeviation: 0.4 },
    { id: 'end-on', weight: 2, medianSpeed: 9, logDeviation: 0.5 },
    { id: 'side-on', weight: 2, medianSpeed: 8, logDeviation: 0.5 },
    { id: 'prop strike', weight: 4, medianSpeed: 6, logDeviation: 0.5 },
  ],
  topSpeed: 38,
  parts: [
    {
      id: 'arm',
      price: 9,
      spares: 1,
      benchTime: 1200,
      breaks: [
        { hit: 'flat', median: 14, logDeviation: 0.2, reached: 2 },
        { hit: 'end-on', median: 25, logDeviation: 0.2, reached: 1 },
        { hit: 'side-on', median: 11, logDeviation: 0.2, reached: 1 },
      ],
    },
    {
      id: 'propeller',
      price: 1,
      spares: 12,
      benchTime: 120,
      breaks: ['flat', 'end-on', 'side-on', 'prop strike'].map((hit) => ({
        hit,
        median: 5,
        logDeviation: 0.5,
        reached: 2,
      })),
    },
    {
      id: 'motor',
      price: 22,
      spares: 0,
      benchTime: 2400,
      breaks: [{ hit: 'end-on', median: 24, logDeviation: 0.3, reached: 1 }],
    },
    {
      id: 'camera',
      price: 30,
      spares: 0,
      benchTime: 1800,
      breaks: [{ hit: 'end-on', median: 22, logDeviation: 0.3, reached: 1 }],
    },
    {
      id: 'antenna',
      price: 6,
      spares: 1,
      benchTime: 600,
      breaks: [{ hit: 'flat', median: 9, logDeviation: 0.4, reached: 1 }],
    },
    {
      id: 'pack',
      price: 28,
      spares: 3,
      benchTime: 60,
      breaks: [{ hit: 'flat', median: 16, logDeviation: 0.3, reached: 1 }],
    },
  ],
  order: { days: 6, shipping: 5 },
};

/** Every flight crashes alike with chance p; one part that always breaks. */
export const plainPlan = (p: number, spares: number, flights: number): KnockPlan => ({
  flights,
  flightsPerDay: 2,
  learning: { first: -Math.log(1 - p), settled: -Math.log(1 - p), flightsToLearn: 1, flightsBefore: 0 },
  hits: [{ id: 'hit', weight: 1, medianSpeed: 10, logDeviation: 0 }],
  topSpeed: 100,
  parts: [
    {
      id: 'arm',
      price: 7,
      spares,
      benchTime: 600,
      breaks: [{ hit: 'hit', median: 1, logDeviation: 0.1, reached: 1 }],
    },
  ],
  order: { days: 5, shipping: 4 },
});
