import { layoutMotors } from '../src/airframe/layout.ts';
import type { LayoutParameters } from '../src/airframe/types.ts';
import { forwardCraft } from '../src/flight/forward/forwardPoint.ts';
import { forwardTrim } from '../src/flight/forward/forwardTrim.ts';
import { topSpeed } from '../src/flight/forward/speeds.ts';
import { gustJolt } from '../src/flight/gustJolt.ts';
import { hoverStory } from '../src/flight/hoverStory.ts';
import { failureRate } from '../src/flight/reserve/failureRate.ts';
import { controlReserve } from '../src/flight/reserve/momentReach.ts';
import { motorOut } from '../src/flight/reserve/motorOut.ts';
import { neutralLevers } from '../src/flight/types.ts';
import type { Outcome } from '../src/numerics/outcome.ts';
import { type Chart, drawChart, type Mark } from '../src/report/chart.ts';
import { writeSvg } from '../src/report/writeSvg.ts';
import { guardEffect } from '../src/rotor/guard.ts';
import { ARM, built, deadCat, type Quad, trueX } from '../test/flight/emerging/craftOfParts.ts';
import { flown, onFrame } from '../test/flight/emerging/layouts.ts';
import { craft } from '../test/flight/reserve/crafts.ts';
import { airframeCharts } from './airframeFacts.ts';
import { curve, range } from './chartMarks.ts';

/** The charts of docs/method/trade-facts.md and airframe-facts.md, computed by the same physics as everything else. */
const charts: Readonly<Record<string, () => Chart>> = {
  'front-load': frontLoad,
  'front-heat': frontHeat,
  'rear-pair': rearPair,
  'front-wakes': frontWakes,
  'roll-and-pitch': rollAndPitch,
  'gust-and-mass': gustAndMass,
  'battery-height': batteryHeight,
  'motor-failures': motorFailures,
  'guard-thrust': guardThrust,
  'guard-speed': guardSpeed,
  ...airframeCharts,
};

/** File name to SVG text. */
export function tradeFigures(css: string): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(charts).map(([name, chart]) => [
      `${name}.svg`,
      `${writeSvg(drawChart(chart(), 560, 320), css)}\n`,
    ]),
  );
}

function known<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
}

const hovering = (quad: Quad) => known(hoverStory(built(quad).model, neutralLevers, []));
const slides = range(-60, 20, 16);
const at = (quad: Quad, millimetres: number): Quad => ({ ...quad, packAhead: millimetres / 1000 });

function frontLoad(): Chart {
  const share = (quad: Quad) => (slide: number) => {
    const { thrusts } = hovering(at(quad, slide)).trim;
    return (100 * ((thrusts[0] ?? 0) + (thrusts[1] ?? 0))) / thrusts.reduce((sum, thrust) => sum + thrust, 0);
  };
  return {
    description: 'Share of the weight on the front pair over the place of the battery, true X and dead cat',
    across: { label: 'battery ahead of the hub, mm', low: -60, high: 20 },
    upright: { label: 'weight on the front pair, %', low: 35, high: 75 },
    marks: [
      { kind: 'limit', at: 50, name: 'front and rear alike' },
      curve('dead cat', slides, share(deadCat)),
      curve('true X', slides, share(trueX), true),
    ],
  };
}

function frontHeat(): Chart {
  const winding = (motor: number) => (slide: number) =>
    (hovering(at(deadCat, slide)).hoverHeat[motor]?.settled?.winding ?? Number.NaN) - 273.15;
  return {
    description: 'Windings of a dead cat settled in a hover over the place of the battery, front and rear',
    across: { label: 'battery ahead of the hub, mm', low: -60, high: 20 },
    upright: { label: 'winding in a hover, degC', low: 28, high: 44 },
    marks: [curve('front', slides.toReversed(), winding(0)), curve('rear', slides, winding(2), true)],
  };
}

function rearPair(): Chart {
  const spots = (quad: Quad, name: string): readonly Mark[] =>
    built(quad).model.stations.map(({ position }, i) => ({
      kind: 'spot',
      at: { x: 1000 * position[1], y: 1000 * position[0] },
      name: i === 1 || i === 2 ? `${name}, ${i === 1 ? 'front' : 'rear'}` : '',
      side: (name === 'true X') === (i === 1) ? 'over' : 'under',
    }));
  return {
    description: 'Motors of a true X and of a dead cat with arms of the same length, seen from above',
    across: { label: 'to the right, mm', low: -200, high: 200 },
    upright: { label: 'ahead of the motors’ middle, mm', low: -110, high: 110 },
    marks: [...spots(trueX, 'true X'), ...spots(deadCat, 'dead cat')],
  };
}

