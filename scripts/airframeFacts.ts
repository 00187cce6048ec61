import { armDirection } from '../src/airframe/armOutline.ts';
import { framePrimitives } from '../src/airframe/framePrimitives.ts';
import { itemMass } from '../src/airframe/massProperties.ts';
import { shakeOverSpeed } from '../src/airframe/shake.ts';
import { costLines } from '../src/assess/money/costLines.ts';
import type { HitWay } from '../src/assess/parts/airframeData.ts';
import { knocksPart } from '../src/assess/parts/knocks/knocksPart.ts';
import { craftFrame } from '../src/assess/parts/shake/craftFrame.ts';
import { firstModes, firstModesOf, structureOf } from '../src/assess/parts/shake/structure.ts';
import type { PartOf } from '../src/build/schema/part.ts';
import type { Chart, Mark } from '../src/report/chart.ts';
import {
  barArms,
  breaksAt,
  DEAD_CAT,
  like,
  ownFrame,
  propellersIn,
  sized,
  TRUE_X,
} from '../test/assess/emerging/layouts.ts';
import { contextOf, type Demo } from '../test/assess/parts/crafts.ts';
import { curve, range } from './chartMarks.ts';

/** The charts of docs/method/airframe-facts.md: whole demo builds with one thing changed. */
export const airframeCharts: Readonly<Record<string, () => Chart>> = {
  'picture-layouts': pictureLayouts,
  'picture-nose': pictureNose,
  'hit-ways': hitWays,
  'front-arm-hit': frontArmHit,
  'thick-and-narrow': thickAndNarrow,
  'plate-mass': plateMass,
  'plate-repairs': plateRepairs,
  'size-modes': sizeModes,
  'size-shake': sizeShake,
  'not-in-the-box': notInTheBox,
  'arm-in-wash': armInWash,
};

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Four motors on a circle of 230 mm, front arms so far off the nose [degrees]. */
const turned = (angle: number): PartOf<'frame'>['layout'] => ({
  kind: angle < 45 ? 'stretched X' : 'squashed X',
  width: 0.23 * Math.sin(radians(angle)),
  length: 0.23 * Math.cos(radians(angle)),
});

const spots = (names: readonly string[], of: (index: number) => number, side: 'over' | 'under'): Mark[] =>
  names.map((name, i) => ({ kind: 'spot', at: { x: i + 1, y: of(i) }, name, side }));

/** A curve named at one of its places, clear of a rising line: `over` on the right half, `under` on the left. */
const named = (
  name: string,
  at: number,
  xs: readonly number[],
  of: (x: number) => number,
  dashed = false,
): readonly Mark[] => {
  const [first = 0, last = 0] = [xs[0], xs.at(-1)];
  const side = at > (first + last) / 2 ? 'over' : 'under';
  return [curve('', xs, of, dashed), { kind: 'spot', at: { x: at, y: of(at) }, name, side }];
};

function pictureLayouts(): Chart {
  const share = (angle: number) =>
    100 * (propellersIn(like({ layout: angle === 45 ? TRUE_X : turned(angle) }))[0] ?? Number.NaN);
  return {
    description: 'Share of the flying picture that propellers touch over the angle of the arms, one diagonal',
    across: { label: 'arms off the nose, degrees (45 true X, more is squashed)', low: 35, high: 60 },
    upright: { label: 'propellers in the picture, %', low: 0, high: 50 },
    marks: [curve('flying camera', range(37, 60, 23), share)],
  };
}

function pictureNose(): Chart {
  const body = ownFrame.body ?? { length: 0.112, width: 0.032, height: 0.03 };
  // Twice the way of the nose, since the body is centred.
  const share = (forward: number) =>
    100 *
    (propellersIn(like({ layout: TRUE_X, body: { ...body, length: body.length + 0.002 * forward } }))[0] ??
      Number.NaN);
  return {
    description: 'Share of a true X’s flying picture that propellers touch over the place of the nose',
    across: { label: 'nose further forward, mm', low: 0, high: 60 },
    upright: { label: 'propellers in the picture, %', low: 0, high: 15 },
    marks: [curve('true X, or H of its motors', range(0, 60, 15), share)],
  };
}

