import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { paretoFront } from '../../src/choose/pareto.ts';

/**
 * Fronts worked out by another's library: moocore 0.3.2 (M. Lopez-Ibanez and others, on PyPI), `is_nondominated` with every
 * column a cost and equal points kept. Whole numbers, so that many are equal in a column or altogether; from
 * clouds behind a front of two, three and four columns, coarse and fine. Drawn once with numpy's
 * `default_rng(20261129)`, and kept beside this file so that the test needs no Python.
 */
const { sets } = JSON.parse(
  readFileSync(new URL('./moocoreFronts.generated.json', import.meta.url), 'utf8'),
) as {
  readonly sets: readonly {
    readonly points: readonly (readonly number[])[];
    readonly front: readonly number[];
  }[];
};

describe('Pareto fronts as moocore finds them', () => {
  test.each(sets.map((set) => [set.points.length, set.points[0]!.length, set] as const))(
    '%i points of %i columns',
    (_, columns, { points, front }) => {
      const less = Array.from({ length: columns }, () => 'less' as const);
      expect(front.length).toBeGreaterThan(1);
      expect(paretoFront(points, less)).toEqual(front);
      // The other way round a gain is a cost with its sign turned.
      const gains = points.map((point) => point.map((value) => -value));
      expect(
        paretoFront(
          gains,
          less.map(() => 'more' as const),
        ),
      ).toEqual(front);
    },
  );
});
