import { describe, expect, it } from 'vitest';
import { solidOf } from '../../src/airframe/primitives.ts';
import { pictureOfCraft } from '../../src/report/pictureOfCraft.ts';
import { planExtent } from '../../src/report/planDrawing.ts';
import { sideExtent } from '../../src/report/sideDrawing.ts';
import { boundsOf, type Mesh, meshVolume } from '../../src/report/solids/mesh.ts';
import { ROUND } from '../../src/report/solids/shapes.ts';
import { type Solid, solidsOf } from '../../src/report/solids/solidsOf.ts';
import { slipstreamRadius } from '../../src/report/solids/wakeTube.ts';
import { craftOf, DEMOS, demoBuild } from '../assess/parts/crafts.ts';

const everyDemo = DEMOS.map((name) => {
  const craft = craftOf(demoBuild(name));
  return { name, craft, made: solidsOf(craft) };
});

/** Directed edges that have not exactly one of the other direction: 0 for a closed surface (every edge met twice). */
function openEdges({ triangles }: Mesh): number {
  const count = new Map<string, number>();
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const key = `${triangles[i + k]} ${triangles[i + ((k + 1) % 3)]}`;
      count.set(key, (count.get(key) ?? 0) + 1);
    }
  }
  return [...count].filter(
    ([key, times]) => times !== 1 || count.get(key.split(' ').reverse().join(' ')) !== 1,
  ).length;
}

const solid = (made: { readonly solids: readonly Solid[] }, name: string): Solid =>
  made.solids.find((each) => each.name === name)!;

describe.each(everyDemo)('$name in the round', ({ craft, made }) => {
  it('closes every surface, outside out', () => {
    expect(made.solids.length).toBeGreaterThan(15);
    for (const { name, mesh } of made.solids) {
      expect(openEdges(mesh), name).toBe(0);
      expect(meshVolume(mesh), name).toBeGreaterThan(0);
      expect(mesh.positions.every(Number.isFinite), name).toBe(true);
    }
    expect(new Set(made.solids.map(({ name }) => name)).size).toBe(made.solids.length);
  });

  it('gives the frame the volumes it weighs by', () => {
    // A regular polygon of n sides has sin(t)/t of its circle's area, t = 2 pi / n.
    const facets = Math.sin((2 * Math.PI) / ROUND) / ((2 * Math.PI) / ROUND);
    for (const item of craft.massItems.filter(({ part }) => part === 'frame')) {
      const want = solidOf(item.primitive).volume * (item.primitive.kind === 'tube' ? facets : 1);
      // Positions are single floats; the thinnest wall here is 0.8 mm of some 30 mm.
      expect(meshVolume(solid(made, item.name).mesh) / want, item.name).toBeCloseTo(1, 4);
    }
  });

  it('keeps blocks, boards, cameras and cans in the size they weigh and are placed by', () => {
    const sized = craft.massItems.filter(
      ({ part, orientation, name }) =>
        ['pack', 'controllers', 'flightController', 'videoLink', 'receiver', 'motors'].includes(part) &&
        orientation === undefined &&
        made.solids.some((each) => each.name === name),
    );
    expect(sized.length).toBeGreaterThan(5);
    for (const { name, primitive, place } of sized) {
      const { low, high } = boundsOf([solid(made, name).mesh]);
      const size =
        primitive.kind === 'box'
          ? [primitive.length, primitive.width, primitive.height]
          : primitive.kind === 'cylinder'
            ? [primitive.diameter, primitive.diameter, primitive.height]
            : [];
      for (const axis of [0, 1, 2] as const) {
        expect(high[axis] - low[axis], `${name} size`).toBeCloseTo(size[axis]!, 6);
        expect((high[axis] + low[axis]) / 2, `${name} place`).toBeCloseTo(place[axis], 6);
      }
    }
  });

  it('has blades as far out as the disc, and discs where the plan has them', () => {
    for (const [i, { name, centre, radius }] of made.discs.entries()) {
      const { positions } = solid(made, `${name} propeller`).mesh;
      let reach = 0;
      for (let k = 0; k < positions.length; k += 3)
        reach = Math.max(reach, Math.hypot(positions[k]! - centre[0], positions[k + 1]! - centre[1]));
      // Chord at the tip reaches a little past the disc's edge, seen from above.
      expect(reach / radius).toBeGreaterThan(0.999);
      expect(reach / radius).toBeLessThan(1.02);
      expect(centre).toEqual(craft.motors[i]!.discPlace);
    }
  });

  it('covers what the plan and the side view cover', () => {
    const picture = pictureOfCraft(craft);
    const plan = planExtent(picture);
    const side = sideExtent(picture, 'right');
    const { low, high } = made.bounds;
    // Straps, a receiver behind, and a camera's tilt (seen level by the plan) may stand out a little.
    const loose = 12;
    expect(Math.abs((high[1] - low[1]) * 1000 - plan.width)).toBeLessThan(0.5);
    expect(Math.abs((high[0] - low[0]) * 1000 - plan.height)).toBeLessThan(loose);
    expect(Math.abs((high[2] - low[2]) * 1000 - side.height)).toBeLessThan(loose);
  });
});

describe('an open slipstream', () => {
  // Momentum theory: half the disc's area far behind (Leishman, Principles of Helicopter Aerodynamics, 2.2).
  it('starts as wide as the disc and comes to half its area', () => {
    expect(slipstreamRadius(0.1, 0)).toBeCloseTo(0.1, 12);
    expect((slipstreamRadius(0.1, 100) / 0.1) ** 2).toBeCloseTo(0.5, 5);
  });
});
