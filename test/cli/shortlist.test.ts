import { describe, expect, it } from 'vitest';
import { paintFor } from '../../src/cli/print/paint.ts';
import { shortlistText } from '../../src/cli/print/shortlistText.ts';
import type { ShortlistReport } from '../../src/cli/shortlistReport.ts';
import { demo, quadwright } from './fakeIo.ts';

const base = ['shortlist', '--from', `${demo}/turnstone.yaml`, '--brief', `${demo}/brief.yaml`];

/** One report, as text: what `shortlist` prints without --json is made of the same report. */
const asText = (report: ShortlistReport) =>
  shortlistText(report, { paint: paintFor(false), currency: 'GBP' });

const searched = async (...words: string[]): Promise<ShortlistReport> => {
  const { code, out } = await quadwright([...base, ...words, '--workers', '1', '--json']);
  expect(code).toBe(0);
  return JSON.parse(out);
};

describe('shortlist', () => {
  it('lists and accounts for every combination', async () => {
    const found = await searched('--choose', 'pack,propellers', '--top', '3');
    expect(found.top).toHaveLength(3);
    expect(found.finished).toBe(true);
    const excluded = Object.values(found.counts.excluded).reduce((a, b) => a + b, 0);
    expect(excluded + found.counts.bounded + found.counts.evaluated).toBe(found.size);
  });

  it('--full tells the full tier of what is listed, and the order stays', async () => {
    const words = ['--choose', 'pack', '--top', '2'];
    const [quick, full] = [await searched(...words), await searched(...words, '--full')];
    expect(full.top).toEqual(quick.top);
    const has = (report: ShortlistReport) =>
      report.assessments.map(({ measures }) => measures.some(({ id }) => id === 'knocks-money'));
    expect(has(full)).toEqual([true, true]);
    expect(has(quick)).toEqual([false, false]);
    expect(asText(full)).toContain('repairs over 30 flights');
    expect(asText(quick)).not.toContain('repairs over');
  });

  it('explains, as text', async () => {
    const { code, out } = await quadwright([...base, '--choose', 'pack', '--top', '2', '--workers', '1']);
    expect(code).toBe(0);
    expect(out).toContain('Why the first leads the second');
    expect(out).toContain('combinations;');
  });

  it.each([
    [['--want', 'flown-tim=2'], 'flown-time'],
    [['--want', 'flown-time=2@3..x'], '--want'],
    [['--limit', 'all-up-mass=3'], '--limit'],
    [['--choose', 'wings'], '--choose'],
    [['--front', 'hover-throttle'], '--front'],
    [['--top', '0'], '--top'],
  ])('tells in words what is wrong with %j', async (words, says) => {
    const { code, error } = await quadwright([...base, ...words]);
    expect(code).toBe(2);
    expect(error).toContain(says);
  });
});
