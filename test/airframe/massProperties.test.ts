import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dragAreas } from '../../src/airframe/dragAreas.ts';
import { massProperties, slideToBalance, withMeasuredMass } from '../../src/airframe/massProperties.ts';
import type { MassItem, Primitive } from '../../src/airframe/types.ts';
import { multiply3, rotation3, transpose3 } from '../../src/numerics/vector3.ts';

const size = fc.double({ min: 0.005, max: 0.2, noNaN: true });
const coordinate = fc.double({ min: -0.3, max: 0.3, noNaN: true });
const place = fc.tuple(coordinate, coordinate, coordinate);
const primitive: fc.Arbitrary<Primitive> = fc.oneof(
  fc.record({ kind: fc.constant('box' as const), length: size, width: size, height: size }),
  fc.record({ kind: fc.constant('cylinder' as const), diameter: size, height: size }),
  fc.record({
    kind: fc.constant('taperedBar' as const),
    length: size,
    rootWidth: size,
    tipWidth: size,
    thickness: size,
  }),
);
const item: fc.Arbitrary<MassItem> = fc
  .record({ primitive, place, mass: fc.double({ min: 0.001, max: 1, noNaN: true }) })
  .map(({ primitive: p, place: at, mass }) => ({
    name: 'a',
    part: 'a',
    primitive: p,
    place: at,
    amount: { mass },
  }));
const angle = fc.double({ min: -3, max: 3, noNaN: true });

describe('mass properties', () => {
  it('turn with the craft: inertia becomes R I R^T, eigen-invariants stay', () => {
    fc.assert(
      fc.property(fc.array(item, { minLength: 1, maxLength: 5 }), angle, (items, yaw) => {
        const turn = rotation3(yaw, 0, 0);
        const turned = items.map((one) => ({
          ...one,
          place: turn.map(
            (row) => row[0] * one.place[0] + row[1] * one.place[1] + row[2] * one.place[2],
          ) as never,
          orientation: { yaw },
        }));
        const expected = multiply3(multiply3(turn, massProperties(items).inertia), transpose3(turn));
        const got = massProperties(turned).inertia;
        for (const [i, row] of expected.entries()) {
          for (const [j, value] of row.entries()) expect(got[i]?.[j]).toBeCloseTo(value, 10);
        }
      }),
    );
  });

  it('do not depend on where the origin is', () => {
    fc.assert(
      fc.property(fc.array(item, { minLength: 1, maxLength: 5 }), place, (items, by) => {
        const moved = items.map((one) => ({
          ...one,
          place: [one.place[0] + by[0], one.place[1] + by[1], one.place[2] + by[2]] as const,
        }));
        const [a, b] = [massProperties(items), massProperties(moved)];
        expect(b.mass).toBeCloseTo(a.mass, 12);
        expect(b.centreOfGravity[0] - a.centreOfGravity[0]).toBeCloseTo(by[0], 10);
        for (const i of [0, 1, 2] as const) expect(b.inertia[i][i]).toBeCloseTo(a.inertia[i][i], 10);
      }),
    );
  });

  it('of a box cut in two are those of the box', () => {
    const box = (x: number, length: number): MassItem => ({
      name: 'half',
      part: 'a',
      primitive: { kind: 'box', length, width: 0.03, height: 0.02 },
      place: [x, 0.1, 0],
      amount: { density: 1000 },
    });
    const whole = massProperties([box(0.05, 0.1)]);
    const halves = massProperties([box(0.025, 0.05), box(0.075, 0.05)]);
    expect(halves.mass).toBeCloseTo(whole.mass, 12);
    for (const i of [0, 1, 2] as const) expect(halves.inertia[i][i]).toBeCloseTo(whole.inertia[i][i], 14);
  });

  it('scale to a measured mass and slide to balance', () => {
    const frame: MassItem = {
      name: 'plate',
      part: 'frame',
      primitive: { kind: 'box', length: 0.1, width: 0.04, height: 0.002 },
      place: [-0.01, 0, 0],
      amount: { density: 1550 },
    };
    const pack: MassItem = {
      ...frame,
      name: 'pack',
      part: 'pack',
      amount: { mass: 0.2 },
      place: [0.02, 0, 0],
    };
    const items = withMeasuredMass([frame, pack], 'frame', 0.1);
    expect(massProperties(items).mass).toBeCloseTo(0.3, 12);
    const free = slideToBalance(items, ['pack'], 0, [-0.1, 0.1]);
    expect(free.slide).toBeCloseTo(-0.015, 12);
    expect(free.imbalance).toBeCloseTo(0, 12);
    const held = slideToBalance(items, ['pack'], 0, [-0.005, 0.1]);
    expect(held.slide).toBe(-0.005);
    // (0.1 kg x -10 mm + 0.2 kg x 15 mm) / 0.3 kg
    expect(held.imbalance).toBeCloseTo(0.002 / 0.3, 12);
  });

  it('refuse negative mass', () => {
    const bad: MassItem = {
      name: 'x',
      part: 'x',
      primitive: { kind: 'point' },
      place: [0, 0, 0],
      amount: { mass: -1 },
    };
    expect(() => massProperties([bad])).toThrow(/x: mass/);
  });
});

describe('drag areas', () => {
  it('are those of the turned face after a quarter turn', () => {
    const box: MassItem = {
      name: 'box',
      part: 'a',
      primitive: { kind: 'box', length: 0.1, width: 0.03, height: 0.04 },
      place: [0, 0, 0],
      amount: { mass: 1 },
    };
    const [straight, turned] = [dragAreas(box), dragAreas({ ...box, orientation: { yaw: Math.PI / 2 } })];
    expect(turned.front.area).toBeCloseTo(straight.side.area, 12);
    expect(turned.front.coefficient).toBeCloseTo(straight.side.coefficient, 12);
    expect(straight.front.area).toBeCloseTo(0.0012, 12);
  });

  it('of an upright cylinder do not care about yaw', () => {
    fc.assert(
      fc.property(angle, (yaw) => {
        const motor: MassItem = {
          name: 'm',
          part: 'm',
          primitive: { kind: 'cylinder', diameter: 0.028, height: 0.03 },
          place: [0, 0, 0],
          orientation: { yaw },
          amount: { mass: 0.03 },
        };
        expect(dragAreas(motor).front.area).toBeCloseTo(0.028 * 0.03, 12);
      }),
    );
  });
});
