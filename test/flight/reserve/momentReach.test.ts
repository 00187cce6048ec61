import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attainableSet, farthest, reachAlong } from '../../../src/flight/reserve/attainableSet.ts';
import { momentOutline } from '../../../src/flight/reserve/momentOutline.ts';
import { controlReserve } from '../../../src/flight/reserve/momentReach.ts';
import { controlAxes, type Effector, type ReserveModel } from '../../../src/flight/reserve/types.ts';
import { wrenchPerNewton } from '../../../src/flight/reserve/wrench.ts';
import { distanceToPolygon } from '../../../src/numerics/polygon.ts';
import { craft } from './crafts.ts';

const trueX = craft({ kind: 'true X', diagonal: 0.22 });
const arm = 0.11 / Math.SQRT2; // lateral and longitudinal distance of each motor [m]

const reserve = (model: ReserveModel, lift?: number) => {
  const outcome = controlReserve(model, lift);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

describe('wrench per newton', () => {
  it('of a front right motor turning counterclockwise from above', () => {
    // r x t with r = (a, a, 0), t = (0, 0, -1) is (-a, a, 0): a push up on the right rolls left, in front
    // pitches nose up; the airframe yaws clockwise, +k.
    const [roll, pitch, yaw, lift] = wrenchPerNewton(
      trueX.effectors[0]!,
      [0, 0, 0],
      trueX.effectors[0]!.torquePerThrust,
    );
    expect(trueX.effectors[0]!.name).toBe('front right');
    expect([roll, pitch, yaw, lift]).toEqual([-arm, arm, 0.014, 1].map((v) => expect.closeTo(v, 12)));
  });

  it('of a tail tilted right pulls the tail right and the nose left', () => {
    const tail: Effector = { ...trueX.effectors[0]!, position: [-0.2, 0, 0], torquePerThrust: 0 };
    const [, , yaw, lift] = wrenchPerNewton(tail, [0, 0, 0], tail.torquePerThrust, 0.3);
    expect(yaw).toBeCloseTo(-0.2 * Math.sin(0.3), 12);
    expect(lift).toBeCloseTo(Math.cos(0.3), 12);
  });

  it('is taken about the true centre of gravity', () => {
    const [roll, pitch] = wrenchPerNewton(
      trueX.effectors[0]!,
      [0.01, -0.02, 0.03],
      trueX.effectors[0]!.torquePerThrust,
    );
    expect(roll).toBeCloseTo(-(arm + 0.02), 12);
    expect(pitch).toBeCloseTo(arm - 0.01, 12);
  });
});

describe('control reserve at hover', () => {
  it('of a balanced true X, by hand', () => {
    // Hover share 0.7 x 9.80665 / 4 = 1.716164 N; down to 0.2 N leaves 1.516164 N of change on each motor.
    const change = (0.7 * 9.80665) / 4 - 0.2;
    const { moments, accelerations, liftToWeight } = reserve(trueX);
    for (const axis of ['roll', 'pitch'] as const) {
      expect(moments[axis].positive).toBeCloseTo(4 * arm * change, 9);
      expect(moments[axis].negative).toBeCloseTo(4 * arm * change, 9);
    }
    expect(moments.yaw.positive).toBeCloseTo(4 * 0.014 * change, 9);
    expect(accelerations.roll.positive).toBeCloseTo((4 * arm * change) / 0.003, 6);
    expect(accelerations.pitch.positive).toBeCloseTo((4 * arm * change) / 0.0035, 6);
    expect(liftToWeight).toBeCloseTo(48 / (0.7 * 9.80665), 9);
  });

  it('has one third of each axis at once on a balanced true X', () => {
    // Every motor takes +-change/3 from each of three axes in the worst corner.
    expect(reserve(trueX).combinedShare).toBeCloseTo(1 / 3, 9);
  });

  it('grows with lift up to half the largest, then shrinks', () => {
    const at = (lift: number): number => reserve(trueX, lift).moments.roll.positive;
    expect(at(24)).toBeGreaterThan(at(10));
    expect(at(24)).toBeGreaterThan(at(40));
    expect(at(24.4)).toBeCloseTo(4 * arm * 5.9, 9);
  });

  it('says in words when the craft cannot hover level', () => {
    expect(controlReserve(craft({ kind: 'true X', diagonal: 0.22 }, { mass: 5.5 })).ok).toBe(false);
    expect(controlReserve({ ...trueX, centreOfGravity: [0.2, 0, 0] }).ok).toBe(false);
  });

  it('lets a tilting tail yaw a tricopter that cannot without it', () => {
    const stiff = craft({ kind: 'tri', frontWidth: 0.25, length: 0.22 });
    expect(controlReserve(stiff).ok).toBe(false); // one reaction torque is left over
    const { moments } = reserve(craft({ kind: 'tri', frontWidth: 0.25, length: 0.22 }, { servoTilt: 0.5 }));
    // Roll is bounded by 1/3 of the weight moving across the front pair, yaw by the tail's tilted third.
    const third = (0.7 * 9.80665) / 3;
    expect(moments.yaw.positive).toBeGreaterThan(0.7 * third * Math.tan(0.5) * 0.22 * (2 / 3));
    expect(moments.yaw.positive).toBeLessThan(
      1.1 * third * Math.tan(0.5) * 0.22 * (2 / 3) + 2 * 0.014 * third,
    );
  });

  // By hand: inverse of [[Ixx, Ixy], [Ixy, Iyy]] has Iyy / (Ixx Iyy - Ixy2) first. A reviewer once found a roll
  // starved by yaw: its acceleration was told with yaw held still against Ixz.
  it('lets other axes drift when the inertia is crossed', () => {
    const crossed = (xy: number, xz: number) =>
      reserve({
        ...trueX,
        inertia: [
          [0.003, xy, xz],
          [xy, 0.0035, 0],
          [xz, 0, 0.006],
        ],
      });
    const rollPitch = crossed(0.0004, 0);
    const { moments } = rollPitch;
    const determinant = 0.003 * 0.0035 - 0.0004 ** 2;
    expect(rollPitch.accelerations.roll.positive).toBeCloseTo(
      (moments.roll.positive * 0.0035) / determinant,
      6,
    );
    expect(rollPitch.accelerations.pitch.negative).toBeCloseTo(
      (moments.pitch.negative * 0.003) / determinant,
      6,
    );
    const rollYaw = crossed(0, 0.0003);
    const plain = crossed(0, 0);
    expect(rollYaw.accelerations.roll.positive / plain.accelerations.roll.positive).toBeCloseTo(
      1 / (1 - 0.0003 ** 2 / (0.003 * 0.006)),
      9,
    );
  });

  it('refuses limits that are none', () => {
    const wrong = { ...trueX.effectors[0]!, minimumThrust: 3, maximumThrust: 2 };
    expect(() => controlReserve({ ...trueX, effectors: [wrong] })).toThrow(/front right: thrust limits/);
    expect(() => controlReserve({ ...trueX, mass: 0 })).toThrow(/weight/);
  });
});

const place = fc.double({ min: -0.2, max: 0.2, noNaN: true });

/** Four to eight motors strewn about, spins and limits as they come. */
const strewn: fc.Arbitrary<ReserveModel> = fc
  .array(
    fc.tuple(
      place,
      place,
      fc.constantFrom(1 as const, -1 as const),
      fc.double({ min: 4, max: 12, noNaN: true }),
    ),
    {
      minLength: 4,
      maxLength: 8,
    },
  )
  .filter((motors) => motors.some(([x, y]) => Math.hypot(x, y) > 0.05))
  .map((motors) => ({
    ...trueX,
    effectors: motors.map(([x, y, spin, maximumThrust], i) => ({
      name: `motor ${i}`,
      position: [x, y, 0] as const,
      spin,
      torquePerThrust: 0.014,
      minimumThrust: 0.2,
      maximumThrust,
    })),
  }));

describe('attainable moments against brute force', () => {
  it('no sampled thrusts that lift the weight with no yaw leave the outline', () => {
    fc.assert(
      fc.property(strewn, fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })), (model, random) => {
        const outline = momentOutline(model, { across: 'roll', up: 'pitch', thirdAxis: 'free' });
        if (!outline.ok) return;
        const weight = model.mass * model.gravity;
        const columns = model.effectors.map((e) =>
          wrenchPerNewton(e, model.centreOfGravity, e.torquePerThrust),
        );
        for (let trial = 0; trial < 40; trial++) {
          const thrusts = model.effectors.map(
            (e) => e.minimumThrust + random.next().value * (e.maximumThrust - e.minimumThrust),
          );
          const sum = thrusts.reduce((a, b) => a + b, 0);
          const scaled = thrusts.map((thrust) => (thrust * weight) / sum);
          const allowed = scaled.every(
            (t, i) => t >= model.effectors[i]!.minimumThrust && t <= model.effectors[i]!.maximumThrust,
          );
          if (!allowed) continue;
          const sumOf = (i: number): number => scaled.reduce((m, t, k) => m + t * columns[k]![i]!, 0);
          expect(distanceToPolygon([sumOf(0), sumOf(1)], outline.value).distance).toBeLessThan(1e-7);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('the largest moments equal the best of all vertices to a billionth, whole and with a motor out', () => {
    let compared = 0;
    fc.assert(
      fc.property(strewn, fc.nat(7), fc.boolean(), (whole, lost, isWhole) => {
        const model = isWhole
          ? whole
          : {
              ...whole,
              effectors: whole.effectors.map((e, i) =>
                i === lost % whole.effectors.length ? { ...e, minimumThrust: 0, maximumThrust: 0 } : e,
              ),
            };
        const set = attainableSet(model);
        const hold = { axes: controlAxes, lift: set.weight };
        if (!farthest(set, [0, 0, 0, 0], hold).ok) return;
        controlAxes.forEach((_, axis) => {
          for (const sign of [1, -1] as const) {
            const brute = bruteForce(model, axis, sign);
            // Motors all on one line: no vertex with three independent columns.
            if (!Number.isFinite(brute)) continue;
            const direction = [0, 1, 2].map((i) => (i === axis ? sign : 0)) as [number, number, number];
            const found = reachAlong(set, direction, hold);
            if (!found.ok) throw new Error(found.reason);
            compared++;
            expect(Math.abs(found.value.along - brute)).toBeLessThan(1e-9 * set.momentScale);
          }
        });
      }),
      { numRuns: 300 },
    );
    // Enough of them can be held level for the comparison to say something.
    expect(compared).toBeGreaterThan(50);
  });

  it('a slice at no yaw lies inside the shadow with yaw free', () => {
    const request = { across: 'roll', up: 'pitch' } as const;
    const slice = momentOutline(trueX, { ...request, thirdAxis: 'held' });
    const shadow = momentOutline(trueX, { ...request, thirdAxis: 'free' });
    if (!slice.ok || !shadow.ok) throw new Error('no outline');
    for (const corner of slice.value) {
      expect(distanceToPolygon(corner, shadow.value).distance).toBeLessThan(1e-9);
    }
    // With yaw held, four motors are tied: the slice is the square |roll| + |pitch| <= M.
    expect(slice.value).toHaveLength(4);
  });
});

/**
 * Every vertex of the polytope {thrusts in limits, lift = weight, two moments nothing}: three equations, so three
 * motors free and the others at a limit; the largest moment about the third axis.
 */
function bruteForce(model: ReserveModel, axis: number, sign: 1 | -1): number {
  const n = model.effectors.length;
  const columns = model.effectors.map((e) => wrenchPerNewton(e, model.centreOfGravity, e.torquePerThrust));
  const weight = model.mass * model.gravity;
  const held = [0, 1, 2, 3].filter((row) => row !== axis);
  let best = Number.NEGATIVE_INFINITY;
  for (let a = 0; a < n; a++) {
    for (let b = a + 1; b < n; b++) {
      for (let c = b + 1; c < n; c++) {
        const matrix = held.map((row) => [a, b, c].map((i) => columns[i]![row]!));
        const fixed = [...Array(n).keys()].filter((i) => i !== a && i !== b && i !== c);
        for (let bits = 0; bits < 1 << fixed.length; bits++) {
          const thrusts = new Array<number>(n).fill(0);
          fixed.forEach((i, k) => {
            const e = model.effectors[i]!;
            thrusts[i] = (bits >> k) & 1 ? e.maximumThrust : e.minimumThrust;
          });
          const residual = held.map(
            (row) =>
              (row === 3 ? weight : 0) - fixed.reduce((s, i) => s + thrusts[i]! * columns[i]![row]!, 0),
          );
          const free = solve3(matrix, residual);
          if (free === undefined) continue;
          [a, b, c].forEach((i, k) => {
            thrusts[i] = free[k]!;
          });
          const inside = thrusts.every((t, i) => {
            const e = model.effectors[i]!;
            return t >= e.minimumThrust - 1e-10 && t <= e.maximumThrust + 1e-10;
          });
          if (inside)
            best = Math.max(
              best,
              thrusts.reduce((s, t, i) => s + t * sign * columns[i]![axis]!, 0),
            );
        }
      }
    }
  }
  return best;
}

function solve3(m: number[][], r: number[]): number[] | undefined {
  const det = (a: number[][]): number =>
    a[0]![0]! * (a[1]![1]! * a[2]![2]! - a[1]![2]! * a[2]![1]!) -
    a[0]![1]! * (a[1]![0]! * a[2]![2]! - a[1]![2]! * a[2]![0]!) +
    a[0]![2]! * (a[1]![0]! * a[2]![1]! - a[1]![1]! * a[2]![0]!);
  const d = det(m);
  if (Math.abs(d) < 1e-13) return undefined;
  return [0, 1, 2].map((k) => det(m.map((row, i) => row.map((v, j) => (j === k ? r[i]! : v)))) / d);
}