function frontWakes(): Chart {
  const speeds = range(0, 30, 20);
  const wash = (half: number, length: number) => (speed: number) =>
    flown(onFrame([half, length], [half, length]), speed).wash[3] ?? Number.NaN;
  return {
    description: 'Mean wash of the other rotors on a rear disc over speed, at one motor diagonal',
    across: { label: 'level speed, m/s', low: 0, high: 30 },
    upright: { label: 'wash on a rear disc, m/s', low: 0, high: 2.4 },
    marks: [
      curve('squashed X', speeds, wash(0.092, 0.066), true),
      curve('true X', speeds, wash(0.08, 0.08)),
      curve('stretched X', speeds, wash(0.066, 0.092), true),
    ],
  };
}

function rollAndPitch(): Chart {
  const angles = range(35, 55, 10);
  const reserve = (angle: number) => {
    const { model, massProperties: mass } = built({ armLength: ARM, frontAngle: angle, rearAngle: angle });
    const effectors = model.stations.map(({ name, position, spin }) => ({
      name,
      position,
      spin,
      torquePerThrust: 0.014,
      minimumThrust: 0.15,
      maximumThrust: 12,
    }));
    return known(
      controlReserve({
        effectors,
        ...mass,
        centreOfGravity: [0, 0, mass.centreOfGravity[2]],
        gravity: model.gravity,
      }),
    );
  };
  const square = reserve(45);
  const moment = (axis: 'roll' | 'pitch') => (angle: number) =>
    reserve(angle).moments[axis].positive / square.moments.roll.positive;
  const turn = (axis: 'roll' | 'pitch') => (angle: number) =>
    reserve(angle).accelerations[axis].positive / square.accelerations.roll.positive;
  return {
    description:
      'Largest roll and pitch moments and accelerations over the angle of the arms, a true X as one',
    across: { label: 'arms off the nose, degrees (45 true X, more is squashed)', low: 35, high: 55 },
    upright: { label: 'over the roll of a true X', low: 0.5, high: 1.4 },
    marks: [
      curve('roll moment', angles.toReversed(), moment('roll')),
      curve('pitch moment', angles, moment('pitch')),
      curve('pitch acceleration', angles, turn('pitch'), true),
      curve('roll acceleration', angles.toReversed(), turn('roll'), true),
    ],
  };
}

function gustAndMass(): Chart {
  const masses = range(0.1, 0.5, 10);
  const jolt = (packMass: number) => {
    const { model, drag } = built({ ...trueX, packMass });
    const forward = known(
      forwardCraft(model, neutralLevers, drag.bluff, { bars: drag.bars, wakes: 'left out' }),
    );
    const gust = { along: 6, upward: 2, reactionTime: 0.3 };
    return known(gustJolt(forward, known(forwardTrim(forward, 3)), gust));
  };
  const grams = (packMass: number): number => 1000 * built({ ...trueX, packMass }).massProperties.mass;
  const over = (
    name: string,
    packs: readonly number[],
    of: (packMass: number) => number,
    dashed = false,
  ): Mark => ({
    kind: 'curve',
    name,
    dashed,
    points: packs.map((packMass) => ({ x: grams(packMass), y: of(packMass) })),
  });
  return {
    description:
      'Acceleration by a sharp gust of 6 m/s along and 2 m/s up over the mass of one and the same shape',
    across: { label: 'all-up mass, g', low: 400, high: 900 },
    upright: { label: 'acceleration by a gust, m/s2', low: 0, high: 2.5 },
    marks: [
      over('upwards', masses.toReversed(), (mass) => jolt(mass).heave),
      over('along', masses, (mass) => jolt(mass).push, true),
    ],
  };
}

