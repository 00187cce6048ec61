import { describe, expect, it } from 'vitest';
import { crashCountChances } from '../../src/knocks/crashCount.ts';
import { forecastKnocks } from '../../src/knocks/forecastKnocks.ts';
import { crashHazard } from '../../src/knocks/learningCurve.ts';
import { normalShare } from '../../src/knocks/normalShare.ts';
import { randomSource } from '../../src/knocks/randomSource.ts';
import type { KnockPlan } from '../../src/knocks/types.ts';
import { usualHits, usualLearning } from '../../src/knocks/usualPilots.ts';
import { beginnerPlan, plainPlan } from './plans.ts';

/**
 * Closed forms: binomial, Poisson-binomial, negative binomial, renewal, and the normal law of the difference
 * of two logarithms. Tolerances are 4.5 standard errors of 20 000 histories; the seeds are fixed.
 */
const N = 20_000;

const binomial = (n: number, p: number) => {
  const law = [(1 - p) ** n];
  for (let k = 1; k <= n; k++) law.push(((law[k - 1]! * (n - k + 1)) / k) * (p / (1 - p)));
  return law;
};

it('crashes of an even pilot follow the binomial law, flight for flight and in all', () => {
  const [n, p] = [30, 0.3];
  const { each, crashes } = forecastKnocks(plainPlan(p, 0, n), 11, N);
  const found = new Float64Array(n + 1);
  for (const count of each.crashes) found[count]! += 1 / N;
  binomial(n, p).forEach((chance, k) => {
    expect(Math.abs(found[k]! - chance)).toBeLessThan(4.5 * Math.sqrt((chance * (1 - chance)) / N) + 1 / N);
  });
  expect(Math.abs(crashes.mean - n * p)).toBeLessThan(4.5 * Math.sqrt((n * p * (1 - p)) / N));
  // Binomial(30, 0.3) table: P(X <= 5) = 0.0766, P(X <= 6) = 0.1595; P(X <= 11) = 0.8407, P(X <= 12) = 0.9155.
  expect([crashes.p10, crashes.p90]).toEqual([6, 12]);
});

it('orders are a renewal count: one for every (spares + 1)th breakage', () => {
  const [n, p, spares] = [40, 0.35, 2];
  const { orders, daysWaiting, flightsLost, money, benchTime } = forecastKnocks(
    plainPlan(p, spares, n),
    5,
    N,
  );
  const law = binomial(n, p);
  const mean = law.reduce((sum, chance, k) => sum + chance * Math.floor(k / (spares + 1)), 0);
  const square = law.reduce((sum, chance, k) => sum + chance * Math.floor(k / (spares + 1)) ** 2, 0);
  const error = 4.5 * Math.sqrt((square - mean ** 2) / N);
  expect(Math.abs(orders.mean - mean)).toBeLessThan(error);
  expect(daysWaiting.mean).toBeCloseTo(5 * orders.mean, 9);
  expect(flightsLost.mean).toBeCloseTo(10 * orders.mean, 9);
  // Money and bench time are linear in breakages and orders.
  const breakages = benchTime.mean / 600;
  expect(Math.abs(breakages - n * p)).toBeLessThan(4.5 * Math.sqrt((n * p * (1 - p)) / N));
  expect(money.mean).toBeCloseTo(7 * breakages + 4 * orders.mean, 9);
});

it('a part breaks with the chance that one log-normal exceeds another', () => {
  const plan: KnockPlan = {
    ...plainPlan(0.5, 100, 20),
    hits: [
      { id: 'a', weight: 3, medianSpeed: 10, logDeviation: 0.5 },
      { id: 'b', weight: 1, medianSpeed: 5, logDeviation: 0 },
    ],
    topSpeed: 1e9,
    parts: [
      {
        id: 'arm',
        price: 1,
        spares: 100,
        benchTime: 0,
        breaks: [
          { hit: 'a', median: 14, logDeviation: 0.3, reached: 2 },
          { hit: 'b', median: 5, logDeviation: 0.2, reached: 1 },
        ],
      },
    ],
  };
  const { parts } = forecastKnocks(plan, 3, N);
  // Phi(ln(10/14)/sqrt(0.34)) = Phi(-0.57704) = 0.28196 (normal table); kind b breaks every other time.
  const each = 0.75 * 2 * 0.28196 + 0.25 * 0.5;
  expect(Math.abs(parts[0]!.broken.mean - 10 * each)).toBeLessThan(0.05);
});

it('pilots who differ spread crashes as the negative binomial does', () => {
  // Small even chance: gamma-mixed Poisson, mean m, variance m + m^2 / shape, to the order of p.
  const plan = plainPlan(0.004, 0, 500);
  const { each, crashes } = forecastKnocks({ ...plan, learning: { ...plan.learning, pilotShape: 2 } }, 8, N);
  const m = 2.004;
  const variance = each.crashes.reduce((sum, count) => sum + (count - crashes.mean) ** 2, 0) / N;
  expect(Math.abs(crashes.mean / m - 1)).toBeLessThan(0.03);
  expect(Math.abs(variance / (m + m ** 2 / 2) - 1)).toBeLessThan(0.06);
  expect(Math.abs(each.crashes.filter((c) => c === 0).length / N - (2 / (2 + m)) ** 2)).toBeLessThan(0.015);
});

