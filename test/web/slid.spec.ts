import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isSlid } from '../../src/web/state/slid.ts';

describe('what is slid', () => {
  const build = {
    pack: { part: 'a', offset: 0.01 },
    cameras: [{ part: 'b', tilt: 0.3 }],
    frame: { part: 'c' },
  };

  it('differs in numbers alone', () => {
    expect(isSlid(build, { ...build, pack: { part: 'a', offset: -0.02 } })).toBe(true);
    expect(isSlid(build, structuredClone(build))).toBe(true);
    expect(isSlid(build, { ...build, pack: { part: 'other', offset: 0.01 } })).toBe(false);
    expect(isSlid(build, { ...build, cameras: [] })).toBe(false);
    expect(isSlid(build, { ...build, cameras: [...build.cameras, ...build.cameras] })).toBe(false);
    expect(isSlid(build, { ...build, frame: { part: 'c', armThickness: 0.005 } })).toBe(false);
    expect(isSlid({ ...build, frame: { part: 'c', armThickness: 0.005 } }, build)).toBe(false);
    expect(isSlid([1], { 0: 1 })).toBe(false);
  });

  it('is slid back as well, whatever it is', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
        expect(isSlid(a, structuredClone(a))).toBe(true);
        expect(isSlid(a, b)).toBe(isSlid(b, a));
      }),
    );
  });
});
