import { describe, expect, it } from 'vitest';
import { assessCraft } from '../../../src/assess/assess.ts';
import type { Assessment } from '../../../src/assess/assessment.ts';
import { levelFlight } from '../../../src/assess/parts/levelFlight.ts';
import { controlInReserve } from '../../../src/assess/parts/reserve.ts';
import type { AssessPart, PartContext } from '../../../src/assess/parts/types.ts';
import { windHolding } from '../../../src/assess/parts/wind.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import type { Part } from '../../../src/build/schema/part.ts';
import type { Shelf } from '../../../src/build/shelf.ts';
import { shippedShelf } from '../../cli/fakeIo.ts';
import { contextFor, craftOf, demoBrief, demoBuild } from '../parts/crafts.ts';

/**
 * What the trade says of layouts, mass and guards (all common practice, no source), on whole builds of the shelf by
 * the assessment itself. The physics behind each is tested alone in test/flight/emerging.
 */
const turnstone = demoBuild('first-freestyle/turnstone');
const brief = demoBrief('first-freestyle/turnstone');

const onFrame = (frame: string, change: Partial<Build> = {}): PartContext =>
  contextFor({ ...turnstone, frame: { part: frame }, ...change }, brief, shippedShelf());

const withPart = (shelf: Shelf, id: string, change: (part: Part) => Part): Shelf => ({
  ...shelf,
  parts: new Map(shelf.parts).set(id, change(shelf.parts.get(id)!)),
});

const measured = (part: AssessPart, context: PartContext, id: string): number =>
  part.run(context).measures.find((measure) => measure.id === id)!.value;

describe('dead cat against true X, the same parts on both', () => {
  const meanOf = (context: PartContext, end: 1 | -1, what: 'thrust' | 'windingTemperature'): number => {
    const { motorsAtSpeed } = levelFlight.run(context).data!;
    const names = context.craft.layout.motors
      .filter(({ position }) => end * position[0] > 0)
      .map(({ name }) => name);
    const values = motorsAtSpeed!
      .filter(({ motor }) => names.includes(motor))
      .map(({ cruise }) => cruise[what] ?? Number.NaN);
    return values.reduce((sum, value) => sum + value, 0) / values.length;
  };
  const ratio = (context: PartContext) => meanOf(context, 1, 'thrust') / meanOf(context, -1, 'thrust');
  const hotter = (context: PartContext) =>
    meanOf(context, 1, 'windingTemperature') - meanOf(context, -1, 'windingTemperature');
  const cat = onFrame('kittiwake-5');
  const trueX = onFrame('turnstone-5');

  it('loads its front pair more in cruise and runs it hotter', () => {
    expect(ratio(cat)).toBeGreaterThan(1.04);
    expect(ratio(cat)).toBeLessThan(1.6);
    expect(hotter(cat)).toBeGreaterThan(hotter(trueX));
  });

  it('sliding the pack back trades that away, until the rear works harder', () => {
    const slid = [-0.015, -0.03].map((offset) =>
      onFrame('kittiwake-5', { pack: { ...turnstone.pack, offset } }),
    );
    const [little, far] = slid as [PartContext, PartContext];
    expect(ratio(little)).toBeLessThan(ratio(cat));
    expect(ratio(far)).toBeLessThan(ratio(little));
    expect(hotter(far)).toBeLessThan(hotter(cat));
  });
});

describe('the heavier of two craft of one shape', () => {
  it('is jolted and pushed less by the same gust', () => {
    const heavier = withPart(shippedShelf(), turnstone.pack.part, (part) => ({
      ...part,
      mass: { ...part.mass, value: 2 * part.mass.value },
    }));
    const light = onFrame('turnstone-5');
    const heavy = contextFor(turnstone, brief, heavier);
    const massRatio = light.craft.massProperties.mass / heavy.craft.massProperties.mass;
    for (const id of ['gust-jolt', 'gust-push']) {
      const between = measured(windHolding, heavy, id) / measured(windHolding, light, id);
      expect(between, id).toBeLessThan(0.97);
      expect(between, id).toBeGreaterThan(0.95 * massRatio);
    }
  });
});

