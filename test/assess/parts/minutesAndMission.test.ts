import { describe, expect, it } from 'vitest';
import { dragOf } from '../../../src/assess/parts/dragOf.ts';
import { styleLegs } from '../../../src/assess/parts/mission/usualLegs.ts';
import { hoverStory } from '../../../src/flight/hoverStory.ts';
import { flyMission } from '../../../src/flight/mission/flyMission.ts';
import { type FlightModel, neutralLevers } from '../../../src/flight/types.ts';
import { shippedShelf } from '../../build/shippedShelf.ts';
import { contextFor, demoBrief, demoBuild } from './crafts.ts';

/**
 * Minutes flown in a style (a histogram, the pack at the air's temperature) and the same style flown as legs (a pack that
 * remembers and warms) are two roads to one time. At -10 degC they once differed up to sevenfold: a burst that sagged the pack
 * below its cut-off ended the legs at once, and was let sag by the other road.
 *
 * Short rounds, so that the order of the demands within one does not matter.
 */
const ROUND = 5;
const ROUNDS = 480;

/** Legs over minutes flown, less 1. Of one pack temperature they are one model; its own warmth only lengthens. */
const SAME_PACK = 0.01;
/** Most that warmth adds, at -10 degC; a Li-ion pack, of high resistance, warms itself most. */
const WARMTH: Readonly<Record<string, number>> = {
  'first-freestyle/turnstone': 0.04,
  'first-freestyle/redshank': 0.04,
  'cruiser/curlew': 0.02,
  'cruiser/curlew-li-ion': 0.17,
  'guarded/dotterel': 0.05,
  'micro/wheatear': 0.03,
};

function onDay(name: string, celsius: number) {
  const brief = demoBrief(name);
  const day = { ...brief, site: { ...brief.site, temperature: 273.15 + celsius } };
  const { craft, flight } = contextFor(demoBuild(name), day, shippedShelf());
  if (flight === undefined) throw new Error(`${name} does not fly at ${celsius} degC`);
  return { craft, flight };
}

/** By rounds of the style, until the charge is down to the reserve [s]. */
function flownInLegs(
  { craft, flight }: ReturnType<typeof onDay>,
  model: FlightModel,
): { readonly time: number; readonly eased: boolean } {
  const drag = dragOf(craft);
  const legs = Array.from({ length: ROUNDS }, () => styleLegs(flight.style, ROUND, 1, 1)).flat();
  const found = flyMission(
    model,
    neutralLevers,
    drag.bluff,
    legs.map(({ leg }) => leg),
    { bars: drag.bars, dragCentre: drag.centre },
  );
  if (!found.ok) throw new Error(found.reason);
  let time = 0;
  let before = 1;
  let eased = false;
  for (const leg of found.value.legs) {
    const { charge } = leg.after;
    if (charge < model.landingReserve) {
      return { time: time + (leg.duration * (before - model.landingReserve)) / (before - charge), eased };
    }
    eased ||= leg.eased !== undefined;
    time += leg.duration;
    before = charge;
  }
  throw new Error(`ended ${found.value.end} above the reserve, at ${found.value.chargeLeft}`);
}

describe.each(Object.entries(WARMTH))('%s', (name, warmth) => {
  it.each([25, 10, 0, -10])('minutes flown and legs agree at %i degC', (celsius) => {
    const day = onDay(name, celsius);
    const { model, style } = day.flight;
    const story = hoverStory(model, neutralLevers, [style]);
    if (!story.ok) throw new Error(story.reason);
    const minutes = story.value.styles[0]!;
    expect(minutes.end).toBe('landing reserve');
    const held = flownInLegs(day, { ...model, pack: { ...model.pack, heatCapacity: 1e9 } });
    expect(Math.abs(held.time / minutes.duration - 1)).toBeLessThan(SAME_PACK);
    expect(held.eased).toBe(minutes.easedFrom !== undefined);
    const warm = flownInLegs(day, model);
    expect(warm.time / minutes.duration - 1).toBeGreaterThan(-SAME_PACK);
    expect(warm.time / minutes.duration - 1).toBeLessThan(warmth);
  });
});

it('bursts are eased in the cold and not in the warm', () => {
  const easedAt = (celsius: number) => {
    const { model, style } = onDay('first-freestyle/turnstone', celsius).flight;
    const story = hoverStory(model, neutralLevers, [style]);
    return story.ok ? story.value.styles[0]!.easedFrom : undefined;
  };
  expect(easedAt(25)).toBeUndefined();
  expect(easedAt(0)).toBeLessThan(easedAt(-10)!);
});
