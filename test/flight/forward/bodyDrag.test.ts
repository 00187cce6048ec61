import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dragAreas } from '../../../src/airframe/dragAreas.ts';
import type { MassItem } from '../../../src/airframe/types.ts';
import { bluffAreas, bodyDragOf, writeBodyForce } from '../../../src/flight/forward/bodyDrag.ts';

const item = (primitive: MassItem['primitive'], yaw = 0, pitch = 0): MassItem => ({
  name: 'part',
  part: 'frame',
  primitive,
  place: [0, 0, 0],
  orientation: { yaw, pitch },
  amount: { mass: 0.01 },
});
const cube = item({ kind: 'box', length: 0.05, width: 0.05, height: 0.05 });
const rod = (yaw = 0, pitch = 0) => item({ kind: 'rod', length: 0.2, diameter: 0.005 }, yaw, pitch);

/** Force on some parts at 1 m/s in air of density 2, so that it reads as a drag area [m2]. */
function force(items: readonly MassItem[], u: number, v: number, w: number): readonly number[] {
  const { bluff, bars } = bodyDragOf(items);
  const out = new Float64Array(3);
  writeBodyForce(bluffAreas(bluff), bars, u, v, w, 2, out);
  return [...out];
}

const HALF = Math.SQRT1_2;

describe('drag over the angle of the wind', () => {
  // Hoerner, Fluid-Dynamic Drag (1965), ch. 3, from memory: a cube face-on 1.05, edge-on 0.80 of the wider view, 1.131 of a face.
  it('of a cube edge-on is within a tenth of the measured ratio', () => {
    const face = -force([cube], 1, 0, 0)[0]!;
    const edge = force([cube], HALF, HALF, 0);
    const drag = -(edge[0]! * HALF + edge[1]! * HALF);
    const measured = (0.8 * Math.SQRT2) / 1.05;
    expect(drag / face).toBeGreaterThan(measured * 0.9);
    expect(drag / face).toBeLessThan(measured * 1.1);
    // Squaring each component alone, the slender law, would miss it by a third.
    expect(2 * HALF ** 3).toBeLessThan(measured * 0.7);
  });

  // Hoerner ch. 3: inclined cylinders, drag on the length times diameter goes as the cube of the sine.
  it('of a rod follows the cross-flow principle', () => {
    const broad = -force([rod()], 0, 0, 1)[2]!;
    for (const degrees of [20, 45, 70]) {
      const angle = (degrees * Math.PI) / 180;
      const [x, , z] = force([rod(0, angle)], 1, 0, 0);
      const end = -force([rod()], 1, 0, 0)[0]! * Math.cos(angle) ** 3;
      expect(-x!).toBeCloseTo(broad * Math.sin(angle) ** 3 + end, 12);
      // Its normal force pushes it sideways too.
      expect(Math.abs(z!)).toBeGreaterThan(0.3 * broad * Math.sin(angle) ** 2 * Math.cos(angle));
    }
  });

  // A bar along the wind's own axis, tilted about another: nothing of the wind across it is lost by the tilt.
  it('of an arm that lies across the wind does not depend on the tilt of the craft if its section is round', () => {
    const across = rod(Math.PI / 2);
    const drag = (tilt: number): number => {
      const [x, , z] = force([across], Math.cos(tilt), 0, -Math.sin(tilt));
      return Math.hypot(x!, z!);
    };
    for (const tilt of [0.3, 0.8, 1.2]) expect(drag(tilt) / drag(0)).toBeCloseTo(1, 12);
  });

  it('along the axes is what the airframe says, part by part', () => {
    const parts = [
      cube,
      rod(0.3),
      item({ kind: 'tube', outerDiameter: 0.13, innerDiameter: 0.126, height: 0.01 }),
    ];
    for (const [k, face] of (['front', 'side', 'top'] as const).entries()) {
      const told = parts.map((p) => dragAreas(p)[face]).reduce((sum, d) => sum + d.area * d.coefficient, 0);
      const wind = [0, 0, 0].map((_, i) => (i === k ? 1 : 0)) as [number, number, number];
      expect(-force(parts, ...wind)[k]! / told).toBeCloseTo(1, 6);
    }
  });

  it('never pushes forward, and turns about with the wind', () => {
    const speed = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(speed, speed, speed, (u, v, w) => {
        const there = force([cube, rod(0.7), rod(2, 0.3)], u, v, w);
        const back = force([cube, rod(0.7), rod(2, 0.3)], -u, -v, -w);
        expect(there[0]! * u + there[1]! * v + there[2]! * w).toBeLessThanOrEqual(0);
        for (const k of [0, 1, 2]) expect(back[k]!).toBeCloseTo(-there[k]!, 9);
      }),
    );
  });
});
