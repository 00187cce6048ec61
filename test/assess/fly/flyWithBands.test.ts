import { expect, it } from 'vitest';
import { flownMeasures } from '../../../src/assess/flownMeasures.ts';
import { flyWithBands } from '../../../src/assess/fly/flyWithBands.ts';
import type { Flown, FlyRequest } from '../../../src/assess/fly/types.ts';
import { controlInReserve } from '../../../src/assess/parts/reserve.ts';
import { contextOf } from '../parts/crafts.ts';

const context = contextOf('first-freestyle/turnstone');
const { craft, brief, flight } = context;
if (flight === undefined) throw new Error('no hover');

function flown(request: Partial<FlyRequest> & Pick<FlyRequest, 'scene'>): Flown {
  const flying = flyWithBands({ craft, flight: flight! }, { wind: 0, seed: 1, ...request });
  let step = flying.next();
  let share = 0;
  while (step.done !== true) {
    expect(step.value).toBeGreaterThanOrEqual(share);
    expect(step.value).toBeLessThanOrEqual(1);
    share = step.value;
    step = flying.next();
  }
  if (!step.value.ok) throw new Error(step.value.reason);
  return step.value.value;
}

const bandOf = (of: Flown, id: string) => {
  const found = of.figures.find((each) => each.id === id);
  if (found?.band === undefined) throw new Error(`${id} has no band`);
  expect(found.band[0]).toBeLessThan(found.simulated);
  expect(found.band[1]).toBeGreaterThan(found.simulated);
  return found.band;
};

// Once points alone. The same doubts one at a time through the closed forms (JCGM 100:2008) are another way to the same width.
it('is as unsure of a bank as the closed form moved one input at a time', () => {
  const [low, high] = bandOf(flown({ scene: 'bank' }), 'roll-bank-time');
  const told = controlInReserve.run(context).measures.find(({ id }) => id === 'roll-bank-time')!;
  const ratio = (high - low) / (told.band[1] - told.band[0]);
  expect(ratio).toBeGreaterThan(0.7);
  expect(ratio).toBeLessThan(1.4);
});

it('is as unsure of a hover as the assessment', () => {
  const [low, high] = bandOf(flown({ scene: 'hover', duration: 1 }), 'hover-throttle');
  const told = flownMeasures(craft, brief, flight).find(({ id }) => id === 'hover-throttle')!;
  const ratio = (high - low) / (told.band[1] - told.band[0]);
  expect(ratio).toBeGreaterThan(0.7);
  expect(ratio).toBeLessThan(1.4);
});

it('has the scatter of the gusts in a band of rough air, and is the same flight every time', () => {
  const request = { scene: 'rough air', wind: 6, duration: 5 } as const;
  const one = flown(request);
  // Five seconds scatter far more than a minute's fifth.
  const [low, high] = bandOf(one, 'hold-sway');
  const { simulated } = one.figures.find(({ id }) => id === 'hold-sway')!;
  expect((high - low) / simulated).toBeGreaterThan(0.4);
  expect(flown(request).figures).toEqual(one.figures);
});