const WAYS: readonly (readonly [way: HitWay, name: string])[] = [
  ['flat', 'from below'],
  ['end-on', 'along'],
  ['side-on', 'across'],
  ['from ahead', 'from ahead'],
];

function hitWays(): Chart {
  const context = like({ layout: TRUE_X });
  const names = (ground: string) => WAYS.map(([, name]) => `${name}, ${ground}`);
  const speed = (ground: string) => (index: number) => breaksAt(context, WAYS[index]?.[0] ?? 'flat', ground);
  return {
    description: 'Speed at which half of the arms break by the way they are struck, on grass and on concrete',
    across: { label: 'way of hitting', low: 0.4, high: 4.6 },
    upright: { label: 'half break at, m/s', low: 0, high: 25 },
    marks: [
      ...spots(names('grass'), speed('grass'), 'over'),
      ...spots(names('concrete'), speed('concrete'), 'under'),
    ],
  };
}

function frontArmHit(): Chart {
  // Motors moved from nearly the true X's places to the dead cat's, on roots of a dead cat.
  const between = (from: number, to: number, share: number): number => from + (to - from) * share;
  const side = 0.23 / Math.SQRT2;
  const swept = range(0.1, 1, 6).map((share) => {
    const layout = {
      kind: 'dead cat',
      frontWidth: between(side, DEAD_CAT.frontWidth, share),
      rearWidth: between(side, DEAD_CAT.rearWidth, share),
      length: between(side, DEAD_CAT.length, share),
    } as const;
    const context = like({ layout });
    const front = context.craft.frame.arms.find(({ tip }) => tip[0] > 0 && tip[1] > 0);
    return { context, angle: front === undefined ? Number.NaN : (armDirection(front) * 180) / Math.PI };
  });
  const over = (ground: string, dashed: boolean): readonly Mark[] => {
    const points = swept.map(({ context, angle }) => ({
      x: angle,
      y: breaksAt(context, 'from ahead', ground),
    }));
    const end = points.at(-1) ?? { x: Number.NaN, y: Number.NaN };
    return [
      { kind: 'curve', dashed, points },
      { kind: 'spot', at: end, name: `dead cats, ${ground}`, side: 'over' },
    ];
  };
  return {
    description:
      'Speed at which half of the front arms break in a hit from ahead over their angle, from true X to dead cat',
    across: { label: 'front arms off the nose, degrees', low: 40, high: 80 },
    upright: { label: 'half break at, m/s', low: 0, high: 20 },
    marks: [
      ...over('grass', false),
      ...over('concrete', true),
      ...['grass', 'concrete'].map(
        (ground): Mark => ({
          kind: 'spot',
          at: { x: 45, y: breaksAt(like({ layout: TRUE_X }), 'from ahead', ground) },
          name: `true X, ${ground}`,
          side: 'over',
        }),
      ),
    ],
  };
}

/** Width at which straight arms weigh what 6 by 10 mm ones do: the pad under the motor is as wide on both [m]. */
const equalWidth = (thickness: number): number => 0.01 + (0.0063 * (0.006 - thickness)) / 0.002;

