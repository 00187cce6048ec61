import { describe, expect, it } from 'vitest';
import { forwardCraft } from '../../src/flight/forward/forwardPoint.ts';
import { type ForwardCraft, type ForwardTrim, forwardTrim } from '../../src/flight/forward/forwardTrim.ts';
import { axialThrustSlope } from '../../src/flight/gustCraft.ts';
import { gustJolt, type Jolt } from '../../src/flight/gustJolt.ts';
import { type FlightModel, neutralLevers, type ObliqueRead } from '../../src/flight/types.ts';
import type { Outcome } from '../../src/numerics/outcome.ts';
import { exampleQuad } from './exampleModel.ts';

const known = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

const drag = {
  front: { area: 0.01, coefficient: 1.2 },
  side: { area: 0.01, coefficient: 1.2 },
  top: { area: 0.02, coefficient: 1 },
};

/** Thrust in a straight line of both speeds, so that forces can be worked by hand. */
const K = 1.5e-6; // [N s2]
const LOST = 0.15; // [N s/m]
const GAINED = 0.04; // [N s/m]
const DRAGGED = 0.02; // [N s/m]
const straight: ObliqueRead = (angularSpeed, axialSpeed, edgewiseSpeed, out) => {
  out.thrust = K * angularSpeed ** 2 - LOST * axialSpeed + GAINED * edgewiseSpeed;
  out.torque = 1.5e-8 * angularSpeed ** 2;
  out.inPlaneForce = DRAGGED * edgewiseSpeed;
  out.sideForce = out.momentAdvancingUp = out.momentAftUp = 0;
};

const stationsOf = (oblique: ObliqueRead): FlightModel['stations'] =>
  exampleQuad().stations.map((station) => ({ ...station, oblique, downloadShare: 0.05 }));

const flyer = (change: Partial<FlightModel> = {}, wakes: 'left out' | undefined = 'left out'): ForwardCraft =>
  known(
    forwardCraft(
      exampleQuad({ stations: stationsOf(straight), ...change }),
      neutralLevers,
      drag,
      wakes === undefined ? {} : { wakes },
    ),
  );

const trimOf = (craft: ForwardCraft, wind: number): ForwardTrim => known(forwardTrim(craft, wind));
const joltOf = (craft: ForwardCraft, wind: number, along: number, upward: number, reactionTime = 0.3): Jolt =>
  known(gustJolt(craft, trimOf(craft, wind), { along, upward, reactionTime }));

describe('sharp-edged gust', () => {
  it('agrees with the forces worked by hand, in the axes of the leaning craft', () => {
    const craft = flyer();
    const { tilt } = trimOf(craft, 6);
    const [s, c] = [Math.sin(tilt), Math.cos(tilt)];
    expect(tilt).toBeGreaterThan(0.05);
    // Forward 6 and 10 m/s, up 2 m/s of air: along the craft and through it from above.
    const [u0, w0] = [6 * c, 6 * s];
    const [u1, w1] = [10 * c + 2 * s, 10 * s - 2 * c];
    const lift = 4 * 0.95 * (GAINED * (u1 - u0) - LOST * (w1 - w0));
    const rotors = 4 * DRAGGED * (u1 - u0);
    const q = (u: number, w: number) => 0.5 * 1.225 * Math.hypot(u, w);
    const aft = 0.012 * (q(u1, w1) * u1 - q(u0, w0) * u0);
    const up = -0.02 * (q(u1, w1) * w1 - q(u0, w0) * w0);
    const jolt = joltOf(craft, 6, 4, 2);
    expect(jolt.push).toBeCloseTo(((rotors + aft) * c - (lift + up) * s) / 0.7, 9);
    expect(jolt.heave).toBeCloseTo(((rotors + aft) * s + (lift + up) * c) / 0.7, 9);
    expect(jolt.pushByRotors).toBeCloseTo((rotors * c - lift * s) / 0.7, 9);
    expect(jolt.loadFactor).toBeCloseTo(1 + (lift + up) / (0.7 * 9.80665), 9);
    expect(jolt.jolt).toBeCloseTo(Math.hypot(jolt.push, jolt.heave) / 9.80665, 12);
    expect(jolt.drift).toBeCloseTo(0.045 * jolt.push, 12);
    expect(jolt.speedGained).toBeCloseTo(0.3 * jolt.push, 12);
  });

  it('is nothing where the gust is nothing, wakes and all', () => {
    for (const wakes of ['left out', undefined] as const) {
      const { push, heave, loadFactor } = joltOf(flyer({}, wakes), 7, 0, 0);
      expect(Math.abs(push)).toBe(0);
      expect(Math.abs(heave)).toBe(0);
      expect(loadFactor).toBe(1);
    }
  });

  it('of an updraught alone on a hover is the axial slope of the rotors and the push on the top, to a per cent', () => {
    const { oblique: _, ...station } = exampleQuad().stations[0]!;
    const stations = exampleQuad().stations.map(({ name, position, spin }) => ({
      ...station,
      name,
      position,
      spin,
    }));
    const craft = flyer({ stations });
    const slope = 4 * 0.97 * axialThrustSlope(station.rotor, craft.trim.load.angularSpeed[0]!);
    for (const upward of [1, -1]) {
      const { heave, push } = joltOf(craft, 0, 0, upward);
      const byHand = (slope * upward + 0.5 * 1.225 * 0.02 * upward * Math.abs(upward)) / 0.7;
      expect(Math.abs(heave / byHand - 1)).toBeLessThan(0.01);
      expect(push).toBeCloseTo(0, 9);
    }
  });

  it('a lull pushes back against the wind and takes lift', () => {
    const { push, heave } = joltOf(flyer(), 8, -5, 0);
    expect(push).toBeLessThan(0);
    expect(heave).toBeLessThan(0);
  });

  it('blown from behind, drag turns round', () => {
    const craft = flyer();
    expect(joltOf(craft, 0, -5, 0).push).toBeCloseTo(-joltOf(craft, 0, 5, 0).push, 9);
  });

  it('sweeps the upper wake of coaxial pairs off the lower discs: these gain more lift than flat ones', () => {
    const flat = flyer();
    const upper = stationsOf(straight);
    const pairs = flyer({
      stations: [
        ...upper,
        ...upper.map((station, i) => ({
          ...station,
          name: `${station.name}, lower`,
          spin: station.spin === 1 ? (-1 as const) : (1 as const),
          position: [station.position[0], station.position[1], 0.04] as const,
          inWakeOf: i,
        })),
      ],
      mass: 1.4,
    });
    expect(joltOf(pairs, 5, 5, 0).heave).toBeGreaterThan(1.1 * joltOf(flat, 5, 5, 0).heave);
  });

  it('says in words that a rotor has no answer', () => {
    const craft = flyer();
    const lost: ObliqueRead = (angularSpeed, axialSpeed, edgewiseSpeed, out) => {
      straight(angularSpeed, axialSpeed, edgewiseSpeed, out);
      if (edgewiseSpeed > 9) out.thrust = Number.NaN;
    };
    const branches = craft.circuit.branches.map((branch) => ({ ...branch, oblique: lost }));
    const found = gustJolt({ ...craft, circuit: { ...craft.circuit, branches } }, trimOf(craft, 6), {
      along: 5,
      upward: 0,
      reactionTime: 0.3,
    });
    expect(!found.ok && found.reason).toContain('no answer');
  });

  it('refuses a time below nothing', () => {
    expect(() => joltOf(flyer(), 4, 6, 0, -1)).toThrow(/reactionTime/);
  });
});
