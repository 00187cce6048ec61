import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circuitOf } from '../../src/flight/circuit.ts';
import { type HoverTrim, hoverTrim } from '../../src/flight/hoverTrim.ts';
import { type FlightModel, neutralLevers, type Station } from '../../src/flight/types.ts';
import { exampleQuad, ringOf } from './exampleModel.ts';

const trimOf = (model: FlightModel) => hoverTrim(model, circuitOf(model, neutralLevers));

/** Force and moment about the centre of gravity, summed here on their own, [N] and [N m]. */
function balance(model: FlightModel, trim: HoverTrim): { force: number[]; moment: number[] } {
  const force = [0, 0, 0];
  const moment = [0, 0, 0];
  model.stations.forEach((s, i) => {
    const tilt = s.servoTilt === undefined ? 0 : trim.servoAngle;
    const axis = s.thrustAxis ?? [0, Math.sin(tilt), -Math.cos(tilt)];
    const r = s.position.map((p, k) => p - model.centreOfGravity[k]!);
    const f = axis.map((a) => a * trim.thrusts[i]!);
    const reaction = s.spin * trim.load.torque[i]!;
    force.forEach((_, k) => {
      const [a, b] = [(k + 1) % 3, (k + 2) % 3];
      force[k]! += f[k]!;
      moment[k]! += r[a]! * f[b]! - r[b]! * f[a]! + reaction * axis[k]!;
    });
  });
  return { force, moment };
}

function expectBalanced(model: FlightModel, trim: HoverTrim): void {
  const { force, moment } = balance(model, trim);
  const weight = model.mass * model.gravity;
  expect(Math.abs(Math.hypot(...force) / weight - 1)).toBeLessThan(1e-8);
  for (const m of moment) expect(Math.abs(m)).toBeLessThan(1e-8 * weight);
  for (const t of trim.thrusts) expect(t).toBeGreaterThanOrEqual(0);
}

const small = (size: number) => fc.double({ min: -size, max: size, noNaN: true });

describe('hover trim', () => {
  it('leaves no force and no moment for 4, 6 and 8 motors about any centre of gravity near the middle', () => {
    fc.assert(
      fc.property(fc.constantFrom(4, 6, 8), small(0.03), small(0.03), small(0.03), (count, x, y, z) => {
        const base = exampleQuad();
        const model = { ...base, stations: ringOf(base, count, 0.12), centreOfGravity: [x, y, z] as const };
        const trim = trimOf(model);
        if (!trim.ok) {
          // Four motors have no freedom: a corner centre of gravity can break the balance of torques only there.
          expect(count).toBe(4);
          return;
        }
        expectBalanced(model, trim.value);
      }),
      { numRuns: 200 },
    );
  });

  // Levers by hand: centre of gravity d forward of the middle of arms a: front pair carries (1 + d/a)/2 of the weight.
  it('loads the front motors as the lever law says', () => {
    const model = exampleQuad({ centreOfGravity: [0.01, 0, 0] });
    const trim = trimOf(model);
    expect(trim.ok).toBe(true);
    if (!trim.ok) return;
    const quarter = (0.7 * 9.80665) / 4;
    expect(trim.value.thrusts[0]).toBeCloseTo(quarter * (1 + 0.01 / 0.08), 8);
    expect(trim.value.thrusts[2]).toBeCloseTo(quarter * (1 - 0.01 / 0.08), 8);
  });

  it('flies a tricopter on its tail servo', () => {
    const base = exampleQuad();
    const pattern = base.stations[0]!;
    const at = (x: number, y: number, spin: 1 | -1, extra: Partial<Station> = {}): Station => ({
      ...pattern,
      position: [x, y, -0.02],
      spin,
      ...extra,
    });
    const stations = [at(0.07, -0.1, 1), at(0.07, 0.1, 1), at(-0.12, 0, 1, { servoTilt: 0.5 })];
    const model = exampleQuad({ stations, centreOfGravity: [0.005, 0.002, 0.01] });
    const trim = trimOf(model);
    expect(trim.ok ? '' : trim.reason).toBe('');
    if (!trim.ok) return;
    expect(Math.abs(trim.value.servoAngle)).toBeGreaterThan(0.05);
    expectBalanced(model, trim.value);
    const stiff = trimOf({
      ...model,
      stations: [stations[0]!, stations[1]!, { ...stations[2]!, servoTilt: 0.01 }],
    });
    expect(stiff.ok ? '' : stiff.reason).toMatch(/tail servo would have to tilt \d+ degrees/);
    const fixed = trimOf({
      ...model,
      stations: stations.map((s, i) => at(s.position[0], s.position[1], i === 0 ? -1 : 1)),
    });
    expect(fixed.ok ? '' : fixed.reason).toMatch(/reaction torques/);
  });

  it('flies coaxial pairs, the lower rotor working harder for its thrust', () => {
    const base = exampleQuad();
    const upper = ringOf(base, 4, 0.12);
    const lower = upper.map((s, i) => ({
      ...s,
      name: `${s.name} below`,
      position: [s.position[0], s.position[1], 0.05] as const,
      spin: -s.spin as 1 | -1,
      inWakeOf: i,
    }));
    const model = exampleQuad({ stations: [...upper, ...lower], centreOfGravity: [0.01, -0.005, 0] });
    const trim = trimOf(model);
    expect(trim.ok).toBe(true);
    if (!trim.ok) return;
    expectBalanced(model, trim.value);
    const perThrust = (i: number) =>
      (trim.value.load.torque[i]! * trim.value.load.angularSpeed[i]!) / trim.value.thrusts[i]! ** 1.5;
    expect(perThrust(4)).toBeGreaterThan(1.1 * perThrust(0));
  });

  it('leans back for rotors canted forward', () => {
    const base = exampleQuad();
    const cant = 0.2;
    const axis = [Math.sin(cant), 0, -Math.cos(cant)] as const;
    const model = exampleQuad({ stations: base.stations.map((s) => ({ ...s, thrustAxis: axis })) });
    const centred = { ...model, centreOfGravity: [0, 0, -0.02] as const };
    const trim = trimOf(centred);
    expect(trim.ok).toBe(true);
    if (!trim.ok) return;
    expect(trim.value.pitch).toBeCloseTo(cant, 8);
    expectBalanced(centred, trim.value);
  });

  it('says why when it cannot', () => {
    const outside = trimOf(exampleQuad({ centreOfGravity: [0.1, 0, 0] }));
    expect(outside.ok ? '' : outside.reason).toMatch(/20\u00a0mm outside the motors/);
    const allSame = exampleQuad();
    const spins = trimOf({ ...allSame, stations: allSame.stations.map((s) => ({ ...s, spin: 1 as const })) });
    expect(spins.ok ? '' : spins.reason).toMatch(/reaction torques/);
  });
});
