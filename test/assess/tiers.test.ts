import { describe, expect, it } from 'vitest';
import { assessCraft, type Tier } from '../../src/assess/assess.ts';
import type { Measure } from '../../src/assess/types.ts';
import { contextOf } from './parts/crafts.ts';

const AIRFRAME = [
  'flying-camera-covered',
  'recording-camera-propellers',
  'first-upright-mode',
  'first-sideways-mode',
  'breaking-speed-flat',
  'breaking-speed-from-ahead',
  'prop-strike-reserve',
];

describe('tiers of an assessment', () => {
  const { craft, flight: _, ...context } = contextOf('first-freestyle/kittiwake');
  const [hover, quick, full] = (['hover', 'quick', 'full'] as const).map((tier: Tier) =>
    assessCraft(craft, { ...context, tier }),
  );
  const valuesOf = (measures: readonly Measure[]) =>
    new Map(measures.map(({ id, value }) => [id, value] as const));

  it.each([hover!, quick!, full!])('each measure is told once', ({ measures }) => {
    const ids = measures.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('the quick tier is all of the hover tier, with the view, first modes and hits', () => {
    const [less, more] = [hover!, quick!].map(({ measures }) => valuesOf(measures));
    for (const [id, value] of less!) expect(more!.get(id), id).toBe(value);
    for (const id of AIRFRAME) {
      expect(less!.has(id), id).toBe(false);
      expect(more!.has(id), id).toBe(true);
    }
  });

  it('what quick and full tell both, they tell alike', () => {
    const worked = valuesOf(full!.measures);
    for (const { id, value } of quick!.measures) expect(worked.get(id)! / value, id).toBeCloseTo(1, 9);
  });

  it('quick hits have the bands of the full ones, one side of the craft standing for both', () => {
    const worked = new Map(full!.measures.map(({ id, band }) => [id, band] as const));
    const hits = quick!.measures.filter(({ id }) => id.startsWith('breaking-speed'));
    expect(hits).toHaveLength(4);
    for (const { id, band } of hits)
      for (const [i, end] of band.entries()) expect(end / worked.get(id)![i]!, id).toBeCloseTo(1, 2);
  });

  it('is quick when nothing is told, and the parts run by themselves make the full one', () => {
    expect(assessCraft(craft, context)).toEqual(quick);
    expect(assessCraft(craft, { ...context, parts: [] }).measures).toEqual(hover!.measures);
  });
});
