import { describe, expect, it } from 'vitest';
import { askFrame } from '../../../src/airframe/askFrame.ts';
import { massProperties } from '../../../src/airframe/massProperties.ts';
import { changesOf } from '../../../src/assess/parts/shake/changes.ts';
import { armsMass, craftFrame, withArms } from '../../../src/assess/parts/shake/craftFrame.ts';
import { forcingOf, pointAt, throttleAt } from '../../../src/assess/parts/shake/forcing.ts';
import { boardShake, crossingsOf, feltAt } from '../../../src/assess/parts/shake/respond.ts';
import { quickModes } from '../../../src/assess/parts/shake/shakeMeasures.ts';
import { shakePart } from '../../../src/assess/parts/shake/shakePart.ts';
import { firstModesOf, structureOf } from '../../../src/assess/parts/shake/structure.ts';
import { contextOf, DEMOS, demoBuild } from './crafts.ts';

const turnstone = contextOf('first-freestyle/turnstone');
const { craft } = turnstone;
const solvedOf = (name: (typeof DEMOS)[number]) => {
  const structure = structureOf(craftFrame(contextOf(name, {}, false).craft));
  if (!structure.ok) throw new Error(structure.reason);
  return structure.value;
};

describe('a craft as a beam model', () => {
  it.each(DEMOS)('%s: tips, hub and arms weigh what the craft weighs', (name) => {
    const context = contextOf(name, {}, false);
    const question = craftFrame(context.craft);
    const tips = question.arms.reduce((sum, { arm }) => sum + (arm.tipBody?.mass ?? 0), 0);
    const whole = massProperties(context.craft.massItems).mass;
    const beams = armsMass(question);
    const { hub } = question;
    // What the beams leave out: tongues in the clamp and the pads' round ends, each arm's own.
    const left = whole - tips - beams - hub.body.mass;
    expect(left).toBeGreaterThan(-1e-3 * whole);
    expect(left).toBeLessThan(0.06 * whole);
  });

  it('holds each motor with its propeller on its own arm', () => {
    const { extras, motors, propellers } = craft.parts;
    const shoes = extras.filter(({ part }) => part.kind === 'mount' && part.holds === 'arm guard');
    const shod = shoes.reduce((sum, { part, count }) => sum + part.mass.value * count, 0) / 4;
    const motor = motors[0]!.mass.value + propellers[0]!.mass.value + shod;
    for (const { arm } of craftFrame(craft).arms) expect(arm.tipBody!.mass).toBeCloseTo(motor, 9);
  });

  it('carries guards from a bag as hoops on the ends of its arms, not in the middle', () => {
    const build = demoBuild('first-freestyle/turnstone');
    const fender = { part: 'fender-5', count: 1 };
    const guarded = contextOf(
      'first-freestyle/turnstone',
      { build: { extras: [...build.extras, fender] } },
      false,
    ).craft;
    const [bare, hooped] = [craft, guarded].map(craftFrame);
    const tip = (question: typeof bare) => question!.arms[0]!.arm.tipBody!;
    const extra = guarded.parts.extras.at(-1)!.part.mass.value;
    expect(tip(hooped).mass - tip(bare).mass).toBeCloseTo(extra / 4, 9);
    expect(Math.abs(hooped!.hub.body.mass - bare!.hub.body.mass)).toBeLessThan(0.05 * extra);
    const modes = [bare, hooped].map((question) => firstModesOf(question!));
    expect(modes[1]!.ok && modes[0]!.ok && modes[1]!.value.upright / modes[0]!.value.upright).toBeLessThan(
      0.98,
    );
  });

  it('changes every arm alike and leaves the rest alone', () => {
    const question = craftFrame(craft);
    const wider = withArms(question, { wider: 2e-3, shorter: 4e-3, tipMass: -1e-3 });
    for (const [i, { arm }] of wider.arms.entries()) {
      const before = question.arms[i]!.arm;
      expect(arm.length).toBeCloseTo(before.length - 4e-3, 12);
      expect(arm.outline[0]!.width).toBeCloseTo(before.outline[0]!.width + 2e-3, 12);
      expect(arm.tipBody!.mass).toBeCloseTo(before.tipBody!.mass - 1e-3, 12);
    }
    expect(wider.hub).toBe(question.hub);
  });

  it('with a heavy hub an arm rings as a cantilever with a tip mass (Blevins 1979, from memory)', () => {
    const question = craftFrame(craft);
    const { arm } = question.arms[0]!;
    const even = arm.outline.map(({ at }) => ({ at, width: 0.012 }));
    const heavy = {
      ...question,
      hub: {
        kind: 'rigid' as const,
        body: {
          mass: 1e4,
          centreOfGravity: [0, 0, 0] as const,
          inertia: [
            [1e3, 0, 0],
            [0, 1e3, 0],
            [0, 0, 1e3],
          ] as const,
        },
      },
      arms: question.arms.map((placed) => ({
        ...placed,
        arm: { ...placed.arm, outline: even, grip: { kind: 'plain' as const } },
      })),
    };
    const answer = askFrame(heavy);
    if (!answer.ok) throw new Error(answer.reason);
    const second = (0.012 * arm.thickness ** 3) / 12;
    const own = arm.density * 0.012 * arm.thickness * arm.length;
    const { mass, inertia } = arm.tipBody!;
    // f = sqrt(3 E I / (L3 (M + 33/140 m))) / 2 pi for a point on the tip; the motor's rotary inertia lowers it.
    const point =
      Math.sqrt((3 * arm.moduli.E1 * second) / (arm.length ** 3 * (mass + (33 / 140) * own))) / (2 * Math.PI);
    const upright = answer.value.frequencies.filter(({ shape }) => shape.startsWith('out-of-plane'))[0]!;
    expect(upright.frequency).toBeLessThan(point);
    expect(upright.frequency).toBeGreaterThan(
      point / Math.sqrt(1 + (3 * inertia[1]) / (mass * arm.length ** 2)) / 1.1,
    );
  });
});

