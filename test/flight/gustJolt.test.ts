import { describe, expect, it } from 'vitest';
import { axialThrustSlope, type GustCraft, gustJolt } from '../../src/flight/gustJolt.ts';

const craft: GustCraft = {
  mass: 0.7,
  gravity: 9.80665,
  airDensity: 1.225,
  dragArea: 0.012,
  topDragArea: 0.02,
  rotorDragSlope: 0.08,
  axialThrustSlope: 0.6,
};

describe('sharp-edged gust', () => {
  it('agrees with the forces worked by hand', () => {
    // 0.5 x 1.225 x 0.012 x (10^2 - 4^2) = 0.6174 N, rotors 0.08 x 6 = 0.48 N: 1.0974/0.7 = 1.567714 m/s2.
    const jolt = gustJolt(craft, { wind: 4, along: 6, upward: 0, reactionTime: 0.3 });
    expect(jolt.push).toBeCloseTo(1.567714, 6);
    expect(jolt.pushByRotors).toBeCloseTo(0.48 / 0.7, 9);
    expect(jolt.speedGained).toBeCloseTo(0.4703143, 6);
    expect(jolt.drift).toBeCloseTo(0.0705471, 6);
    expect(jolt.loadFactor).toBe(1);
    expect(jolt.jolt).toBeCloseTo(1.567714 / 9.80665, 6);
  });

  it('lifts by the thrust that an upward gust gives', () => {
    // 0.6 x 3 = 1.8 N and 0.5 x 1.225 x 0.02 x 9 = 0.11025 N.
    const up = gustJolt(craft, { wind: 0, along: 0, upward: 3, reactionTime: 0 });
    expect(up.loadFactor).toBeCloseTo(1 + 1.91025 / (0.7 * 9.80665), 9);
    const down = gustJolt(craft, { wind: 0, along: 0, upward: -3, reactionTime: 0 });
    expect(down.heave).toBeCloseTo(-up.heave, 12);
  });

  it('a lull pushes back against the wind', () => {
    expect(gustJolt(craft, { wind: 8, along: -5, upward: 0, reactionTime: 0.2 }).push).toBeLessThan(0);
  });

  it('refuses what is out of range', () => {
    const gust = { wind: 4, along: 6, upward: 0, reactionTime: 0.3 };
    expect(() => gustJolt({ ...craft, mass: 0 }, gust)).toThrow(/mass/);
    expect(() => gustJolt(craft, { ...gust, wind: -1 })).toThrow(/wind/);
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
