import { expect, it } from 'vitest';
import { crashCountChances, crashesOver } from '../../src/knocks/crashCount.ts';

it('after each flight of a pilot who learns nothing: the binomial law (closed form)', () => {
  const p = 0.25;
  const hazard = -Math.log(1 - p);
  const learning = { first: hazard, settled: hazard, flightsToLearn: 10, flightsBefore: 0 };
  const over = crashesOver(learning, 20);
  expect(over).toHaveLength(20);
  for (const [i, { mean }] of over.entries()) expect(mean).toBeCloseTo(p * (i + 1), 10);
  // Cumulative binomial table, n = 20, p = 0.25: P(X <= 1) 0.0243, P(X <= 2) 0.0913, P(X <= 3) 0.2252;
  // P(X <= 7) 0.8982, P(X <= 8) 0.9591 (handbook table, from memory).
  expect(over[19]).toMatchObject({ p10: 3, p90: 8 });
});

it('ends at the law of all flights, pilots differing', () => {
  const learning = { first: 0.5, settled: 0.05, flightsToLearn: 12, flightsBefore: 3, pilotShape: 2 };
  const law = crashCountChances(learning, 15);
  const end = crashesOver(learning, 15).at(-1);
  expect(end?.mean).toBeCloseTo(
    law.reduce((sum, chance, count) => sum + chance * count, 0),
    10,
  );
});
