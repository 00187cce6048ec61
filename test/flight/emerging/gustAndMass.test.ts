import { describe, expect, it } from 'vitest';
import { drydenLowAltitude } from '../../../src/air/dryden.ts';
import { standardAtmosphere } from '../../../src/air/standardAtmosphere.ts';
import { dragAreas } from '../../../src/airframe/dragAreas.ts';
import { massProperties } from '../../../src/airframe/massProperties.ts';
import type { MassItem } from '../../../src/airframe/types.ts';
import { glauertRotor } from '../../../src/flight/forward/edgewise.ts';
import { axialThrustSlope, type GustCraft, gustJolt, type Jolt } from '../../../src/flight/gustJolt.ts';
import { holdInGusts, plainHold } from '../../../src/flight/gustResponse.ts';
import type { RotorRead } from '../../../src/flight/types.ts';
import { bracketedRoot } from '../../../src/numerics/bracketedRoot.ts';
import { bladeFromNameplate } from '../../../src/rotor/blade.ts';
import { sectionTables } from '../../../src/rotor/sections.ts';
import { solveRotor } from '../../../src/rotor/solveRotor.ts';
import { plainParts } from './plainParts.ts';

/**
 * 'The heavier of two equal-shaped craft is pushed less by the same gust and jolts less' (common practice, no
 * source). Same boxes and arms, the pack's mass alone differs; nothing in the code knows which is heavy.
 */
const items = (packMass: number): MassItem[] =>
  plainParts({ kind: 'true X', diagonal: 0.22 }, 0.2, { mass: packMass });

/** A 5.1 x 4.3 inch propeller of three blades, by blade elements. */
const blade = bladeFromNameplate({ diameter: 5.1 * 0.0254, pitch: 4.3 * 0.0254, bladeCount: 3 });
const sections = sectionTables();
const air = standardAtmosphere({ height: 0 });
const rotor: RotorRead = (angularSpeed, axialSpeed, out) => {
  const state = solveRotor(blade, sections, { angularSpeed, axialSpeed, air });
  if (!state.ok) throw new Error(state.reason);
  out.thrust = state.value.thrust;
  out.torque = state.value.torque;
};

/** How the rotors' in-plane drag is had: from the closed form over the same blades, or simply as thrust. */
type RotorDragLaw = 'as solved' | 'as thrust';

function craft(packMass: number, law: RotorDragLaw): GustCraft {
  const parts = items(packMass);
  const { mass } = massProperties(parts);
  const sum = (face: 'front' | 'top'): number =>
    parts.reduce((total, part) => {
      const { area, coefficient } = dragAreas(part)[face];
      return total + area * coefficient;
    }, 0);
  const weight = mass * 9.80665;
  const loads = { thrust: 0, torque: 0 };
  const speed = bracketedRoot(
    (w) => {
      rotor(w, 0, loads);
      return loads.thrust - weight / 4;
    },
    200,
    4000,
    1e-6,
  );
  if (!speed.ok) throw new Error(speed.reason);
  const inPlane = glauertRotor(rotor, {
    thrust: weight / 4,
    axialSpeed: 0,
    edgewiseSpeed: 6,
    airDensity: air.density,
    diameter: blade.diameter,
    thrustScale: 1,
    torqueScale: 1,
  });
  if (!inPlane.ok) throw new Error(inPlane.reason);
  return {
    mass,
    gravity: 9.80665,
    airDensity: air.density,
    dragArea: sum('front'),
    topDragArea: sum('top'),
    rotorDragSlope: law === 'as thrust' ? 0.011 * weight : (4 * inPlane.value.inPlaneForce) / 6,
    axialThrustSlope: 4 * axialThrustSlope(rotor, speed.value),
  };
}

const gust = { wind: 3, along: 6, upward: 2, reactionTime: 0.3 };

describe('two craft of one shape', () => {
  for (const law of ['as thrust', 'as solved'] as const) {
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
    const light = gustJolt(craft(0.15, 'as thrust'), gust);
    const heavy = gustJolt(craft(0.35, 'as thrust'), gust);
    expect(heavy.pushByRotors).toBeCloseTo(light.pushByRotors, 12);
  });

  it('the heavier also sways less in the same rough air', () => {
    const swayed = (packMass: number): number => {
      const c = craft(packMass, 'as solved');
      const outcome = holdInGusts({
        ...c,
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
