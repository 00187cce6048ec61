import { describe, expect, it } from 'vitest';
import { steadyTurn } from '../../src/flight/reserve/steadyTurn.ts';
import { ring } from '../flight/reserve/crafts.ts';

/**
 * Mueller and D'Andrea (2014), Stability and control of a quadrocopter despite the complete loss of one, two, or three
 * propellers, IEEE ICRA, from memory: m 0.5 kg, arm 0.17 m, torque over thrust 1.69e-2 m, yaw drag 2.75e-3 N m s/rad; with one
 * propeller lost it hovers on 2.05, 1.02 and 2.05 N, turning at 18.89 rad/s about its z axis.
 * Tolerance: half a unit of the last printed digit of each thrust, and of torque over thrust: half a hundredth.
 */
const ARM = 0.17;
const TORQUE_PER_THRUST = 0.0169;
const YAW_DRAG = 2.75e-3;
const THRUSTS = [2.05, 1.02, 2.05, 0];

describe('a quad with one propeller lost', () => {
  it('turns as fast as theirs where the yaw drag is theirs', () => {
    const effectors = ring([1, -1, 1, -1], ARM);
    const yaw = -TORQUE_PER_THRUST * THRUSTS.reduce((sum, t, i) => sum + effectors[i]!.spin * t, 0);
    // Their drag stands in one number: what our rotors need to have together to make it.
    const perThrust = YAW_DRAG / (ARM ** 2 * THRUSTS.reduce((sum, t) => sum + t, 0));
    expect(steadyTurn(effectors, [0, 0, 0], THRUSTS, yaw, perThrust) / 18.89).toBeCloseTo(1, 2);
    // And that is what small rotors have in edgewise flow: some hundredths of the thrust a metre a second.
    expect(perThrust).toBeGreaterThan(0.01);
    expect(perThrust).toBeLessThan(0.03);
  });
});
