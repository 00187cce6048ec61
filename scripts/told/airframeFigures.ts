import { armLength } from '../../src/airframe/armOutline.ts';
import { framePrimitives } from '../../src/airframe/framePrimitives.ts';
import { itemMass } from '../../src/airframe/massProperties.ts';
import type { HitWay } from '../../src/assess/parts/airframeData.ts';
import { hitsOf } from '../../src/assess/parts/hits/hitsPart.ts';
import { knocksPart } from '../../src/assess/parts/knocks/knocksPart.ts';
import { craftFrame } from '../../src/assess/parts/shake/craftFrame.ts';
import { shakePart } from '../../src/assess/parts/shake/shakePart.ts';
import { firstModesOf } from '../../src/assess/parts/shake/structure.ts';
import type { PartContext } from '../../src/assess/parts/types.ts';
import type { Build } from '../../src/build/schema/build.ts';
import {
  barArms,
  DEAD_CAT,
  H,
  like,
  own,
  ownFrame,
  propellersIn,
  SQUASHED_X,
  sized,
  TRUE_X,
} from '../../test/assess/emerging/layouts.ts';
import { contextOf } from '../../test/assess/parts/crafts.ts';
import { boardPerGramMillimetre } from '../airframeFacts.ts';
import type { Figures } from './retell.ts';
import { known, percent, say, table } from './say.ts';

const WAYS: readonly (readonly [way: HitWay, name: string])[] = [
  ['flat', 'from below'],
  ['end-on', 'along'],
  ['side-on', 'across'],
  ['from ahead', 'from ahead'],
];
const SURFACES = ['grass', 'wood', 'concrete'] as const;

/** Of docs/method/airframe-facts.md: the demo's cheap true X with one thing changed. */
export const airframeFigures: Figures = {
  'propellers in the picture': pictures,
  'speeds at which half break': breaking,
  'dead cat: reserve from ahead on grass': () =>
    percent(1 - speeds(dead, 'from ahead').grass / speeds(square, 'from ahead').grass),
  'dead cat: rear arm': () => say(1000 * armOf(dead, -1), 'mm'),
  'dead cat: front arm': () => say(1000 * armOf(dead, 1)),
  'squashed X: weaker by at most': () =>
    percent(
      Math.max(
        ...WAYS.flatMap(([way]) => {
          const [less, whole] = [speeds(squashed, way), speeds(square, way)];
          return SURFACES.map((surface) => 1 - less[surface] / whole[surface]);
        }),
      ),
    ),
  'thick arms: upright mode': () => say(upright(thick), 'Hz'),
  'thin arms: upright mode': () => say(upright(thin)),
  'thick arms: less across on grass': () =>
    percent(1 - speeds(thick, 'side-on').grass / speeds(thin, 'side-on').grass),
  'one plate: solids at 5 mm': () => say(solids('one-piece plate', 0.005)),
  'arms: solids at 5 mm': () => say(solids('separate arms', 0.005), 'g'),
  'one plate: more at 5 mm': () =>
    say(solids('one-piece plate', 0.005) - solids('separate arms', 0.005), 'g'),
  'one plate: less at 4 mm': () =>
    percent(1 - solids('one-piece plate', 0.004) / solids('separate arms', 0.005)),
  'Tystie: repairs as it is': () => say(tystie().moneyAsIs),
  'Tystie: repairs with arms': () => say(tystie().money, 'GBP'),
  '6 and 7 inch': sizes,
  'arm in the wash: 8 mm': () => percent(barArms(0.005, 0.008).craft.motors[0]?.downloadShare ?? Number.NaN),
  'arm in the wash: 24 mm': () => percent(barArms(0.005, 0.024).craft.motors[0]?.downloadShare ?? Number.NaN),
  'drop on concrete: height': () => say(speeds(square, 'flat').concrete ** 2 / (2 * 9.80665), 'm', 1),
  'drop on concrete: speed': () => say(speeds(square, 'flat').concrete, 'm/s', 1),
  'drop on grass: height': () => say(speeds(square, 'flat').grass ** 2 / (2 * 9.80665), 'm', 1),
  ...halfBreak('concrete'),
  ...halfBreak('grass'),
};

const square = like({ layout: TRUE_X });
const squashed = like({ layout: SQUASHED_X });
const dead = like({ layout: DEAD_CAT });
const thick = barArms(0.006, 0.01);
const thin = barArms(0.004, 0.0163);

function pictures(): string {
  const low: Build['cameras'] = own.craft.build.cameras.map((each) =>
    each.role === 'recording' ? { ...each, place: { x: 0.057, y: 0, z: -0.059 } } : each,
  );
  const body = ownFrame.body ?? { length: 0.112, width: 0.032, height: 0.03 };
  const onNose = (layout: typeof TRUE_X) => like({ layout }, { cameras: low });
  const rows: readonly (readonly [string, PartContext])[] = [
    ['true X', onNose(TRUE_X)],
    ['squashed X, 188 x 132 mm', onNose(SQUASHED_X)],
    ['stretched X, 140 x 182 mm', onNose({ kind: 'stretched X', width: 0.14, length: 0.182 })],
    ['dead cat, 208/172 x 158 mm', onNose(DEAD_CAT)],
    ['dead cat, 250/172 x 100 mm', onNose({ ...DEAD_CAT, frontWidth: 0.25, length: 0.1 })],
    ['H, body as short as the X’s', onNose(H)],
    ['H, body 250 mm', like({ layout: H, body: { ...body, length: 0.25 } })],
    [
      'true X, nose 60 mm further forward',
      like({ layout: TRUE_X, body: { ...body, length: body.length + 0.12 } }),
    ],
  ];
  return table(
    ['layout, same diagonal, plates, cameras', 'flying camera', 'recording camera'],
    rows.map(([name, context]) => [
      name,
      ...propellersIn(context).map((share) => (share < 5e-4 ? '0' : percent(share, 1))),
    ]),
  );
}

