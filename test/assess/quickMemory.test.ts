import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { emptyMemory } from '../../src/assess/quickMemory.ts';
import type { Build } from '../../src/build/schema/build.ts';
import { contextOf } from './parts/crafts.ts';

/** One after another, as a hand slides them: most of the second is as in the first, then it goes back. */
const SLIDES: readonly (readonly [what: string, slid: (build: Build, by: number) => Build])[] = [
  ['the pack', (build, by) => ({ ...build, pack: { ...build.pack, offset: 0.02 * by } })],
  [
    'the first camera',
    (build, by) => ({
      ...build,
      cameras: build.cameras.map((each, i) => (i === 0 ? { ...each, tilt: each.tilt + 0.2 * by } : each)),
    }),
  ],
  ['the arms', (build, by) => ({ ...build, frame: { ...build.frame, armThickness: 0.004 + 0.001 * by } })],
];

describe('the memory of a quick assessment', () => {
  const { craft, flight, ...rest } = contextOf('first-freestyle/kittiwake');
  const context = { ...rest, rotors: flight?.rotors ?? new Map() };
  it.each(SLIDES)('changes no result to the last bit while it slides %s', (_what, slid) => {
    const memory = emptyMemory();
    for (const by of [0, 1, 1, 0.5, 0]) {
      const build = slid(craft.build, by);
      const fresh = assess(build, context);
      expect(fresh.ok).toBe(true);
      expect(assess(build, { ...context, memory })).toEqual(fresh);
    }
  });

  it('is used: cameras and arms that stay are not looked at again', () => {
    const memory = emptyMemory();
    assess(craft.build, { ...context, memory });
    const [arms, cover] = [memory.arms.last?.answer, memory.covers.get(0)?.last?.cover];
    assess({ ...craft.build, pack: { ...craft.build.pack, offset: 0.001 } }, { ...context, memory });
    expect(memory.arms.last?.answer).toBe(arms);
    expect(arms?.ok).toBe(true);
    expect(cover).toBeDefined();
  });
});
