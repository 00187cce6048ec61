import type { Air } from '../../air/standardAtmosphere.ts';
import type { PreparedRotor } from '../../assess/prepareRotors.ts';
import type { RotorLoads } from '../../flight/types.ts';
import { inducedSpeed } from '../../flight/wake.ts';

/**
 * A rotor in still air that asks no more than the true one in any axial inflow: its thrust so many times what the
 * map reads, and its torque such a share of it.
 */
export interface WakeRelief {
  /** >= 1; above it only where inflow un-stalls a blade. */
  readonly thrust: number;
  /** 0 to 1. */
  readonly torque: number;
}

export const NO_RELIEF: WakeRelief = { thrust: 1, torque: 1 };

/** Tip speeds [m/s] and inflows over the induced speed that are looked at. */
const TIP_SPEEDS = [25, 50, 80, 120, 180];
const INFLOWS = [0.25, 0.5, 0.75, 1, 1.5, 2.5];
/** Between the places looked at (tested by draws). */
const SLACK = 1e-2;

/**
 * Reads the relief off a rotor's own map. Inflow costs thrust at a speed, and torque for a thrust, but where it
 * un-stalls a blade that stalls in still air: so neither is taken for granted. `thrust` is the most that inflow
 * adds at any speed; hence the true rotor turns no slower for its thrust than the relieved one in still air.
 * `torque` is the least ratio of their torques at equal thrust.
 */
export function wakeReliefOf({ facts, read }: PreparedRotor, air: Air): WakeRelief {
  const { diameter } = facts.blade;
  const disc = (Math.PI / 4) * diameter ** 2;
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  const thrustAt = (speed: number, inflow: number): number => {
    read(speed, inflow, loads);
    return loads.thrust;
  };
  const places = TIP_SPEEDS.flatMap((tipSpeed) => {
    const speed = (2 * tipSpeed) / diameter;
    const thrust = thrustAt(speed, 0);
    const induced = inducedSpeed(thrust, 0, air.density, disc);
    return thrust > 0 ? INFLOWS.map((share) => ({ speed, thrust, inflow: share * induced })) : [];
  });
  let gain = 1;
  for (const { speed, thrust, inflow } of places) gain = Math.max(gain, thrustAt(speed, inflow) / thrust);
  if (gain > 1) gain *= 1 + SLACK;
  let share = 1;
  for (const { speed, thrust, inflow } of places) {
    const fast = speedFor(thrust, 0.5 * speed, 4 * speed, (at) => thrustAt(at, inflow));
    const slow = speedFor(thrust / gain, 0.3 * speed, speed, (at) => thrustAt(at, 0));
    // A thrust that no speed gives in that inflow is not flown.
    if (fast === undefined) continue;
    if (slow === undefined) return { thrust: gain, torque: 0 };
    thrustAt(fast, inflow);
    const blown = loads.torque;
    thrustAt(slow, 0);
    share = Math.min(share, blown / loads.torque);
  }
  return { thrust: gain, torque: Math.max(0, share - SLACK) };
}

/** Bisection; undefined when even the fastest gives less. */
function speedFor(
  thrust: number,
  slow: number,
  fast: number,
  thrustAt: (speed: number) => number,
): number | undefined {
  if (thrustAt(fast) < thrust * (1 - 1e-9)) return undefined;
  let [low, high] = [slow, fast];
  for (let step = 0; step < 26; step++) {
    const middle = 0.5 * (low + high);
    if (thrustAt(middle) < thrust) low = middle;
    else high = middle;
  }
  return high;
}
