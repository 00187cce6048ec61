import { type Outcome, solved } from '../numerics/outcome.ts';
import type { ForwardCraft, ForwardTrim } from './forward/forwardTrim.ts';
import { type AirForces, airForces } from './gustForces.ts';

export interface SharpGust {
  /** Added to the steady wind, along it [m/s]. */
  readonly along: number;
  /** Upwards [m/s]. */
  readonly upward: number;
  /** Time before the craft leans against it [s], >= 0. */
  readonly reactionTime: number;
}

export interface Jolt {
  /** Horizontal acceleration when it strikes [m/s2]. */
  readonly push: number;
  /** Of which by the rotors: their drag, less what their lift gains, as it leans into the wind [m/s2]. */
  readonly pushByRotors: number;
  /** Upward acceleration when it strikes [m/s2]. */
  readonly heave: number;
  /** 1 and what the air's force along the thrust gains, over the weight. */
  readonly loadFactor: number;
  /** Size of the two accelerations together over gravity. */
  readonly jolt: number;
  /** Speed got by the time the craft answers, at most [m/s]. */
  readonly speedGained: number;
  /** Way drifted by then, at most [m]. */
  readonly drift: number;
}

/**
 * What a sharp-edged gust does before anything answers: the craft as trimmed in its steady wind keeps its lean and its rotor
 * speeds, and the forces of the new flow less those of the old act on the mass alone. So the drag of the body, the rotors'
 * in-plane drag, the lift that the updraught gives and the one that flow along the discs gives are in it, and lift gained leans
 * into the wind. That the gust is over the whole craft at once and that the wake answers at once are both on the hard side
 * (the inflow of a small rotor takes a few hundredths of a second).
 *
 * @param trim in the steady wind, level
 * @returns words when a rotor has no answer in the gust
 * @throws RangeError when the reaction time is below 0
 */
export function gustJolt(craft: ForwardCraft, trim: ForwardTrim, gust: SharpGust): Outcome<Jolt> {
  const { along, upward, reactionTime } = gust;
  if (!(reactionTime >= 0)) throw new RangeError(`reactionTime must be 0 or more; found ${reactionTime}`);
  const { weight } = craft.circuit;
  const { gravity } = craft.model;
  const mass = weight / gravity;
  const calm = airForces(craft, trim, trim.speed, trim.climb);
  if (!calm.ok) return calm;
  const struck = airForces(craft, trim, trim.speed + along, trim.climb - upward);
  if (!struck.ok) return struck;
  const gain = (of: keyof AirForces): number => (struck.value[of] - calm.value[of]) / mass;
  const [sine, cosine] = [Math.sin(trim.tilt), Math.cos(trim.tilt)];
  const pushByRotors = gain('rotorDrag') * cosine - gain('lift') * sine;
  const push = pushByRotors + gain('bodyDrag') * cosine - gain('bodyLift') * sine;
  const alongThrust = gain('lift') + gain('bodyLift');
  const heave = alongThrust * cosine + (gain('rotorDrag') + gain('bodyDrag')) * sine;
  return solved({
    push,
    pushByRotors,
    heave,
    loadFactor: 1 + alongThrust / gravity,
    jolt: Math.hypot(push, heave) / gravity,
    speedGained: push * reactionTime,
    drift: 0.5 * push * reactionTime ** 2,
  });
}