describe('the learning curve', () => {
  it('agrees with the exact law of unequal chances', () => {
    const { learning } = beginnerPlan;
    const law = crashCountChances(learning, 30);
    expect(law.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    const mean = law.reduce((sum, chance, k) => sum + chance * k, 0);
    const square = law.reduce((sum, chance, k) => sum + chance * k * k, 0);
    const { crashes } = forecastKnocks(beginnerPlan, 21, N);
    expect(Math.abs(crashes.mean - mean)).toBeLessThan(4.5 * Math.sqrt((square - mean ** 2) / N));
  });

  it('falls from first to settled, 1/e of the excess left after flightsToLearn', () => {
    const learning = { first: 1, settled: 0.2, flightsToLearn: 50, flightsBefore: 0 };
    expect(crashHazard(learning, 0)).toBe(1);
    expect(crashHazard(learning, 50)).toBeCloseTo(0.2 + 0.8 / Math.E, 12);
    expect(crashHazard({ ...learning, flightsBefore: 30 }, 20)).toBeCloseTo(crashHazard(learning, 50), 12);
  });
});

it('the same seed gives the same answer, and crashes alike whatever the parts', () => {
  const once = forecastKnocks(beginnerPlan, 77, 2000);
  expect(forecastKnocks(beginnerPlan, 77, 2000).money).toEqual(once.money);
  const tougher = forecastKnocks({ ...beginnerPlan, parts: beginnerPlan.parts.slice(0, 1) }, 77, 2000);
  expect(tougher.each.crashes).toEqual(once.each.crashes);
  expect(forecastKnocks(beginnerPlan, 78, 2000).money.mean).not.toBe(once.money.mean);
});

it('money never falls along the curve and ends at the total', () => {
  const { curve, money, parts } = forecastKnocks(beginnerPlan, 4, 5000);
  for (let i = 1; i < 30; i++) {
    expect(curve.mean[i]!).toBeGreaterThanOrEqual(curve.mean[i - 1]!);
    expect(curve.p90[i]!).toBeGreaterThanOrEqual(curve.p90[i - 1]!);
  }
  expect(curve.mean[29]).toBe(money.mean);
  const inParts = parts.reduce((sum, part) => sum + part.money, 0);
  expect(inParts).toBeLessThan(money.mean); // the rest is shipping
  expect(money.p10).toBeLessThan(money.p50);
  expect(money.p50).toBeLessThan(money.p90);
});

it('one-piece plate against separate arms: dearer to mend over the very same crashes', () => {
  // common practice, no source: any broken arm of a one-piece plate costs the plate and a rebuild.
  const separate = forecastKnocks(beginnerPlan, 9);
  const onePiece = forecastKnocks(
    {
      ...beginnerPlan,
      parts: beginnerPlan.parts.map((part) =>
        part.id === 'arm' ? { ...part, price: 32, benchTime: 10_800 } : part,
      ),
    },
    9,
  );
  expect(onePiece.parts[0]!.broken).toEqual(separate.parts[0]!.broken);
  expect(onePiece.money.mean).toBeGreaterThan(separate.money.mean);
  expect(onePiece.benchTime.mean).toBeGreaterThan(separate.benchTime.mean);
});

it('losing the aircraft: chance of at least one in n independent flights', () => {
  const plan = { ...plainPlan(0.2, 3, 30), loss: { share: 0.1, price: 300, days: 20 } };
  const { lossChance } = forecastKnocks(plan, 2, N);
  const exact = 1 - (1 - 0.02) ** 30;
  expect(Math.abs(lossChance - exact)).toBeLessThan(4.5 * Math.sqrt((exact * (1 - exact)) / N));
});

it('normal shares agree with the table (Abramowitz and Stegun table 26.1)', () => {
  const table = [
    [0, 0.5],
    [1, 0.8413447461],
    [-1.96, 0.0249978951],
    [3, 0.998650102],
  ] as const;
  for (const [z, share] of table) expect(Math.abs(normalShare(z) - share)).toBeLessThan(7.5e-8);
});

it('normal and gamma draws have the moments of their laws', () => {
  const source = randomSource(1, 0);
  const moments = (draw: () => number) => {
    let [sum, square] = [0, 0];
    for (let i = 0; i < 100_000; i++) {
      const x = draw();
      sum += x;
      square += x * x;
    }
    return [sum / 1e5, square / 1e5 - (sum / 1e5) ** 2] as const;
  };
  const [mean, variance] = moments(source.normal);
  expect(Math.abs(mean)).toBeLessThan(0.015);
  expect(Math.abs(variance - 1)).toBeLessThan(0.02);
  for (const shape of [0.5, 3]) {
    const [m, v] = moments(() => source.gamma(shape));
    expect(Math.abs(m - 1)).toBeLessThan(0.02);
    expect(Math.abs(v * shape - 1)).toBeLessThan(0.06);
  }
});

it('refuses what is out of range by name', () => {
  expect(() => forecastKnocks({ ...beginnerPlan, flights: 0 }, 1)).toThrow(/flights/);
  const [arm] = beginnerPlan.parts;
  const stray = { ...arm!, breaks: [{ hit: 'sea', median: 3, logDeviation: 0, reached: 1 }] };
  expect(() => forecastKnocks({ ...beginnerPlan, parts: [stray] }, 1)).toThrow(/sea/);
});

it('usual pilots get better with hours, and usual hits name four kinds', () => {
  const hazards = (['new', 'some hours', 'seasoned'] as const).map((pilot) =>
    crashHazard(usualLearning('freestyle', pilot), 0),
  );
  expect(hazards[0]).toBeGreaterThan(hazards[1]!);
  expect(hazards[1]).toBeGreaterThan(hazards[2]!);
  expect(usualHits('race').map(({ id }) => id)).toEqual(['flat', 'end-on', 'side-on', 'prop strike']);
});
