import { describe, expect, it } from 'vitest';
import { forwardCraft } from '../../../src/flight/forward/forwardPoint.ts';
import { topSpeed } from '../../../src/flight/forward/speeds.ts';
import { hoverStory } from '../../../src/flight/hoverStory.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { type GuardShape, guardEffect } from '../../../src/rotor/guard.ts';
import { built, type Quad, trueX } from './craftOfParts.ts';

/**
 * 'Guards cost mass and forward speed and give static thrust only with a tight gap and a lip' (common practice, no
 * source). The ring is a part with mass and drag; what it does to the thrust is momentum theory (`guardEffect`).
 */
const RADIUS = (5.1 * 0.0254) / 2;

function fly(ring?: Omit<GuardShape, 'expansionRatio' | 'depth'>) {
  const quad: Quad =
    ring === undefined
      ? trueX
      : { ...trueX, rings: { tipGap: ring.tipGap, height: 0.014, wall: 0.002 + ring.lipRadius / 4 } };
  const { model, drag, massProperties } = built(quad);
  const guard = ring && guardEffect({ ...ring, expansionRatio: 1, depth: 0.014 }, RADIUS);
  const guarded = {
    ...model,
    stations: model.stations.map((station) => (guard ? { ...station, guard } : station)),
  };
  const story = hoverStory(guarded, neutralLevers, []);
  const craft = forwardCraft(guarded, neutralLevers, drag.bluff, { bars: drag.bars });
  if (!story.ok || !craft.ok) throw new Error('does not fly');
  const top = topSpeed(craft.value, 0.6);
  if (!top.ok) throw new Error(top.reason);
  return {
    mass: massProperties.mass,
    thrust: story.value.punch.netThrust,
    thrustToWeight: story.value.thrustToWeight,
    hoverPower: story.value.hover.chemicalPower,
    topSpeed: top.value.at.speed,
  };
}

const STRUTS = 0.0004; // [m2] a propeller
const open = fly();
const hoop = fly({ tipGap: 0.008, lipRadius: 0, blockedArea: STRUTS });
const tightNoLip = fly({ tipGap: 0.0008, lipRadius: 0, blockedArea: STRUTS });
const lipWideGap = fly({ tipGap: 0.006, lipRadius: 0.008, blockedArea: STRUTS });
const duct = fly({ tipGap: 0.0008, lipRadius: 0.008, blockedArea: STRUTS });

describe('guards', () => {
  it('weigh and slow down, whatever their kind', () => {
    for (const guarded of [hoop, tightNoLip, lipWideGap, duct]) {
      expect(guarded.mass).toBeGreaterThan(open.mass * 1.03);
      expect(guarded.topSpeed).toBeLessThan(open.topSpeed * 0.95);
      expect(guarded.topSpeed).toBeGreaterThan(open.topSpeed * 0.5);
    }
  });

  it('plain hoops lose a little static thrust; a gap or a lip alone does not turn that', () => {
    for (const guarded of [hoop, tightNoLip]) {
      expect(guarded.thrust).toBeLessThan(open.thrust);
      expect(guarded.thrust).toBeGreaterThan(open.thrust * 0.93);
    }
    expect(lipWideGap.thrust).toBeLessThan(open.thrust);
  });

  it('a tight gap with a real lip gains static thrust, never beyond the ideal 26 %', () => {
    expect(duct.thrust).toBeGreaterThan(open.thrust * 1.08);
    expect(duct.thrust).toBeLessThan(open.thrust * 1.26);
  });

  it('and may still lose by its mass: thrust to weight gains less than thrust', () => {
    expect(duct.thrustToWeight / open.thrustToWeight).toBeLessThan(duct.thrust / open.thrust);
    expect(hoop.thrustToWeight).toBeLessThan(open.thrustToWeight * 0.97);
    expect(hoop.hoverPower).toBeGreaterThan(open.hoverPower * 1.03);
  });
});
