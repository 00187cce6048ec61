import { expect, it } from 'vitest';
import { tune } from '../../src/choose/tune.ts';
import { demo, question, ready } from './shortlist/smallShelf.ts';

const first = demo('first-freestyle', 'turnstone');
const { template } = first;
const space = {
  frames: [template.frame.part],
  motors: [template.motors.part],
  propellers: [template.propellers.part],
  packs: [template.pack.part],
  electronics: [
    { controllers: template.controllers!.part, flightController: template.flightController.part },
  ],
  cameras: ['periwinkle-19'],
};
const asked = question(first, space, {
  wants: [{ measure: 'hardest-motor-load', weight: 1, scale: { kind: 'ramp', worst: 1.5, best: 1 } }],
});
const { searcher } = ready(asked, first.brief);

// Equal thrusts stand under the motors' centre (static equilibrium), so the pack has to bring the balance there.
it('slides the pack to where the motors share the load, and tells the way', () => {
  const off = { ...template, pack: { ...template.pack, offset: 0.02 } };
  const found = tune(off, [{ knob: 'pack-position', low: -0.03, high: 0.03 }], asked, searcher.context, 60);
  expect(found.standing).toBeGreaterThan(found.before);
  expect(found.standing).toBeGreaterThan(0.86);
  expect(found.minimum.trace.length).toBeGreaterThan(2);
  expect(found.build.pack.offset).toBe(found.settings['pack-position']);
});

it('leaves a build alone that cannot be bettered', () => {
  const ranges = [{ knob: 'camera-tilt', low: 0.2, high: 0.4 }] as const;
  // The tilt of a camera costs nothing.
  const scale = { kind: 'ramp', worst: 2000, best: 500 } as const;
  const priced = { ...asked, wants: [{ measure: 'first-flight-cost', weight: 1, scale }] };
  const found = tune(template, ranges, priced, searcher.context, 20);
  expect(found.standing).toBe(found.before);
  expect(found.build).toBe(template);
});
