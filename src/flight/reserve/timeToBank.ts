import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';

export interface BankRequest {
  /** Angle to turn through [rad], > 0; pi/2 for the trade's 90 degrees. */
  readonly angle: number;
  /** Largest angular acceleration into the turn [rad/s2], >= 0. */
  readonly acceleration: number;
  /** Largest angular acceleration against it [rad/s2], >= 0. */
  readonly deceleration: number;
  /** First-order lag of the moment behind its command [s], >= 0. */
  readonly lag: number;
  /** Largest turn rate the flight controller allows [rad/s]. Not looked at when absent. */
  readonly rateLimit?: number;
}

export interface BankTime {
  /** From the command to passing the angle at full moment [s]. */
  readonly toPass: number;
  /** From the command to being stopped at the angle, full moment one way and then the other [s]. */
  readonly toStop: number;
  /** Turn rate when passing, the stop not tried [rad/s]. */
  readonly rateWhenPassing: number;
}

/**
 * Time to bank, at rest to begin with, by bang-bang command through a first-order lag:
 * acceleration a(t) = A + (a0 - A) exp(-t/lag) integrated twice in closed form. Aerodynamic damping by
 * the rotors is left out (on the quick side; the simulation holds it).
 *
 * @returns words when there is no moment one way or the other
 * @throws RangeError when an argument is out of range
 */
export function timeToBank(request: BankRequest): Outcome<BankTime> {
  const { angle, acceleration, deceleration, lag, rateLimit } = request;
  if (acceleration === 0 || deceleration === 0) {
    return noSolution('no moment is left to bank with, or to stop');
  }
  for (const [name, value] of Object.entries({
    angle,
    acceleration,
    deceleration,
    rateLimit: rateLimit ?? 1,
  })) {
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`${name} must be over 0; found ${value}`);
  }
  if (!(lag >= 0 && Number.isFinite(lag))) throw new RangeError(`lag must be 0 s or more; found ${lag} s`);

  const start: Turning = { angle: 0, rate: 0, acceleration: lag > 0 ? 0 : acceleration };
  const rateAt = (t: number): number => after(start, acceleration, lag, t).rate;
  // Rate is limited by cutting the moment: from then on the rate is steady (the lag's tail is within the limit's slack).
  const longest = Math.sqrt((2 * angle) / acceleration) + 4 * lag + Math.sqrt((2 * angle) / deceleration);
  const limitedAt =
    rateLimit === undefined || rateAt(longest) <= rateLimit
      ? solved(longest)
      : bracketedRoot((t) => rateAt(t) - rateLimit, 0, longest, 1e-12);
  if (!limitedAt.ok) return limitedAt;
  const steadyFrom = limitedAt.value;

  const turned = (t: number): Turning => {
    if (t <= steadyFrom) return after(start, acceleration, lag, t);
    const then = after(start, acceleration, lag, steadyFrom);
    return { angle: then.angle + then.rate * (t - steadyFrom), rate: then.rate, acceleration: 0 };
  };
  const reachBy = (rateLimit === undefined ? 0 : angle / rateLimit) + longest;
  const toPass = bracketedRoot((t) => turned(t).angle - angle, 0, reachBy, 1e-12);
  if (!toPass.ok) return toPass;

  /** Where it comes to rest when the command is turned about at time t, and when. */
  const stopped = (t: number): { readonly angle: number; readonly time: number } => {
    const then = turned(t);
    const end = bracketedRoot(
      (s) => after(then, -deceleration, lag, s).rate,
      0,
      (then.rate + then.acceleration * lag) / deceleration + 2 * lag + 1e-9,
      1e-13,
    );
    const time = end.ok ? end.value : 0;
    return { angle: after(then, -deceleration, lag, time).angle, time };
  };
  const switchAt = bracketedRoot((t) => stopped(t).angle - angle, 0, toPass.value, 1e-12);
  if (!switchAt.ok) return switchAt;
  return solved({
    toPass: toPass.value,
    toStop: switchAt.value + stopped(switchAt.value).time,
    rateWhenPassing: turned(toPass.value).rate,
  });
}

interface Turning {
  readonly angle: number;
  readonly rate: number;
  readonly acceleration: number;
}

/** State after a time with the acceleration settling to `target` through the lag. */
function after(from: Turning, target: number, lag: number, t: number): Turning {
  if (lag === 0) {
    return {
      angle: from.angle + from.rate * t + 0.5 * target * t * t,
      rate: from.rate + target * t,
      acceleration: target,
    };
  }
  const decayed = -Math.expm1(-t / lag);
  const excess = from.acceleration - target;
  return {
    angle: from.angle + from.rate * t + 0.5 * target * t * t + excess * lag * (t - lag * decayed),
    rate: from.rate + target * t + excess * lag * decayed,
    acceleration: target + excess * (1 - decayed),
  };
}
