import { type Outcome, solved } from '../../numerics/outcome.ts';
import {
  apply3,
  cross3,
  dot3,
  type Matrix3,
  scale3,
  transpose3,
  type Vector3,
} from '../../numerics/vector3.ts';
import { type AttainableSet, attainableSet, type Extreme, farthest, reachAlong } from './attainableSet.ts';
import { type ControlAxis, controlAxes, type MomentReach, type Reach, type ReserveModel } from './types.ts';

/** Control that is left while the craft carries itself. */
export interface Reserve {
  /** Largest moments about one axis, the other two nothing [N m]. */
  readonly moments: MomentReach;
  /**
   * Angular accelerations about each axis under its largest moment, the other moments nothing [rad/s2]. Crossed inertia lets the
   * other axes drift a little: to stop that would spend their moments, yaw's above all, on a flick.
   */
  readonly accelerations: MomentReach;
  /**
   * The share of each axis's own largest that roll, pitch and yaw can have all at once, in every
   * combination of directions, 0 to 1.
   */
  readonly combinedShare: number;
  /** Largest lift with the craft held level over its weight. */
  readonly liftToWeight: number;
  /** Thrusts of every motor at each of the six largest moments [N]. */
  readonly extremes: readonly (readonly number[])[];
}

/**
 * Roll, pitch and yaw in reserve with every motor inside its limits.
 *
 * @param lift required total lift [N]; the weight when absent (hover)
 * @returns words when the craft cannot be held level at that lift
 */
export function controlReserve(model: ReserveModel, lift?: number): Outcome<Reserve> {
  const set = attainableSet(model);
  const required = lift ?? set.weight;
  const hold = { axes: controlAxes, lift: required };
  const level = farthest(set, [0, 0, 0, 0], hold);
  if (!level.ok) return level;
  const extremes: (readonly number[])[] = [];
  const along = (direction: Vector3): number => alongOr0(reachAlong(set, direction, hold));
  const noted = (direction: Vector3): number => {
    const extreme = reachAlong(set, direction, hold);
    if (extreme.ok) extremes.push(extreme.value.thrusts);
    return alongOr0(extreme);
  };
  const reach = (direction: Vector3, by: (direction: Vector3) => number): Reach => ({
    positive: by(direction),
    negative: by(scale3(direction, -1)),
  });
  const moments = forAxes((axis) => reach(unitVector(axis), noted));
  const accelerations = forAxes((axis) => {
    const easiness = dot3(unitVector(axis), against(model.inertia, unitVector(axis)));
    return { positive: moments[axis].positive * easiness, negative: moments[axis].negative * easiness };
  });
  const lifts = farthest(set, [0, 0, 0, 1], { axes: controlAxes });
  return solved({
    moments,
    accelerations,
    combinedShare: combinedShare(moments, along),
    extremes,
    liftToWeight: lifts.ok ? lifts.value[3] / set.weight : 0,
  });
}

function combinedShare(moments: MomentReach, along: (direction: Vector3) => number): number {
  let share = 1;
  const sides = ['negative', 'positive'] as const;
  for (const roll of sides) {
    for (const pitch of sides) {
      for (const yaw of sides) {
        const corner: Vector3 = [
          signed(moments.roll, roll),
          signed(moments.pitch, pitch),
          signed(moments.yaw, yaw),
        ];
        share = corner.every((moment) => moment === 0) ? 0 : Math.min(share, along(corner));
      }
    }
  }
  return share;
}

const signed = (reach: Reach, side: keyof Reach): number =>
  side === 'positive' ? reach.positive : -reach.negative;

/**
 * How far the moments reach about the held axes at a lift; nothing where the craft cannot even be
 * held, so that what is left after a failure can be compared.
 */
export function reachHolding(
  set: AttainableSet,
  axes: readonly ControlAxis[],
  lift: number,
): ReadonlyMap<ControlAxis, Reach> {
  const hold = { axes, lift };
  const canHold = farthest(set, [0, 0, 0, 0], hold).ok;
  const along = (direction: Vector3): number => (canHold ? alongOr0(reachAlong(set, direction, hold)) : 0);
  return new Map(
    axes.map((axis) => {
      const direction = unitVector(axis);
      return [axis, { positive: along(direction), negative: along(scale3(direction, -1)) }];
    }),
  );
}

const alongOr0 = (extreme: Outcome<Extreme>): number => (extreme.ok ? extreme.value.along : 0);

/** The angular acceleration that a moment makes: inertia's inverse by cofactors, their rows being cross products. */
function against([a, b, c]: Matrix3, moment: Vector3): Vector3 {
  const cofactors: Matrix3 = [cross3(b, c), cross3(c, a), cross3(a, b)];
  return scale3(apply3(transpose3(cofactors), moment), 1 / dot3(a, cofactors[0]));
}

const unitVector = (axis: ControlAxis): Vector3 =>
  axis === 'roll' ? [1, 0, 0] : axis === 'pitch' ? [0, 1, 0] : [0, 0, 1];

const forAxes = (make: (axis: ControlAxis) => Reach): MomentReach => ({
  roll: make('roll'),
  pitch: make('pitch'),
  yaw: make('yaw'),
});
