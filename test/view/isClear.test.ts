import fc from 'fast-check';
import { expect, it } from 'vitest';
import { touchedShare } from '../../src/view/cover.ts';
import { isClear } from '../../src/view/isClear.ts';
import { anyCamera, anyOccluder } from './anyScene.ts';

it('agrees with the share drawn on a grid, for any scene and any share', () => {
  const scene = fc.array(anyOccluder, { minLength: 1, maxLength: 4 });
  fc.assert(
    fc.property(
      anyCamera,
      scene,
      fc.double({ min: 1e-4, max: 0.6, noNaN: true }),
      (camera, occluders, allowed) => {
        const touched = touchedShare(camera, occluders);
        // Outlines are areas to rounding, the grid's sum to rounding too.
        fc.pre(Math.abs(touched - allowed) > 1e-6);
        expect(isClear(camera, occluders, allowed)).toBe(touched <= allowed);
      },
    ),
    { numRuns: 300 },
  );
});
