import { describe, expect, it } from 'vitest';
import type { DragAreas } from '../../../src/airframe/types.ts';
import { forwardCraft, forwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import { hoverStory } from '../../../src/flight/hoverStory.ts';
import { flyMission } from '../../../src/flight/mission/flyMission.ts';
import type { Leg } from '../../../src/flight/mission/types.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { exampleQuad } from '../exampleModel.ts';

const drag: DragAreas = {
  front: { area: 0.008, coefficient: 1.1 },
  side: { area: 0.009, coefficient: 1.1 },
  top: { area: 0.022, coefficient: 1.1 },
};

/** No cold in it: at 25 degC and above the capacity is the nameplate's [K]. */
const WARM = 298.15;

function flown(legs: readonly Leg[], change = {}) {
  const result = flyMission(exampleQuad({ airTemperature: WARM, ...change }), neutralLevers, drag, legs);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
}

describe('mission', () => {
  it('spends exactly the charge that its currents carry', () => {
    const mission = flown([
      { kind: 'idle', duration: 20 },
      { kind: 'climb', speed: 5, height: 40 },
      { kind: 'cruise', airspeed: 14, distance: 700, headwind: 4 },
      { kind: 'full throttle', duration: 3 },
      { kind: 'hover', duration: 30 },
    ]);
    expect(mission.end).toBe('landed');
    const drawn = mission.legs.reduce((sum, leg) => sum + leg.meanCurrent * leg.duration, 0);
    expect(drawn / (1.3 * 3600)).toBeCloseTo(1 - mission.chargeLeft, 9);
    mission.legs.forEach((leg, i) => {
      expect(leg.duration).toBeCloseTo([20, 8, 70, 3, 30][i]!, 9);
    });
    expect(mission.legs[2]!.distance).toBeCloseTo(700, 9);
    expect(mission.legs[0]!.meanCurrent).toBeLessThan(mission.legs[4]!.meanCurrent);
    expect(mission.legs[3]!.lowestVoltage).toBeLessThan(mission.legs[4]!.lowestVoltage);
  });

  it('hovers as long as the hover story says, give or take the pack’s own warmth', () => {
    const story = hoverStory(exampleQuad({ airTemperature: WARM }), neutralLevers, []);
    if (!story.ok) throw new Error(story.reason);
    const mission = flown([{ kind: 'hover', duration: story.value.endurance.duration }]);
    expect(mission.chargeLeft).toBeCloseTo(0.2, 2);
    const steps = flown(Array.from({ length: 40 }, () => ({ kind: 'hover', duration: 10 }) as const));
    const whole = flown([{ kind: 'hover', duration: 400 }]);
    expect(steps.chargeLeft).toBeCloseTo(whole.chargeLeft, 4);
  });

  it('draws in a cruise what level flight asks', () => {
    const craft = forwardCraft(exampleQuad(), neutralLevers, drag);
    if (!craft.ok) throw new Error(craft.reason);
    const mission = flown([{ kind: 'cruise', airspeed: 15, distance: 3000 }]);
    const middle = forwardPoint(craft.value, 15, 0.5 * (1 + mission.chargeLeft));
    if (!middle.ok) throw new Error(middle.reason);
    expect(mission.legs[0]!.meanCurrent / middle.value.point.packCurrent).toBeCloseTo(1, 1);
  });

  it('warms a hard-flown pack, and ends at the cut-off or empty, into the reserve', () => {
    const mission = flown([{ kind: 'full throttle', duration: 200 }], { landingReserve: 0.2 });
    expect(mission.end).not.toBe('landed');
    expect(mission.intoReserve).toBe(true);
    expect(mission.duration).toBeLessThan(60);
    expect(mission.legs[0]!.after.temperature).toBeGreaterThan(298.15 + 5);
  });

  it('says which leg cannot be flown', () => {
    const fast = flyMission(exampleQuad(), neutralLevers, drag, [
      { kind: 'hover', duration: 5 },
      { kind: 'cruise', airspeed: 70, distance: 100 },
    ]);
    expect(fast.ok ? '' : fast.reason).toMatch(/leg 2 \(cruise\): /);
    expect(() => flown([{ kind: 'cruise', airspeed: 5, distance: 100, headwind: 6 }])).toThrow(
      /above its headwind/,
    );
    expect(() => flown([{ kind: 'hover', duration: -1 }])).toThrow(/duration must be above 0; found -1/);
  });
});
