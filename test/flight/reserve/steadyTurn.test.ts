import { describe, expect, it } from 'vitest';
import { steadyTurn } from '../../../src/flight/reserve/steadyTurn.ts';
import { writeDerivative } from '../../../src/flight/simulation/derivative.ts';
import { prepareCraft } from '../../../src/flight/simulation/prepare.ts';
import { at } from '../../../src/flight/simulation/types.ts';
import { flyer } from '../simulation/crafts.ts';

describe('steady turn with yaw let go', () => {
  it('is where the equations of motion leave no yaw acceleration', () => {
    // Two opposite rotors of a true X carry it, the other two stand still; no download, body drag acts at the centre.
    const base = flyer();
    const model = { ...base, rotors: base.rotors.map((rotor) => ({ ...rotor, downloadShare: 0 })) };
    const craft = prepareCraft(model);
    if (!craft.ok) throw new Error(craft.reason);
    const thrust = (0.7 * 9.80665) / 2;
    const speed = Math.sqrt(thrust / 1.2e-6);
    const thrusts = model.rotors.map(({ spin }) => (spin === 1 ? thrust : 0));
    const yaw = 2 * 1.6e-8 * speed ** 2;
    const rate = steadyTurn(model.rotors, model.centreOfGravity, thrusts, yaw, model.inPlaneDragPerThrust);
    const accelerationAt = (turn: number): number => {
      const state = new Float64Array(at.rotors + 4);
      state[at.attitude] = 1;
      state[at.rates + 2] = turn;
      const commands = Float64Array.from(model.rotors, ({ spin }) => (spin === 1 ? speed : 0));
      state.set(commands, at.rotors);
      const out = new Float64Array(state.length);
      writeDerivative(craft.value, state, commands, new Float64Array(3), out);
      return out[at.rates + 2]!;
    };
    // A rotor that turns clockwise drives the body counterclockwise.
    expect(accelerationAt(0)).toBeCloseTo(-yaw / 0.006, 6);
    expect(Math.abs(accelerationAt(-rate))).toBeLessThan(1e-9 * (yaw / 0.006));
    expect(accelerationAt(-1.1 * rate)).toBeGreaterThan(0);
  });

  it('has no end where no thrust stands away from the axis, and needs a drag', () => {
    const effectors = [{ position: [0, 0, 0] as const }];
    expect(steadyTurn(effectors, [0, 0, 0], [5], 0.1, 0.01)).toBe(Number.POSITIVE_INFINITY);
    expect(steadyTurn(effectors, [0, 0, 0], [5], 0, 0.01)).toBe(0);
    expect(() => steadyTurn(effectors, [0, 0, 0], [5], 0.1, 0)).toThrow(/inPlaneDragPerThrust/);
  });
});
