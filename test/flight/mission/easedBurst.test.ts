import { describe, expect, it } from 'vitest';
import { cutOffVoltage } from '../../../src/flight/cutOff.ts';
import { hoverStory } from '../../../src/flight/hoverStory.ts';
import { flyMission } from '../../../src/flight/mission/flyMission.ts';
import type { Leg } from '../../../src/flight/mission/types.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { exampleQuad } from '../exampleModel.ts';

const drag = {
  front: { area: 0.01, coefficient: 1 },
  side: { area: 0.012, coefficient: 1 },
  top: { area: 0.02, coefficient: 1 },
};
const FROST = 258.15;
const frozen = exampleQuad({ airTemperature: FROST, packTemperature: FROST });

function fly(model: typeof frozen, ...legs: Leg[]) {
  const flown = flyMission(model, neutralLevers, drag, legs);
  if (!flown.ok) throw new Error(flown.reason);
  return flown.value;
}

// Once the first burst in the cold was told as the end of the flight, which so landed with nearly all of its charge.
describe('a burst that would pull a cold pack below its cut-off', () => {
  it('is eased to the throttle that keeps it there, and the flight goes on', () => {
    const flown = fly(
      frozen,
      { kind: 'full throttle', duration: 8 },
      { kind: 'pull', thrustToWeight: 9, duration: 8 },
      { kind: 'hover', duration: 20 },
    );
    expect(flown.end).toBe('landed');
    const [full, pull, hover] = flown.legs;
    for (const burst of [full!, pull!]) {
      expect(burst.eased).toBeGreaterThan(0.3);
      expect(burst.eased).toBeLessThan(1);
      expect(burst.lowestVoltage).toBeCloseTo(cutOffVoltage(frozen.pack), 9);
    }
    expect(hover!.eased).toBeUndefined();
    expect(hover!.lowestVoltage).toBeGreaterThan(cutOffVoltage(frozen.pack));
  });

  it('is left alone where the pack bears it', () => {
    const [full] = fly(exampleQuad(), { kind: 'full throttle', duration: 2 }).legs;
    expect(full!.eased).toBeUndefined();
  });

  it('ends the flight where even a hover cannot be held, with the cells at their cut-off', () => {
    const flown = fly(frozen, { kind: 'full throttle', duration: 3000 });
    expect(flown.end).toBe('cut-off voltage');
    expect(flown.legs[0]!.lowestVoltage).toBeCloseTo(cutOffVoltage(frozen.pack), 9);
    // Of one temperature a pack that has not been worked hard hovers on for longer.
    const cold = { ...frozen, pack: { ...frozen.pack, heatCapacity: 1e9 } };
    const worked = fly(cold, { kind: 'full throttle', duration: 3000 });
    const hovered = fly(cold, { kind: 'hover', duration: 3000 });
    expect(worked.end).toBe('cut-off voltage');
    expect(hovered.chargeLeft).toBeLessThan(worked.chargeLeft);
  });

  it('takes the same from minutes flown', () => {
    const punchy = { name: 'test', source: 'test', bins: [{ share: 1, throttle: 1 }] } as const;
    const story = hoverStory(frozen, neutralLevers, [punchy]);
    if (!story.ok) throw new Error(story.reason);
    const [style] = story.value.styles;
    expect(style!.easedFrom).toBeGreaterThan(0.9);
    expect(style!.lowestVoltage).toBeCloseTo(cutOffVoltage(frozen.pack), 9);
  });
});

describe('a steady leg', () => {
  it('that the pack cannot hold ends the flight in the air, whatever a burst might do', () => {
    const legs: Leg[] = [
      { kind: 'hover', duration: 300 },
      { kind: 'cruise', airspeed: 32, distance: 20000 },
    ];
    const flown = fly(frozen, ...legs);
    expect(flown.end).not.toBe('landed');
    expect(flown.legs.at(-1)!.eased).toBeUndefined();
  });
});
