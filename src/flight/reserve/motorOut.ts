import { type AttainableSet, attainableSet, farthest } from './attainableSet.ts';
import { reachHolding } from './momentReach.ts';
import { type ControlAxis, controlAxes, type Held, type Reach, type ReserveModel } from './types.ts';

/** The craft with one motor's limits changed. */
export interface Impaired {
  readonly motor: string;
  readonly held: Held;
  /** Largest moments left about each axis that can still be held [N m]. */
  readonly reach: ReadonlyMap<ControlAxis, Reach>;
  /** The smallest of these over the same of the whole craft, 0 to 1. */
  readonly share: number;
  /** Largest lift over weight with the held axes level. */
  readonly liftToWeight: number;
}

const ROLL_AND_PITCH: readonly ControlAxis[] = ['roll', 'pitch'];

/** Below this share of weight times arm a moment is rounding. */
const NOTHING = 1e-7;

/**
 * What can be held after each motor in turn has stopped, at hover, by the attainable set: full hover
 * control when roll, pitch and yaw all have reserve either way and lift to spare; hover without yaw when
 * roll and pitch have, the craft turning as it will; else nothing, statically. This is what is
 * physically there: a flight controller that does not share the load anew holds less. (A craft that
 * spins can hold more than 'nothing': Mueller and D'Andrea 2014.)
 *
 * The stopped propeller's own drag and lift are left out. Bounded reverse thrust is not assumed.
 */
export function motorOut(model: ReserveModel): readonly Impaired[] {
  return model.effectors.map((_, lost) => withMotorLimited(model, lost, 0));
}

/**
 * What is left when one motor, hot or worn, gives no more than `maximumThrust` [N], or nothing
 * at all when that is 0.
 *
 * @param index of the motor in `model.effectors`
 */
export function withMotorLimited(model: ReserveModel, index: number, maximumThrust: number): Impaired {
  const limited = model.effectors[index];
  if (limited === undefined) {
    throw new RangeError(`index must be between 0 and ${model.effectors.length - 1}; found ${index}`);
  }
  if (!(maximumThrust >= 0)) {
    throw new RangeError(`maximumThrust must be 0 N or more; found ${maximumThrust} N`);
  }
  const whole = attainableSet(model);
  const set = attainableSet({
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
  });
  for (const [held, axes] of [
    ['full hover control', controlAxes],
    ['hover without yaw', ROLL_AND_PITCH],
  ] as const) {
    const reach = reachHolding(set, axes, whole.weight);
    const liftToWeight = largestLift(set, axes) / whole.weight;
    const free = [...reach.values()].every(
      ({ negative, positive }) => Math.min(negative, positive) > NOTHING * whole.momentScale,
    );
    if (free && liftToWeight > 1 + NOTHING) {
      const share = smallestShare(reach, reachHolding(whole, axes, whole.weight));
      return { motor: limited.name, held, reach, share, liftToWeight };
    }
  }
  return {
    motor: limited.name,
    held: 'nothing',
    reach: new Map(),
    share: 0,
    liftToWeight: largestLift(set, ROLL_AND_PITCH) / whole.weight,
  };
}

function largestLift(set: AttainableSet, axes: readonly ControlAxis[]): number {
  const best = farthest(set, [0, 0, 0, 1], { axes });
  return best.ok ? best.value[3] : 0;
}

function smallestShare(
  left: ReadonlyMap<ControlAxis, Reach>,
  whole: ReadonlyMap<ControlAxis, Reach>,
): number {
  let share = 1;
  for (const [axis, { negative, positive }] of left) {
    const before = whole.get(axis);
    if (before === undefined) continue;
    share = Math.min(share, negative / before.negative, positive / before.positive);
  }
  return share;
}