function thickAndNarrow(): Chart {
  const grid = range(3.5, 6, 5);
  const of = (millimetres: number) => barArms(millimetres / 1000, equalWidth(millimetres / 1000));
  const upright = (context: ReturnType<typeof of>): number => {
    const found = firstModesOf(craftFrame(context.craft));
    return found.ok ? found.value.upright : Number.NaN;
  };
  const over = (measure: (context: ReturnType<typeof of>) => number) => {
    const first = measure(of(4));
    return (millimetres: number) => measure(of(millimetres)) / first;
  };
  return {
    description:
      'Lowest upright mode and breaking speeds over the thickness of arms of equal mass, 4 mm as one',
    across: { label: 'thickness, mm (narrower as it grows)', low: 3.5, high: 6 },
    upright: { label: 'over the 4 mm arm', low: 0.4, high: 1.6 },
    marks: [
      curve('lowest upright mode', grid.toReversed(), over(upright)),
      curve(
        'half break from below, grass',
        grid,
        over((context) => breaksAt(context, 'flat', 'grass')),
        true,
      ),
      curve(
        'half break across, grass',
        grid.toReversed(),
        over((context) => breaksAt(context, 'side-on', 'grass')),
        true,
      ),
    ],
  };
}

function plateMass(): Chart {
  const { clampedLength: _, ...plain } = ownFrame.arms;
  const grams = (construction: 'separate arms' | 'one-piece plate') => (millimetres: number) => {
    const arms = construction === 'separate arms' ? ownFrame.arms : plain;
    const thickness = { ...arms.thickness, value: millimetres / 1000 };
    const { craft } = like({ layout: TRUE_X, arms: { ...arms, construction, thickness } });
    const items = framePrimitives({ ...craft.frame, hardwareMass: 0 }, craft.layout);
    return 1000 * items.reduce((sum, item) => sum + itemMass(item), 0);
  };
  const grid = range(3, 6, 6);
  return {
    description: 'Mass of a frame’s solids over the thickness of its arms, in one piece and as separate arms',
    across: { label: 'thickness of arms, mm', low: 3, high: 6 },
    upright: { label: 'solids of the frame, g', low: 40, high: 100 },
    marks: [
      ...named('one piece', 5.5, grid, grams('one-piece plate')),
      ...named('separate arms', 4, grid, grams('separate arms'), true),
    ],
  };
}

function plateRepairs(): Chart {
  const names = ['turnstone', 'tystie', 'whimbrel'] as const;
  const money = names.map((name) => {
    const knocks = knocksPart.run(contextOf(`first-freestyle/${name}`, {}, false)).data?.knocks;
    if (knocks === undefined) throw new Error(`${name}: no forecast`);
    const { construction, money: other, moneyAsIs } = knocks.otherCut;
    return construction === 'one-piece plate' ? [moneyAsIs, other] : [other, moneyAsIs];
  });
  return {
    description:
      'Repairs over thirty flights of the same crashes, frames cut in one piece and as separate arms',
    across: { label: 'frame', low: 0.4, high: 3.6 },
    upright: { label: 'repairs over thirty flights, GBP', low: 60, high: 120 },
    marks: [
      ...spots(
        names.map((name) => `${name}, one piece`),
        (i) => money[i]?.[1] ?? Number.NaN,
        'over',
      ),
      ...spots(
        names.map((name) => `${name}, arms`),
        (i) => money[i]?.[0] ?? Number.NaN,
        'under',
      ),
    ],
  };
}

const INCHES = [5, 6, 7] as const;

function structureAt(inches: (typeof INCHES)[number]) {
  const { craft } = sized(inches, false);
  const structure = structureOf(craftFrame(craft));
  if (!structure.ok) throw new Error(structure.reason);
  return { craft, structure: structure.value };
}

function sizeModes(): Chart {
  const modes = INCHES.map((inches) =>
    firstModes(structureAt(inches).structure.modes.map(({ frequency, shape }) => ({ frequency, shape }))),
  );
  return {
    description: 'Lowest modes of one plate’s arms under 5, 6 and 7 inch propellers',
    across: { label: 'propeller, inch', low: 4.5, high: 7.5 },
    upright: { label: 'lowest modes, Hz', low: 0, high: 220 },
    marks: [
      { kind: 'limit', at: 100, name: 'under it the flight controller answers' },
      ...modes.map(
        ({ upright }, i): Mark => ({
          kind: 'spot',
          at: { x: i + 5, y: upright },
          name: 'up and down',
          side: i === 0 ? 'over' : 'under',
        }),
      ),
      ...modes.map(
        ({ sideways }, i): Mark => ({
          kind: 'spot',
          at: { x: i + 5, y: sideways },
          name: 'sideways',
          side: 'over',
        }),
      ),
    ],
  };
}

