import { describe, expect, it } from 'vitest';
import { nelderMead } from '../../src/choose/nelderMead.ts';

/*
 * More, Garbow and Hillstrom 1981, 'Testing unconstrained optimization software', ACM TOMS 7(1): functions 1
 * (Rosenbrock), 13 (Powell singular), 4 is left out as badly scaled; starts and minima as published (from
 * memory). Beale (5): minimum 0 at (3, 0.5) from (1, 1). Tolerance: the settled simplex is 1e-6 of the box.
 */
const square = (value: number) => value * value;
const cases = [
  {
    name: 'Rosenbrock',
    f: ([x, y]: readonly number[]) => square(10 * (y! - x! * x!)) + square(1 - x!),
    start: [-1.2, 1],
    minimum: [1, 1],
  },
  {
    name: 'Beale',
    f: ([x, y]: readonly number[]) =>
      square(1.5 - x! * (1 - y!)) + square(2.25 - x! * (1 - y! ** 2)) + square(2.625 - x! * (1 - y! ** 3)),
    start: [1, 1],
    minimum: [3, 0.5],
  },
  {
    name: 'Powell singular',
    f: ([a, b, c, d]: readonly number[]) =>
      square(a! + 10 * b!) + 5 * square(c! - d!) + (b! - 2 * c!) ** 4 + 10 * (a! - d!) ** 4,
    start: [3, -1, 0, 1],
    minimum: [0, 0, 0, 0],
  },
];

describe.each(cases)('$name', ({ f, start, minimum }) => {
  const found = nelderMead(
    f,
    start,
    start.map(() => [-5, 5] as const),
    { tolerance: 1e-7, most: 5000 },
  );

  it('is found', () => {
    expect(found.settled).toBe(true);
    expect(found.value).toBeLessThan(1e-7);
    for (const [k, value] of found.point.entries()) expect(Math.abs(value - minimum[k]!)).toBeLessThan(0.02);
  });

  it('tells a trace that only falls, from the start', () => {
    for (const [k, value] of start.entries()) expect(found.trace[0]!.point[k]).toBeCloseTo(value, 12);
    for (const [i, { value }] of found.trace.slice(1).entries())
      expect(value).toBeLessThan(found.trace[i]!.value);
  });
});

it('holds to the box: a slope ends in its corner', () => {
  const { point } = nelderMead(
    ([x, y]) => x! + 2 * y!,
    [0.5, 0.5],
    [
      [0, 1],
      [0, 1],
    ],
  );
  expect(point[0]).toBeCloseTo(0, 4);
  expect(point[1]).toBeCloseTo(0, 4);
});

it('goes round where there is nothing', () => {
  const { point } = nelderMead(
    ([x]) => (x! < 0.3 ? Number.POSITIVE_INFINITY : square(x! - 0.35)),
    [0.9],
    [[0, 1]],
  );
  expect(point[0]).toBeCloseTo(0.35, 4);
});
