import { describe, expect, it } from 'vitest';
import { forwardCraft } from '../../src/flight/forward/forwardPoint.ts';
import { axialThrustSlope, gustCraft } from '../../src/flight/gustCraft.ts';
import { neutralLevers } from '../../src/flight/types.ts';
import { exampleQuad } from './exampleModel.ts';

const drag = {
  front: { area: 0.01, coefficient: 1.1 },
  side: { area: 0.012, coefficient: 1.1 },
  top: { area: 0.02, coefficient: 1.2 },
};

const craftOf = (mass: number) => {
  const forward = forwardCraft(exampleQuad({ mass }), neutralLevers, drag);
  if (!forward.ok) throw new Error(forward.reason);
  const craft = gustCraft(forward.value, 9.80665);
  if (!craft.ok) throw new Error(craft.reason);
  return { craft: craft.value, trim: forward.value.trim };
};

describe('an aircraft as gusts find it', () => {
  it('has the axial slope of its own rotors at hover, net of download', () => {
    // The example's rotor loses thrust in a straight line, T (1 - V / (1.2 n p)), p = 0.09 m.
    const { craft, trim } = craftOf(0.7);
    const n = trim.load.angularSpeed[0]! / (2 * Math.PI);
    expect(craft.axialThrustSlope).toBeCloseTo((0.7 * 9.80665) / (1.2 * n * 0.09), 6);
    expect(craft.dragArea).toBeCloseTo(0.011, 12);
    expect(craft.mass).toBeCloseTo(0.7, 9);
  });

  it('has more in-plane drag on harder working rotors, but less of it a kilogram', () => {
    const light = craftOf(0.5).craft;
    const heavy = craftOf(1).craft;
    expect(heavy.rotorDragSlope).toBeGreaterThan(light.rotorDragSlope);
    expect(heavy.rotorDragSlope / heavy.mass).toBeLessThan(light.rotorDragSlope / light.mass);
  });
});

describe('axial thrust slope', () => {
  it('is the slope of the rotor as read', () => {
    const slope = axialThrustSlope((_, axialSpeed, out) => {
      out.thrust = 3 - 0.4 * axialSpeed;
      out.torque = 0;
    }, 1000);
    expect(slope).toBeCloseTo(0.4, 9);
  });
});
