import { rootTransport } from '../../airframe/frameModel.ts';
import { add3, cross3, subtract3, type Vector3 } from '../../numerics/vector3.ts';
import type { ArmAxis, Rides, Solid } from './solidsOf.ts';

/** How a mode moves the frame: six motions (x, y, z and turns about them) of the hub, and of each arm's tip. */
export interface ModeMotion {
  /** At the origin, the aircraft's axes. */
  readonly hub: readonly number[];
  /** In the arm's own axes (along, across, down), the hub's motion in it. */
  readonly tips: readonly { readonly arm: string; readonly motion: readonly number[] }[];
}

/**
 * Where each corner of a solid goes in a mode, for a unit of it [m]. Between root and motor axis an arm is drawn as
 * the cubic that meets displacement and slope of both ends (exact for a light arm), its twist straight.
 */
export function swingOf(solid: Solid, arms: readonly ArmAxis[], motion: ModeMotion): Float32Array {
  const field = swingField(solid.rides, arms, motion);
  const { positions } = solid.mesh;
  const swing = new Float32Array(positions.length);
  for (let i = 0; i < swing.length; i += 3)
    swing.set(field([positions[i] as number, positions[i + 1] as number, positions[i + 2] as number]), i);
  return swing;
}

/** The motion of any place that moves with hub, arm or tip. */
export function swingField(
  rides: Rides,
  arms: readonly ArmAxis[],
  motion: ModeMotion,
): (place: Vector3) => Vector3 {
  const [hubMove, hubTurn] = halves(motion.hub);
  const withHub = (place: Vector3): Vector3 => add3(hubMove, cross3(hubTurn, place));
  if (rides.on === 'hub') return withHub;
  const arm = arms.find(({ name }) => name === rides.arm);
  const tip = motion.tips.find((each) => each.arm === rides.arm);
  if (arm === undefined || tip === undefined) return withHub;
  const [c, s] = [Math.cos(arm.yaw), Math.sin(arm.yaw)];
  const intoArm = ([x, y, z]: Vector3): Vector3 => [c * x + s * y, c * y - s * x, z];
  const outOfArm = ([x, y, z]: Vector3): Vector3 => [c * x - s * y, s * x + c * y, z];
  const root = transported(rootTransport(arm.root, arm.yaw), motion.hub);
  const [tipMove, tipTurn] = halves(tip.motion);
  const end: Vector3 = [arm.length, 0, 0];
  return (place) => {
    const own = intoArm(subtract3(place, arm.root));
    if (rides.on === 'tip') return outOfArm(add3(tipMove, cross3(tipTurn, subtract3(own, end))));
    if (own[0] <= 0) return withHub(place);
    if (own[0] >= arm.length) return outOfArm(add3(tipMove, cross3(tipTurn, subtract3(own, end))));
    const at = own[0] / arm.length;
    const [u0 = 0, v0 = 0, w0 = 0, a0 = 0, b0 = 0, g0 = 0] = root;
    const [u1, v1, w1] = tipMove;
    const [a1, b1, g1] = tipTurn;
    // The slope of v is the turn about z, that of w minus the turn about y.
    const v = cubic(v0, g0, v1, g1, arm.length, at);
    const w = cubic(w0, -b0, w1, -b1, arm.length, at);
    const turn: Vector3 = [a0 + at * (a1 - a0), -w.slope, v.slope];
    const axis: Vector3 = [u0 + at * (u1 - u0), v.value, w.value];
    return outOfArm(add3(axis, cross3(turn, [0, own[1], own[2]])));
  };
}

/** Hermite's cubic from values and slopes at both ends of a length. */
function cubic(from: number, slopeFrom: number, to: number, slopeTo: number, length: number, t: number) {
  const value =
    (1 + 2 * t) * (1 - t) ** 2 * from +
    t * (1 - t) ** 2 * length * slopeFrom +
    t * t * (3 - 2 * t) * to +
    t * t * (t - 1) * length * slopeTo;
  const slope =
    (6 * t * (t - 1) * (from - to)) / length +
    (1 - 4 * t + 3 * t * t) * slopeFrom +
    t * (3 * t - 2) * slopeTo;
  return { value, slope };
}

const halves = (six: readonly number[]): readonly [Vector3, Vector3] => {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = six;
  return [
    [a, b, c],
    [d, e, f],
  ];
};

const transported = (to: Float64Array, motion: readonly number[]): readonly number[] =>
  motion.map((_, i) => motion.reduce((sum, value, j) => sum + (to[i * 6 + j] as number) * value, 0));
