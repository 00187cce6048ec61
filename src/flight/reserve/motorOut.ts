import { type AttainableSet, attainableSet, type Extreme, farthest } from './attainableSet.ts';
import { reachHolding } from './momentReach.ts';
import { nearestLevel } from './nearestLevel.ts';
import { steadyTurn } from './steadyTurn.ts';
import { type ControlAxis, controlAxes, type Held, type Reach, type ReserveModel } from './types.ts';

/** The craft with one motor's limits changed. */
export interface Impaired {
  readonly motor: string;
  readonly held: Held;
  /** Largest moments left about each axis that is held [N m]; empty where none is held to any use. */
  readonly reach: ReadonlyMap<ControlAxis, Reach>;
  /** The smallest of these over the same of the whole craft, 0 to 1; 0 where none is held to any use. */
  readonly share: number;
  /** Largest lift over weight with the held axes level; 0 where none are held. */
  readonly liftToWeight: number;
  /**
   * Steady rate about the vertical axis with the weight carried and the least yaw moment left over [rad/s]; absent when roll,
   * pitch and yaw are all held, when it falls, or when the drag that would hold it is not known.
   */
  readonly turning?: number;
}

/** A tenth of the moments that the whole craft had, and of lift over the weight: less is no control (common practice, no source). */
const USEFUL = 0.1;
/** Of weight times arm: what a fast spin takes up by leaning its axis a few degrees (ours, no source; M = r^2 (I_zz - I_xx) lean). */
const NEARLY_LEVEL = 0.25;
/**
 * Two turns a second, as fast as a plain attitude loop swings: slower, roll and pitch are held much as they were; faster, it
 * flies as a gyroscope (common practice, no source) [rad/s].
 */
const SLOW_TURN = 12;

const ROLL_AND_PITCH: readonly ControlAxis[] = ['roll', 'pitch'];
/** Of weight times arm: under it a moment is rounding. */
const ROUNDING = 1e-7;

/**
 * What can be held after each motor in turn has stopped, at hover, by the attainable set; the degrees are told at `Held`.
 * This is what is physically there: a flight controller that does not share the load anew holds less.
 *
 * The stopped propeller's own drag and lift are left out. Bounded reverse thrust is not assumed.
 *
 * @param inPlaneDragPerThrust of the rotors, over thrust and edgewise speed [s/m]; absent when not known, and then a craft
 *   whose yaw is not in balance counts as one that spins fast
 */
export function motorOut(model: ReserveModel, inPlaneDragPerThrust?: number): readonly Impaired[] {
  return model.effectors.map((_, lost) => withMotorLimited(model, lost, 0, inPlaneDragPerThrust));
}

/**
 * What is left when one motor, hot or worn, gives no more than `maximumThrust` [N], or nothing
 * at all when that is 0.
 *
 * @param index of the motor in `model.effectors`
 * @param inPlaneDragPerThrust as of `motorOut`
 */
export function withMotorLimited(
  model: ReserveModel,
  index: number,
  maximumThrust: number,
  inPlaneDragPerThrust?: number,
): Impaired {
  const limited = model.effectors[index];
  if (limited === undefined) {
    throw new RangeError(`index must be between 0 and ${model.effectors.length - 1}; found ${index}`);
  }
  if (!(maximumThrust >= 0)) {
    throw new RangeError(`maximumThrust must be 0 N or more; found ${maximumThrust} N`);
  }
  const { name: motor } = limited;
  const whole = attainableSet(model);
  const left: ReserveModel = {
    ...model,
    effectors: model.effectors.map((effector, i) =>
      i !== index
        ? effector
        : {
            ...effector,
            minimumThrust: Math.min(effector.minimumThrust, maximumThrust),
            maximumThrust: Math.min(effector.maximumThrust, maximumThrust),
          },
    ),
  };
  const set = attainableSet(left);
  const full = margin(set, whole, controlAxes);
  if (isUseful(full)) return { motor, held: 'full hover control', ...full };
  const nearest = nearestLevel(set, whole.weight);
  if (!nearest.ok) return { motor, held: 'nothing', ...NONE };
  const [roll, pitch] = nearest.value.wrench;
  const offLevel = (Math.abs(roll) + Math.abs(pitch)) / whole.momentScale;
  const rate = turningAt(left, nearest.value, ROUNDING * whole.momentScale, inPlaneDragPerThrust);
  const turning = rate === undefined ? {} : { turning: rate };
  if ((rate ?? Number.POSITIVE_INFINITY) <= SLOW_TURN) {
    const level = margin(set, whole, ROLL_AND_PITCH);
    if (isUseful(level)) return { motor, held: 'hover without yaw', ...level, ...turning };
    if (offLevel > ROUNDING) return { motor, held: 'nothing', ...NONE };
    return { motor, held: 'on the edge', ...level, reach: new Map(), ...turning };
  }
  const liftToWeight = offLevel <= NEARLY_LEVEL ? largestLift(nearlyLevel(set), whole) : 0;
  if (liftToWeight >= 1 + USEFUL) {
    return { motor, held: 'only spinning fast', ...NONE, liftToWeight, ...turning };
  }
  return { motor, held: 'nothing', ...NONE };
}

/** @param rounding yaw moments up to this are none [N m] */
function turningAt(
  { effectors, centreOfGravity }: ReserveModel,
  { wrench, thrusts }: Pick<Extreme, 'wrench' | 'thrusts'>,
  rounding: number,
  inPlaneDragPerThrust: number | undefined,
): number | undefined {
  const yaw = wrench[2];
  if (Math.abs(yaw) <= rounding) return 0;
  if (inPlaneDragPerThrust === undefined) return undefined;
  return steadyTurn(effectors, centreOfGravity, thrusts, yaw, inPlaneDragPerThrust);
}

type Margin = Pick<Impaired, 'reach' | 'share' | 'liftToWeight'>;

const NONE: Margin = { reach: new Map(), share: 0, liftToWeight: 0 };

/** What is left about some axes at hover, the others doing what they like. */
function margin(set: AttainableSet, whole: AttainableSet, axes: readonly ControlAxis[]): Margin {
  const reach = reachHolding(set, axes, whole.weight);
  const share = smallestShare(reach, reachHolding(whole, axes, whole.weight));
  return { reach, share, liftToWeight: largestLift(set, whole, axes) };
}

const isUseful = ({ share, liftToWeight }: Margin): boolean => share >= USEFUL && liftToWeight >= 1 + USEFUL;

function largestLift(set: AttainableSet, whole: AttainableSet, axes = ROLL_AND_PITCH): number {
  const lift = farthest(set, [0, 0, 0, 1], { axes });
  return lift.ok ? lift.value[3] / whole.weight : 0;
}

/** The same set where what a fast spin takes up of roll and pitch is made up from outside. */
function nearlyLevel(set: AttainableSet): AttainableSet {
  const most = NEARLY_LEVEL * set.momentScale;
  const [roll, pitch, yaw, lift] = set.base;
  return {
    ...set,
    base: [roll - most, pitch - most, yaw, lift],
    columns: [...set.columns, [2 * most, 0, 0, 0], [0, 2 * most, 0, 0]],
  };
}

function smallestShare(
  left: ReadonlyMap<ControlAxis, Reach>,
  whole: ReadonlyMap<ControlAxis, Reach>,
): number {
  let share = 1;
  for (const [axis, { negative, positive }] of left) {
    const before = whole.get(axis);
    if (before === undefined) continue;
    for (const [now, once] of [
      [negative, before.negative],
      [positive, before.positive],
    ] as const) {
      share = Math.min(share, once > 0 ? now / once : 0);
    }
  }
  return share;
}
