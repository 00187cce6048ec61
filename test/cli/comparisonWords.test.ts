import { expect, it } from 'vitest';
import type { ComparisonReport } from '../../src/cli/comparisonReport.ts';
import { comparisonText } from '../../src/cli/print/comparisonText.ts';
import { paintFor } from '../../src/cli/print/paint.ts';
import { demo, quadwright } from './fakeIo.ts';

const LIMIT = 'full-throttle-time-to-limit';

// A reason once read `full throttle until hot 0 s against 9 s`, where the table above it said `at once`.
it('tells a motor too hot from the start in words, in the table and in the reasons', async () => {
  const { out } = await quadwright(['compare', `${demo}/turnstone.yaml`, `${demo}/bonxie.yaml`, '--json']);
  const { comparison, ...rest } = JSON.parse(out) as ComparisonReport;
  const [leader = 0, second = 1] = comparison.order;
  const rows = comparison.rows.map((row) => ({
    ...row,
    cells:
      row.id === LIMIT
        ? row.cells.map((_, i) =>
            i === leader ? { value: 0, words: 'at once', band: [0, 4] as const } : undefined,
          )
        : row.cells,
  }));
  const label = rows.find(({ id }) => id === LIMIT)!.label;
  const reason = { measure: LIMIT, label, speaksFor: 'leader', weight: 0.01, difference: 'open' } as const;
  const report = { ...rest, comparison: { ...comparison, rows, reasons: [reason] } };
  const text = comparisonText(report, { paint: paintFor(false), all: false, currency: 'GBP' });
  expect(second).not.toBe(leader);
  expect(text.match(/at once/g)).toHaveLength(2);
  expect(text).toMatch(/until hot at once against never/);
  expect(text).not.toMatch(/\b0 m?s\b/);
});