/** The speed at which half of the weakest arms break, struck one way [m/s]. */
function speeds(
  { craft, brief }: PartContext,
  way: HitWay,
): Readonly<Record<(typeof SURFACES)[number], number>> {
  const { hits } = known(hitsOf(craft, brief));
  const [grass, wood, concrete] = SURFACES.map((surface) => {
    const struck = hits.filter((hit) => hit.way === way && hit.surface === surface);
    const weakest = struck.reduce((least, hit) => (hit.reserve < least.reserve ? hit : least));
    return weakest.breakingSpeed ?? Number.NaN;
  });
  return { grass: grass ?? Number.NaN, wood: wood ?? Number.NaN, concrete: concrete ?? Number.NaN };
}

/** The true X's, one figure a way of hitting [m/s]. */
function halfBreak(surface: (typeof SURFACES)[number]): Figures {
  return Object.fromEntries(
    WAYS.map(([way, name]) => [
      `half break ${name} on ${surface}`,
      () => say(speeds(square, way)[surface], '', 1),
    ]),
  );
}

function breaking(): string {
  const rows: readonly (readonly [string, PartContext])[] = [
    ['true X', square],
    ['squashed X', squashed],
    ['dead cat', dead],
    ['6 x 10 mm arms', thick],
    ['4 x 16 mm arms', thin],
  ];
  return table(
    ['', ...WAYS.map(([, name]) => name)],
    rows.map(([name, context]) => [
      name,
      ...WAYS.map(([way]) => {
        const found = speeds(context, way);
        return SURFACES.map((surface) => say(found[surface], '', 1)).join(' / ');
      }),
    ]),
  );
}

/** Of the right arm ahead (1) or behind (-1) [m]. */
function armOf({ craft }: PartContext, side: 1 | -1): number {
  const arm = craft.frame.arms.find(({ tip }) => tip[0] * side > 0 && tip[1] > 0);
  return arm === undefined ? Number.NaN : armLength(arm);
}

const upright = ({ craft }: PartContext): number => known(firstModesOf(craftFrame(craft))).upright;

/** Of the frame, without screws and nuts [g]. */
function solids(construction: 'separate arms' | 'one-piece plate', thickness: number): number {
  const { clampedLength: _, ...plain } = ownFrame.arms;
  const arms = construction === 'separate arms' ? ownFrame.arms : plain;
  const { craft } = like({
    layout: TRUE_X,
    arms: { ...arms, construction, thickness: { ...arms.thickness, value: thickness } },
  });
  const items = framePrimitives({ ...craft.frame, hardwareMass: 0 }, craft.layout);
  return 1000 * items.reduce((sum, item) => sum + itemMass(item), 0);
}

function tystie() {
  const knocks = knocksPart.run(contextOf('first-freestyle/tystie', {}, false)).data?.knocks;
  if (knocks === undefined) throw new Error('no forecast');
  return knocks.otherCut;
}

function sizes(): string {
  const crafts = ([5, 6, 7] as const).map((inches) => {
    const context = sized(inches);
    const { measures, data } = shakePart.run(context);
    const of = (id: string) => measures.find((measure) => measure.id === id)?.value ?? Number.NaN;
    const hover = (context.flight?.told.figures['hover-speed'] ?? Number.NaN) / (2 * Math.PI);
    const felt = data?.shake?.modes.find((mode) => mode.felt > 1.5)?.frequency ?? Number.NaN;
    return { of, hover, felt, board: boardPerGramMillimetre(inches) };
  });
  type Craft = (typeof crafts)[number];
  const row = (name: string, cell: (craft: Craft) => string, prone: string) => [
    name,
    ...crafts.map(cell),
    prone,
  ];
  const degrees = (radians: number): string => say((radians * 180) / Math.PI, 'deg/s');
  const board = (hertz: number) => (craft: Craft) => {
    const g = craft.board(hertz);
    return say(g, 'g', g < 9.95 ? 1 : 0);
  };
  return table(
    ['', '5 inch', '6 inch', '7 inch', 'more prone?'],
    [
      row(
        'lowest mode up and down / sideways',
        ({ of }) => `${say(of('first-upright-mode'))} / ${say(of('first-sideways-mode'), 'Hz')}`,
        'yes',
      ),
      row(
        'lowest mode that the board feels',
        ({ felt }) => say(felt, 'Hz'),
        'yes: under 100 Hz the flight controller answers it; the 6 inch just misses it',
      ),
      row('gyro in hover, one blade nicked', ({ of }) => degrees(of('nicked-gyro-rate')), 'yes'),
      row('gyro in hover, G 6.3', ({ of }) => degrees(of('hover-gyro-rate')), 'yes'),
      row(
        'board in hover, G 6.3',
        ({ of }) => say(of('hover-shake') / 9.80665, 'g', 2),
        'no order: it is who hovers on a mode',
      ),
      row(
        'hover speed over lowest mode',
        ({ of, hover }) => say(hover / of('first-upright-mode'), '', 1),
        'no: further above it',
      ),
      row('board, one gram millimetre on each motor, at 120 Hz', board(120), 'yes, nearer their modes'),
      row('the same at 150 Hz', board(150), 'the 6 inch: it rings there'),
      row('the same at 200 Hz', board(200), 'no: the 5 inch rings there'),
    ],
  );
}
