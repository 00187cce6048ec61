import { describe, expect, it } from 'vitest';
import { drydenLowAltitude } from '../../../src/air/dryden.ts';
import { standardAtmosphere } from '../../../src/air/standardAtmosphere.ts';
import { massProperties } from '../../../src/airframe/massProperties.ts';
import type { MassItem } from '../../../src/airframe/types.ts';
import { bodyDragOf } from '../../../src/flight/forward/bodyDrag.ts';
import { glauertRotor, type ObliqueRotor } from '../../../src/flight/forward/edgewise.ts';
import { forwardCraft } from '../../../src/flight/forward/forwardPoint.ts';
import { type ForwardCraft, forwardTrim } from '../../../src/flight/forward/forwardTrim.ts';
import { gustCraft } from '../../../src/flight/gustCraft.ts';
import { gustJolt, type Jolt } from '../../../src/flight/gustJolt.ts';
import { holdInGusts, plainHold } from '../../../src/flight/gustResponse.ts';
import { neutralLevers, type RotorRead } from '../../../src/flight/types.ts';
import type { Outcome } from '../../../src/numerics/outcome.ts';
import { bladeFromNameplate } from '../../../src/rotor/blade.ts';
import { sectionTables } from '../../../src/rotor/sections.ts';
import { solveRotor } from '../../../src/rotor/solveRotor.ts';
import { exampleQuad } from '../exampleModel.ts';
import { plainParts } from './plainParts.ts';

const known = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

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

const asThrust: ObliqueRotor = (read, request) => {
  const found = glauertRotor(read, request);
  const inPlaneForce = 0.011 * request.thrust * request.edgewiseSpeed;
  return found.ok ? { ok: true, value: { ...found.value, inPlaneForce } } : found;
};

function craft(packMass: number, law: RotorDragLaw): ForwardCraft {
  const parts = items(packMass);
  const { mass } = massProperties(parts);
  const stations = exampleQuad().stations.map((station) => ({
    ...station,
    rotor,
    propDiameter: blade.diameter,
    downloadShare: 0,
  }));
  const oblique = law === 'as thrust' ? asThrust : glauertRotor;
  return known(
    forwardCraft(exampleQuad({ mass, stations }), neutralLevers, bodyDragOf(parts).bluff, {
      oblique,
      wakes: 'left out',
    }),
  );
}

function joltOf(packMass: number, law: RotorDragLaw): Jolt {
  const struck = craft(packMass, law);
  return known(gustJolt(struck, known(forwardTrim(struck, 3)), gust));
}

const gust = { along: 6, upward: 2, reactionTime: 0.3 };

const massOf = (packMass: number): number => massProperties(items(packMass)).mass;
const massRatio = massOf(0.15) / massOf(0.35);

describe('two craft of one shape', () => {
  for (const law of ['as thrust', 'as solved'] as const) {
    const light = joltOf(0.15, law);
    const heavy = joltOf(0.35, law);

    it(`the heavier is pushed, lifted and jolted less (rotor drag ${law})`, () => {
      const ratio = (key: keyof Jolt): number => heavy[key] / light[key];
      expect(ratio('push')).toBeLessThan(1);
      expect(ratio('heave')).toBeLessThan(0.9);
      expect(ratio('jolt')).toBeLessThan(0.95);
      expect(ratio('drift')).toBeLessThan(1);
      // About as mass alone does: see the next.
      expect(ratio('jolt')).toBeGreaterThan(0.95 * massRatio);
    });
  }

  it('not by mass alone where an updraught strikes: harder working rotors catch more of it', () => {
    const heave = (packMass: number): number => {
      const struck = craft(packMass, 'as solved');
      const up = { along: 0, upward: 2, reactionTime: 0 };
      return known(gustJolt(struck, known(forwardTrim(struck, 0)), up)).heave;
    };
    expect(heave(0.35) / heave(0.15)).toBeGreaterThan(1.1 * massRatio);
  });

  // Momentum theory at small V: v = vh (1 - V2/4 vh2), so the inflow that goes falls as 1/vh, and thrust is lost to inflow in
  // proportion to rotor speed, which goes as vh: the lift gained is the same whatever the weight.
  it('by mass alone where flow along the discs lifts it', () => {
    const heave = (packMass: number): number => {
      const struck = craft(packMass, 'as thrust');
      const along = { along: 3, upward: 0, reactionTime: 0 };
      return known(gustJolt(struck, known(forwardTrim(struck, 0)), along)).heave;
    };
    expect(Math.abs(heave(0.35) / heave(0.15) / massRatio - 1)).toBeLessThan(0.12);
  });

  it('where it stops: what the rotors catch in proportion to thrust pushes both alike', () => {
    // Struck without leaning and by no more than moves lift little: at fixed rotor speed the thrust grows with the gust.
    const push = (packMass: number): number => {
      const struck = craft(packMass, 'as thrust');
      const small = { along: 0.3, upward: 0, reactionTime: 0 };
      return known(gustJolt(struck, known(forwardTrim(struck, 0)), small)).pushByRotors;
    };
    expect(Math.abs(push(0.35) / push(0.15) - 1)).toBeLessThan(0.005);
  });

  it('the heavier also sways less in the same rough air', () => {
    const swayed = (packMass: number): number => {
      const c = known(gustCraft(craft(packMass, 'as solved'), 9.80665));
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
