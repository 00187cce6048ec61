import { describe, expect, it } from 'vitest';
import { demo, quadwright } from './fakeIo.ts';

const base = ['shortlist', '--from', `${demo}/turnstone.yaml`, '--brief', `${demo}/brief.yaml`];

describe('shortlist', () => {
  it('lists, explains and accounts, as text and as JSON', async () => {
    const words = [...base, '--choose', 'pack,propellers', '--top', '3', '--workers', '1'];
    const { out, code } = await quadwright(words);
    expect(code).toBe(0);
    expect(out).toContain('Why the first leads the second');
    expect(out).toContain('combinations;');
    const json = JSON.parse((await quadwright([...words, '--json'])).out);
    expect(json.top).toHaveLength(3);
    expect(json.finished).toBe(true);
    const excluded = Object.values(json.counts.excluded as Record<string, number>).reduce((a, b) => a + b, 0);
    expect(excluded + json.counts.bounded + json.counts.evaluated).toBe(json.size);
  });

  it('--full tells the full tier of what is listed, and the order stays', async () => {
    const words = [...base, '--choose', 'propellers', '--top', '2', '--workers', '1'];
    const quick = JSON.parse((await quadwright([...words, '--json'])).out);
    const full = JSON.parse((await quadwright([...words, '--full', '--json'])).out);
    expect(full.top).toEqual(quick.top);
    const has = (report: typeof full) =>
      report.assessments.map(({ measures }: { measures: { id: string }[] }) =>
        measures.some(({ id }) => id === 'knocks-money'),
      );
    expect(has(full)).toEqual([true, true]);
    expect(has(quick)).toEqual([false, false]);
    expect((await quadwright([...words, '--full'])).out).toContain('repairs over 30 flights');
    expect((await quadwright(words)).out).not.toContain('repairs over');
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
