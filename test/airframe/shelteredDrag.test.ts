import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { noShelter, shelteredDrag } from '../../src/airframe/shelteredDrag.ts';
import type { MassItem } from '../../src/airframe/types.ts';
import type { Vector3 } from '../../src/numerics/vector3.ts';

const box = (name: string, place: Vector3, size: readonly [number, number, number]): MassItem => ({
  name,
  part: 'test',
  primitive: { kind: 'box', length: size[0], width: size[1], height: size[2] },
  place,
  amount: { mass: 0.1 },
});

const front = (items: readonly MassItem[]) => {
  const { area, coefficient } = shelteredDrag(items).areas.front;
  return area * coefficient;
};

const pack = box('pack', [0, 0, 0], [0.08, 0.04, 0.04]);

describe('drag of parts together', () => {
  it('what is inside another part adds nothing, from any side', () => {
    const strap = box('strap', [0.01, 0, 0], [0.02, 0.02, 0.02]);
    const alone = shelteredDrag([pack]).areas;
    const both = shelteredDrag([strap, pack]).areas;
    for (const face of ['front', 'side', 'top'] as const) {
      expect(both[face].area).toBeCloseTo(alone[face].area, 12);
      expect(both[face].coefficient).toBeCloseTo(alone[face].coefficient, 12);
    }
  });

  it('a twin close behind adds little, far behind all of its own', () => {
    const behind = (gap: number) => front([pack, box('twin', [-0.08 - gap, 0, 0], [0.08, 0.04, 0.04])]);
    expect(behind(0)).toBeCloseTo(front([pack]), 12);
    expect(behind(0.1) / front([pack])).toBeCloseTo(1.5, 6);
    expect(behind(0.3) / front([pack])).toBeCloseTo(2, 12);
  });

  it('side by side both count', () => {
    expect(front([pack, box('twin', [0, 0.1, 0], [0.08, 0.04, 0.04])]) / front([pack])).toBeCloseTo(2, 12);
  });

  it('acts at the middle of what the wind meets', () => {
    const { centre } = shelteredDrag([pack, box('twin', [0, 0, -0.1], [0.08, 0.04, 0.04])]);
    expect(centre[2]).toBeCloseTo(-0.05, 12);
    expect(centre[1]).toBeCloseTo(0, 12);
  });

  it('never more than each alone, never nothing', () => {
    const place = fc.tuple(
      ...[0, 1, 2].map(() => fc.double({ min: -0.1, max: 0.1, noNaN: true })),
    ) as fc.Arbitrary<[number, number, number]>;
    const size = fc.tuple(
      ...[0, 1, 2].map(() => fc.double({ min: 0.004, max: 0.08, noNaN: true })),
    ) as fc.Arbitrary<[number, number, number]>;
    fc.assert(
      fc.property(fc.array(fc.tuple(place, size), { minLength: 1, maxLength: 6 }), (drawn) => {
        const items = drawn.map(([at, of], i) => box(`part ${i}`, at, of));
        const sheltered = shelteredDrag(items).areas;
        const open = shelteredDrag(items, noShelter).areas;
        for (const face of ['front', 'side', 'top'] as const) {
          expect(sheltered[face].area).toBeLessThanOrEqual(open[face].area * (1 + 1e-12));
          expect(sheltered[face].area).toBeGreaterThan(0);
        }
      }),
      { numRuns: 100 },
    );
  });
});
