import { describe, expect, it } from 'vitest';
import { drydenLowAltitude } from '../../../src/air/dryden.ts';
import { dragAreas } from '../../../src/airframe/dragAreas.ts';
import { layoutMotors } from '../../../src/airframe/layout.ts';
import { massProperties } from '../../../src/airframe/massProperties.ts';
import type { MassItem } from '../../../src/airframe/types.ts';
import { type GustCraft, gustJolt, type Jolt } from '../../../src/flight/gustJolt.ts';
import { holdInGusts, plainHold } from '../../../src/flight/gustResponse.ts';

/**
 * 'The heavier of two equal-shaped craft is pushed less by the same gust and jolts less' (common practice, no
 * source). Same boxes and arms, the pack's mass alone differs; nothing in the code knows which is heavy.
 */
function items(packMass: number): MassItem[] {
  return [
    ...layoutMotors({ kind: 'true X', diagonal: 0.22 }).motors.map(
      ({ name, position }): MassItem => ({
        name: `${name} motor`,
        part: 'motors',
        primitive: { kind: 'cylinder', diameter: 0.028, height: 0.02 },
        place: [position[0], position[1], -0.01],
        amount: { mass: 0.038 },
      }),
    ),
    {
      name: 'pack',
      part: 'pack',
      primitive: { kind: 'box', length: 0.075, width: 0.037, height: 0.042 },
      place: [0, 0, -0.03],
      amount: { mass: packMass },
    },
    {
      name: 'plates and stack',
      part: 'frame',
      primitive: { kind: 'box', length: 0.15, width: 0.04, height: 0.03 },
      place: [0, 0, 0],
      amount: { mass: 0.2 },
    },
  ];
}

/** How the rotors' in-plane drag goes with thrust: the two bounds of what blade elements say. */
type RotorDragLaw = 'with thrust' | 'with speed';

function craft(packMass: number, law: RotorDragLaw): GustCraft {
  const parts = items(packMass);
  const { mass } = massProperties(parts);
  const sum = (face: 'front' | 'top'): number =>
    parts.reduce((total, part) => {
      const { area, coefficient } = dragAreas(part)[face];
      return total + area * coefficient;
    }, 0);
  const weight = mass * 9.80665;
  const reference = 0.55 * 9.80665;
  // Thrust 1.2e-6 w^2 a rotor; its slope with axial speed goes with w, as of any blade at fixed pitch.
  const speed = Math.sqrt(weight / 4 / 1.2e-6);
  const share = law === 'with thrust' ? weight / reference : Math.sqrt(weight / reference);
  return {
    mass,
    gravity: 9.80665,
    air: { density: 1.225 },
    dragArea: sum('front'),
    topDragArea: sum('top'),
    rotorDragSlope: 0.06 * share,
    axialThrustSlope: 4 * 3.2e-4 * speed,
  };
}

const gust = { wind: 3, along: 6, upward: 2, reactionTime: 0.3 };

describe('two craft of one shape', () => {
  for (const law of ['with thrust', 'with speed'] as const) {
    const light = gustJolt(craft(0.15, law), gust);
    const heavy = gustJolt(craft(0.35, law), gust);

    it(`the heavier is pushed, lifted and jolted less (rotor drag ${law})`, () => {
      const ratio = (key: keyof Jolt): number => heavy[key] / light[key];
      expect(ratio('push')).toBeLessThan(1);
      expect(ratio('heave')).toBeLessThan(0.9);
      expect(ratio('jolt')).toBeLessThan(0.95);
      expect(ratio('drift')).toBeLessThan(1);
      // Not less than mass alone could do.
      expect(ratio('jolt')).toBeGreaterThan(craft(0.15, law).mass / craft(0.35, law).mass);
    });
  }

  it('where it stops: what the rotors catch in proportion to thrust pushes both alike', () => {
    const light = gustJolt(craft(0.15, 'with thrust'), gust);
    const heavy = gustJolt(craft(0.35, 'with thrust'), gust);
    expect(heavy.pushByRotors).toBeCloseTo(light.pushByRotors, 12);
  });

  it('the heavier also sways less in the same rough air', () => {
    const swayed = (packMass: number): number => {
      const c = craft(packMass, 'with speed');
      const outcome = holdInGusts({
        ...c,
        airDensity: c.air.density,
        wind: 6,
        turbulence: drydenLowAltitude(8, 6),
        controller: plainHold,
      });
      if (!outcome.ok) throw new Error(outcome.reason);
      return outcome.value.longitudinal.place;
    };
    expect(swayed(0.35) / swayed(0.15)).toBeLessThan(0.95);
  });
});