describe('more motors', () => {
  const single = withPart(shippedShelf(), turnstone.controllers!.part, (part) =>
    part.kind === 'controller' ? { ...part, form: 'single', mass: { value: 0.009 } } : part,
  );
  const control = (frame: string) =>
    controlInReserve.run(contextFor({ ...turnstone, frame: { part: frame } }, brief, single));
  const valueIn = (result: ReturnType<typeof control>, id: string) =>
    result.measures.find((measure) => measure.id === id)!.value;
  const four = control('turnstone-5');
  const six = control('eider-hexa');
  const coaxial = control('smew-x8');

  it('fail more often, in proportion', () => {
    expect(valueIn(six, 'motor-failures') / valueIn(four, 'motor-failures')).toBeCloseTo(6 / 4, 9);
    expect(valueIn(coaxial, 'motor-failures') / valueIn(four, 'motor-failures')).toBeCloseTo(2, 9);
  });

  it('earn no credit in a flat six, and some where pairs share an arm', () => {
    expect(valueIn(four, 'left-after-motor-out')).toBe(0);
    expect(valueIn(six, 'left-after-motor-out')).toBe(0);
    expect(valueIn(coaxial, 'left-after-motor-out')).toBeGreaterThan(0.1);
    expect(valueIn(six, 'failures-without-control')).toBeGreaterThan(
      valueIn(four, 'failures-without-control'),
    );
    // Physics' answer is told for what it rests on: once it stood as `0, exact`, though common controllers share no load anew.
    const lost = coaxial.measures.find(({ id }) => id === 'failures-without-control')!;
    const all = coaxial.measures.find(({ id }) => id === 'motor-failures')!;
    expect(lost.value).toBe(0);
    expect(lost.words).toMatch(/^none if the load is shared anew, else up to \d+$/);
    expect(lost.band).toEqual([0, all.band[1]]);
    expect(lost.leansOn[0]?.input).toMatch(/shares the load anew/);
  });
});

describe('guards', () => {
  it('cost mass and forward speed', () => {
    const build = demoBuild('guarded/dotterel');
    const guardedBrief = demoBrief('guarded/dotterel');
    const guarded = contextFor(build, guardedBrief, shippedShelf());
    const rings = guarded.craft.massItems.filter(({ name }) => name.endsWith(' guard'));
    expect(rings).toHaveLength(4);
    const ringMass = rings.reduce((sum, { amount }) => sum + ('mass' in amount ? amount.mass : 0), 0);
    const bareShelf = withPart(shippedShelf(), build.frame.part, (part) => {
      if (part.kind !== 'frame') return part;
      const { guards: _, ...rest } = part;
      return { ...rest, mass: { ...part.mass, value: part.mass.value - ringMass } };
    });
    const bare = contextFor(build, guardedBrief, bareShelf);
    expect(bare.craft.massProperties.mass).toBeLessThan(guarded.craft.massProperties.mass);
    const speeds = [guarded, bare].map((context) => measured(levelFlight, context, 'top-speed'));
    expect(speeds[1]! / speeds[0]!).toBeGreaterThan(1.05);
    expect(speeds[1]! / speeds[0]!).toBeLessThan(2);
  });
});

describe('the pack', () => {
  it('above the plate brings the centre of gravity nearer the propellers than one below', () => {
    const sided = (side: 'above' | 'below'): Assessment => {
      const build = { ...turnstone, pack: { ...turnstone.pack, side } };
      const context = contextFor(build, brief, shippedShelf(), false);
      return assessCraft(craftOf(build), context);
    };
    const height = (assessment: Assessment) =>
      assessment.measures.find(({ id }) => id === 'balance-height')!.value;
    const discs = turnstoneDiscHeight();
    expect(Math.abs(discs - height(sided('above')))).toBeLessThan(Math.abs(discs - height(sided('below'))));
  });

  function turnstoneDiscHeight(): number {
    return -craftOf(turnstone).motors[0]!.discPlace[2];
  }
});