/** At the flight controller from one gram millimetre on every motor, phases unknown [g]. */
export function boardPerGramMillimetre(inches: (typeof INCHES)[number]): (frequency: number) => number {
  const { craft, structure } = structureAt(inches);
  const board = craft.stack.find(({ seat }) => seat === 'flightController')?.place;
  const sources = (angularSpeed: number) =>
    craft.motors.flatMap(({ place, discPlace }) => {
      const arm = craft.frame.arms[place.armIndex];
      const turning = 1e-6 * angularSpeed ** 2;
      return arm === undefined
        ? []
        : [{ arm: arm.name, discHeight: arm.tip[2] - discPlace[2], spin: place.spin, turning, axial: 0 }];
    });
  return (frequency) => {
    const speeds = [2 * Math.PI * frequency];
    const [found] = shakeOverSpeed(structure.shaken, sources, speeds, 1, board ?? [0, 0, 0]);
    return (found?.acceleration ?? Number.NaN) / 9.80665;
  };
}

function sizeShake(): Chart {
  const grid = range(40, 280, 120);
  return {
    description:
      'Shake at the flight controller from one gram millimetre on every motor over frequency, by size',
    across: { label: 'rotor speed, Hz', low: 40, high: 280 },
    upright: { label: 'at the board, g', low: 0, high: 16 },
    marks: [
      ...INCHES.flatMap((inches): readonly Mark[] => {
        const of = boardPerGramMillimetre(inches);
        const peak = grid.reduce((best, at) => (of(at) > of(best) ? at : best));
        const name = `${inches} inch`;
        return [
          curve('', grid, of, inches !== 5),
          { kind: 'spot', at: { x: peak, y: of(peak) }, name, side: 'over' },
        ];
      }),
    ],
  };
}

function notInTheBox(): Chart {
  const names = ['turnstone', 'redshank', 'bonxie', 'kittiwake', 'whimbrel'] as const;
  const prices = names.map((name) => {
    const { craft, brief, shelf } = contextOf(`first-freestyle/${name}` satisfies Demo, {}, false);
    const listed = craft.parts.frame.price.amount;
    const missing = costLines(craft, brief, shelf).lines.filter(
      ({ group, id }) => group === 'missing from the box' || id.startsWith('spare arm'),
    );
    return [listed, missing.reduce((sum, { count, unitPrice }) => sum + count * unitPrice, listed)] as const;
  });
  return {
    description: 'Price of five frames as listed and with the mounts, straps and spare arm they lack',
    across: { label: 'frame', low: 0.4, high: 5.6 },
    upright: { label: 'price, GBP', low: 0, high: 110 },
    marks: [
      ...spots(
        names.map((_, i) => (i === 0 ? 'with what it lacks' : '')),
        (i) => prices[i]?.[1] ?? Number.NaN,
        'over',
      ),
      ...spots(names, (i) => prices[i]?.[0] ?? Number.NaN, 'under'),
    ],
  };
}

function armInWash(): Chart {
  const lost = (millimetres: number) =>
    100 * (barArms(0.005, millimetres / 1000).craft.motors[0]?.downloadShare ?? Number.NaN);
  return {
    description: 'Share of thrust that an arm in the wash takes over its width, 5.1 inch propeller',
    across: { label: 'width of the arm, mm', low: 6, high: 26 },
    upright: { label: 'thrust lost, %', low: 0, high: 10 },
    marks: [curve('5.1 inch', range(6, 26, 5), lost)],
  };
}