describe('forces and response', () => {
  const forcing = forcingOf(craft, turnstone.flight!);
  const structure = solvedOf('first-freestyle/turnstone');

  it('leaves G 6.3 of ISO 21940-11 at full throttle: e omega = 6.3 mm/s', () => {
    const full = forcing.throttles.at(-1)!.angularSpeed;
    const motor = craft.parts.motors[0]!.mass.value;
    const propeller = craft.parts.propellers[0]!.mass.value;
    for (const { imbalance } of forcing.motors) {
      expect((imbalance / (0.5 * motor + propeller)) * full).toBeCloseTo(6.3e-3, 9);
    }
  });

  it('has once a turn, once a blade, and the six steps of every electrical turn', () => {
    expect(forcing.orders.map(({ order }) => order)).toEqual([1, 3, 42]);
  });

  it('throttle and speed are each other’s inverse along the table', () => {
    for (const throttle of [0.11, 0.33, 0.58, 0.92]) {
      const point = pointAt(forcing.throttles, throttle)!;
      expect(throttleAt(forcing.throttles, point.angularSpeed)).toBeCloseTo(throttle, 9);
    }
    expect(throttleAt(forcing.throttles, 1e6)).toBeUndefined();
  });

  it('shakes in proportion to the imbalance, and a nick adds to it', () => {
    const point = pointAt(forcing.throttles, 0.7)!;
    const once = boardShake(craft, structure, forcing, point, { imbalance: 1, pulse: 0 });
    const thrice = boardShake(craft, structure, forcing, point, { imbalance: 3, pulse: 0 });
    expect(thrice.acceleration).toBeCloseTo(3 * once.acceleration, 9);
    expect(once.nickedTurnRate).toBeGreaterThan(once.gyroTurnRate);
  });

  it('feels the modes that move the middle and not the balanced ones', () => {
    const felt = feltAt(craft, structure, forcing);
    const of = (shape: string) => felt[structure.modes.findIndex((mode) => mode.shape === shape)]!;
    expect(of('out-of-plane together')).toBeGreaterThan(5);
    expect(of('roll rocking')).toBeGreaterThan(3);
    expect(of('out-of-plane pair')).toBeLessThan(1.3);
    expect(of('in-plane scissor')).toBeLessThan(1.5);
  });

  it('a crossing turns at the mode’s frequency over its order', () => {
    const felt = feltAt(craft, structure, forcing);
    const crossings = crossingsOf(structure, felt, forcing);
    expect(crossings.length).toBeGreaterThan(2);
    const [low, high] = [forcing.throttles[0]!.angularSpeed, forcing.throttles.at(-1)!.angularSpeed];
    for (const { mode, order, angularSpeed, throttle, avoid } of crossings) {
      const { frequency } = structure.modes[mode]!;
      expect((order * angularSpeed) / (2 * Math.PI)).toBeCloseTo(frequency, 6);
      expect(angularSpeed).toBeGreaterThan(low * 0.89);
      expect(angularSpeed).toBeLessThan(high * 1.12);
      expect(avoid[0]).toBeLessThanOrEqual(throttle);
      expect(avoid[1]).toBeGreaterThanOrEqual(throttle);
    }
  });

  it('rubber under the board lets little through far above its own frequency', () => {
    const hard = contextOf('first-freestyle/turnstone', {
      build: { flightController: { ...craft.build.flightController, gyroMounting: 'hard' } },
    });
    const point = pointAt(forcing.throttles, 0.9)!;
    const soft = boardShake(craft, structure, forcing, point);
    const bare = boardShake(hard.craft, structure, forcing, point);
    expect(bare.gyroTurnRate).toBeCloseTo(bare.turnRate, 12);
    expect(soft.gyroTurnRate).toBeLessThan(0.35 * bare.gyroTurnRate);
  });
});

