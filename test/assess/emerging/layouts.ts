import { occludersOf } from '../../../src/assess/occluders.ts';
import type { HitReport, HitWay } from '../../../src/assess/parts/airframeData.ts';
import { hitsOf } from '../../../src/assess/parts/hits/hitsPart.ts';
import { seenBy } from '../../../src/assess/parts/picture/seenBy.ts';
import type { PartContext } from '../../../src/assess/parts/types.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import type { PartOf } from '../../../src/build/schema/part.ts';
import { contextOf, demoBuild } from '../parts/crafts.ts';

type Frame = PartOf<'frame'>;

/** The cheap true X of the demo, its frame changed in what a test compares and alike in all else. */
export const like = (frame: Partial<Frame>, build: Partial<Build> = {}): PartContext =>
  contextOf('first-freestyle/turnstone', { frame, build }, false);

export const own = contextOf('first-freestyle/turnstone', {}, false);
export const ownFrame = own.craft.parts.frame;

/** The same arms and plates under larger propellers: motors further out, and the motors such propellers want. */
const SIZES = {
  6: { diagonal: 0.27, maxPropeller: 0.155, motor: 'norther-2506-1500', propeller: 'neap-6030-2' },
  7: { diagonal: 0.31, maxPropeller: 0.181, motor: 'norther-2807-1250', propeller: 'neap-7040-2' },
} as const;

export function sized(inches: 5 | 6 | 7, flies = true): PartContext {
  if (inches === 5) return contextOf('first-freestyle/turnstone', {}, flies);
  const { diagonal, maxPropeller, motor, propeller } = SIZES[inches];
  const build = demoBuild('first-freestyle/turnstone');
  const change = {
    frame: { layout: { kind: 'true X', diagonal }, maxPropeller },
    build: {
      motors: { ...build.motors, part: motor },
      propellers: { ...build.propellers, part: propeller },
    },
  } as const;
  return contextOf('first-freestyle/turnstone', change, flies);
}

/** The cheap true X with straight arms of one thickness and width [m]. */
export const barArms = (thickness: number, width: number): PartContext =>
  like({
    layout: TRUE_X,
    arms: {
      ...ownFrame.arms,
      thickness: { ...ownFrame.arms.thickness, value: thickness },
      rootWidth: width,
      neckWidth: width,
      tipWidth: width,
    },
  });

/** Diagonal and sections of all layouts compared: 230 mm motor to motor. */
export const TRUE_X: Frame['layout'] = { kind: 'true X', diagonal: 0.23 };
export const SQUASHED_X: Frame['layout'] = { kind: 'squashed X', width: 0.188, length: 0.1325 };
export const DEAD_CAT = {
  kind: 'dead cat',
  frontWidth: 0.208,
  rearWidth: 0.172,
  length: 0.158,
} as const satisfies Frame['layout'];
/** Motors where the true X has them. */
export const H: Frame['layout'] = { kind: 'H', width: 0.23 / Math.SQRT2, length: 0.23 / Math.SQRT2 };

/** Share of the picture that propellers touch, for the flying and the recording camera. */
export const propellersIn = ({ craft }: PartContext): readonly number[] =>
  craft.cameras.map(({ camera }, i) => seenBy(camera, occludersOf(craft, i, 1500)).discsTouch);

/** The weakest arm's answer, one way against one surface. */
export function weakest({ craft, brief }: PartContext, way: HitWay, surface: string): HitReport {
  const found = hitsOf(craft, brief);
  if (!found.ok) throw new Error(found.reason);
  const [first] = found.value.hits
    .filter((hit) => hit.way === way && hit.surface === surface)
    .sort((a, b) => a.reserve - b.reserve);
  if (first === undefined) throw new Error(`no hit ${way} on ${surface}`);
  return first;
}

/** The speed at which half of the weakest arms break [m/s]. */
export const breaksAt = (context: PartContext, way: HitWay, surface: string): number =>
  weakest(context, way, surface).breakingSpeed ?? Number.NaN;