function batteryHeight(): Chart {
  const masses = range(0, 0.5, 10);
  const below = (packSide: 'above' | 'below') => (grams: number) => {
    const { massProperties: mass, model } = built({
      ...trueX,
      packMass: Math.max(grams, 1) / 1000,
      packSide,
    });
    return 1000 * (mass.centreOfGravity[2] - (model.stations[0]?.position[2] ?? 0));
  };
  const grams = masses.map((mass) => 1000 * mass);
  return {
    description:
      'Centre of gravity below the prop plane over the mass of the battery, mounted above and below',
    across: { label: 'battery, g', low: 0, high: 500 },
    upright: { label: 'centre of gravity below the prop plane, mm', low: -20, high: 40 },
    marks: [
      { kind: 'limit', at: 0, name: 'prop plane' },
      curve('battery below', grams, below('below'), true),
      curve('battery above', grams, below('above')),
    ],
  };
}

function motorFailures(): Chart {
  const kinds: readonly (readonly [name: string, layout: LayoutParameters])[] = [
    ['X', { kind: 'true X', diagonal: 0.22 }],
    ['flat six', { kind: 'hexa X', diagonal: 0.3 }],
    ['Y6', { kind: 'Y6 coaxial', frontWidth: 0.25, length: 0.22, discSpacing: 0.05 }],
    ['flat eight', { kind: 'octo', diagonal: 0.4 }],
    ['X8', { kind: 'X8 coaxial', width: 0.2, length: 0.2, discSpacing: 0.05 }],
  ];
  const marks = kinds.flatMap(([name, layout], i): readonly Mark[] => {
    const motors = layoutMotors(layout).motors.length;
    const limits = { maximumThrust: (5 * 0.7 * 9.80665) / motors, minimumThrust: 0.05 };
    const rate = failureRate(motorOut(craft(layout, limits)), 2);
    const lost = rate.failuresPerHour - rate.byHeld['full hover control'];
    return [
      {
        kind: 'spot',
        at: { x: i + 1, y: rate.failuresPerHour },
        name,
        side: 'over',
      },
      {
        kind: 'spot',
        at: { x: i + 1, y: lost },
        name: lost > 0 ? `${lost} lose control` : '',
        side: 'under',
      },
    ];
  });
  return {
    description:
      'Single-motor failures a thousand flight hours by layout, all and those that lose full hover control, at two a motor',
    across: { label: 'layout', low: 0, high: 6 },
    upright: { label: 'failures in 1000 flight hours, at 2 a motor', low: -2, high: 20 },
    marks,
  };
}

const RADIUS = (5.1 * 0.0254) / 2;

function guardThrust(): Chart {
  const gaps = range(0, 8, 16);
  const gain = (lip: number) => (gap: number) =>
    100 *
    (guardEffect(
      {
        tipGap: (gap / 100) * RADIUS,
        lipRadius: (lip / 100) * 2 * RADIUS,
        expansionRatio: 1,
        depth: 0.014,
        blockedArea: 0.0004,
      },
      RADIUS,
    ).thrustAtEqualPower -
      1);
  return {
    description: 'Static thrust at equal power by a ring over its tip gap, for three inlet lips',
    across: { label: 'tip gap, % of radius', low: 0, high: 8 },
    upright: { label: 'static thrust gained at equal power, %', low: -5, high: 30 },
    marks: [
      { kind: 'limit', at: 0, name: 'open propeller' },
      curve('lip 6 % of diameter', gaps, gain(6)),
      curve('lip 3 %', gaps, gain(3), true),
      curve('no lip', gaps, gain(0), true),
    ],
  };
}

function guardSpeed(): Chart {
  const heights = range(4, 24, 10);
  const of = (height: number) => {
    const { model, drag } = built({ ...trueX, rings: { tipGap: 0.004, height: height / 1000, wall: 0.002 } });
    return known(topSpeed(known(forwardCraft(model, neutralLevers, drag.bluff, { bars: drag.bars })), 0.6)).at
      .speed;
  };
  const { model, drag } = built(trueX);
  const open = known(
    topSpeed(known(forwardCraft(model, neutralLevers, drag.bluff, { bars: drag.bars })), 0.6),
  ).at.speed;
  return {
    description: 'Top speed with rings round the propellers over their height, against none',
    across: { label: 'height of the rings, mm', low: 4, high: 24 },
    upright: { label: 'top speed, m/s', low: 35, high: 55 },
    marks: [{ kind: 'limit', at: open, name: 'no rings' }, curve('rings of 2 mm', heights, of)],
  };
}