describe('the shake part', () => {
  it('bands hold their values, and the frequency leans on sheet and root', () => {
    const { measures } = shakePart.run(turnstone);
    for (const { id, value, band } of measures) {
      expect(band[0], id).toBeLessThanOrEqual(value);
      expect(band[1], id).toBeGreaterThanOrEqual(value);
    }
    const first = measures.find(({ id }) => id === 'first-upright-mode')!;
    expect(first.leansOn[0]!.input).toMatch(/sheet/);
    // f ~ t^1.5 E^0.5 for a light arm with a heavy tip: 4 % in thickness, 8 % in modulus, some more for the root.
    const spread = Math.log(first.band[1] / first.band[0]) / 2 / 1.28;
    expect(spread).toBeGreaterThan(0.9 * Math.hypot(1.5 * 0.04, 0.04));
    expect(spread).toBeLessThan(1.25 * Math.hypot(1.5 * 0.04, 0.04));
  });

  it('the quick modes are the full ones, with a closed-form band', () => {
    const full = shakePart.run(turnstone).measures;
    for (const quick of quickModes(craft)) {
      const same = full.find(({ id }) => id === quick.id)!;
      expect(quick.value).toBeCloseTo(same.value, 9);
      const [a, b] = [quick, same].map(({ band }) => band[1] - band[0]);
      expect(a! / b!).toBeGreaterThan(0.7);
      expect(a! / b!).toBeLessThan(1.4);
    }
  });

  it('tells what each change weighs: 1 mm on every arm by hand', () => {
    const question = craftFrame(craft);
    const [thicker, wider] = changesOf(craft, turnstone.brief, turnstone.shelf, question);
    const thickness = craft.frame.arms[0]!.thickness;
    expect(thicker!.mass).toBeCloseTo((armsMass(question) * 1e-3) / thickness, 9);
    // Spare arms at 6.50: four of them, a fifth thicker.
    expect(thicker!.price).toBeCloseTo(4 * 6.5 * 0.2, 6);
    const now = firstModesOf(question);
    if (!now.ok) throw new Error(now.reason);
    expect(thicker!.upright).toBeGreaterThan(1.2 * now.value.upright);
    expect(wider!.price).toBeUndefined();
  });

  it('a craft without a hover still has its modes', () => {
    const { measures, data } = shakePart.run(contextOf('first-freestyle/tystie', {}, false));
    expect(measures.map(({ id }) => id)).toEqual(['first-upright-mode', 'first-sideways-mode']);
    expect(data!.shake!.response).toEqual([]);
  });
});
