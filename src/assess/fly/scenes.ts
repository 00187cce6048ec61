import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { drydenTrace } from '../../air/drydenTrace.ts';
import type { ForwardPoint } from '../../flight/forward/forwardPoint.ts';
import { isRinged, KNOWN_RING_TILT } from '../../flight/forward/ringDrag.ts';
import { speedAtTilt } from '../../flight/forward/speeds.ts';
import { attainableSet, reachAlong } from '../../flight/reserve/attainableSet.ts';
import { controlAxes } from '../../flight/reserve/types.ts';
import { lean } from '../../flight/simulation/controller.ts';
import { at, type Command, plainGains, type SimulationState } from '../../flight/simulation/types.ts';
import { windFromTrace } from '../../flight/simulation/windFromTrace.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { knownTop } from '../parts/level/knownTop.ts';
import { dayGust } from '../parts/wind/windFigures.ts';
import { CHARGE, type CraftInAir } from './craftInAir.ts';
import type { Plan } from './flyAlong.ts';
import type { FlyRequest } from './types.ts';

/** To come to rest in a steady wind [s]: the plain place hold has both its poles at 1 rad/s. */
const SETTLING = 10;
const FINE = 0.001; // [s]
const COARSE = 0.002; // [s]
/** Forward flight asks much of the rotors and changes slowly [s]. */
const DASH_STEP = 0.01;
/** Over which the stick goes forward [s]. */
const LEANING = 1.5;
/** Lean let out for every m/s too fast, or the moments of the drag lean it on until the motors have no more [rad s/m]. */
const EASING = 0.1;
/**
 * The plain tilt loop has no integral, so the moments of the drag lean it off what it is asked for, a coaxial craft by 13 degrees, into
 * more tilt than its motors carry: asking back this many times the miss, and this much against the rate of turning [s], makes it so much
 * stiffer and keeps it damped. With pitch alone made stiffer, and no better damped, 2 inch craft of slow motors and next to no inertia
 * wallowed along at half the speed.
 */
const STIFFER = 3;
const CALMER = 0.1;
/**
 * As `STIFFER` and `CALMER`, for the pitch that a flight controller's integral holds in a gust. Stiffer yet, micros on slow motors (a lag of
 * 0.04 s) rocked ever wider; no better damped, a 2 inch by 16 degrees in 0.3 s.
 */
const HELD = 5;
const HELD_CALM = 0.3;
/** Largest duty of the speed that is dashed for: a twentieth is left to steer with. */
const DASH_DUTY = 0.95;

const holdHere: Command = { kind: 'place', place: [0, 0, 0], heading: 0 };

export const hoverPlan = ({ model }: CraftInAir, seconds = 4): Plan => ({
  model,
  pilot: () => holdHere,
  settling: 2,
  duration: seconds,
  timeStep: COARSE,
});

/**
 * Wind from ahead; at 0 the day's sharp gust on top of it, along and up. Until the reaction time is over attitude and throttles' lift
 * stay what the wind asked for. Rotors answer in oblique flow: their hub moments and the nose-up moment of rings belong to it. The
 * asked pitch is held as a flight controller's integral would, in the wind before the gust too: with the drag's moments leaning it off,
 * a 72 g craft of 2 inch propellers still drifted at 0.08 m/s after ten seconds, and was told to be pushed twice as far as it is.
 */
export function gustPlan({ oblique: model }: CraftInAir, mean: number): Plan {
  const { along, upward, reactionTime } = dayGust(mean);
  const toPlace = (state: Readonly<SimulationState>) => lean(model, plainGains, [0, 0, 0], 0, state);
  const steered = (
    { attitude: [roll, pitch, yaw], lift }: ReturnType<typeof lean>,
    state: Readonly<SimulationState>,
  ): Command => {
    const stiff = pitch + HELD * (noseDown(state) + pitch) - HELD_CALM * (state[at.rates + 1] as number);
    return { kind: 'attitude', attitude: [roll, stiff, yaw], lift };
  };
  return {
    model,
    pilot: (_, state) => steered(toPlace(state), state),
    onceSettled: (settled) => {
      const asked = toPlace(settled);
      return (time, state) => steered(time < reactionTime ? asked : toPlace(state), state);
    },
    wind: (time, out) => {
      out[0] = -mean - (time >= 0 ? along : 0);
      out[1] = 0;
      out[2] = time >= 0 ? -upward : 0;
    },
    settling: SETTLING,
    duration: 6,
    timeStep: COARSE,
  };
}

/**
 * A full roll from a hover until it has passed 90 degrees: on the thrusts that give the most roll, as the reserve counts it, or
 * as much as the plain mixer makes of it, which shares a moment over six motors or more by their levers and so spares the inner ones.
 */
export function bankPlan(craft: CraftInAir, by: 'all the motors have' | 'plain mixer'): Outcome<Plan> {
  const { model, agility } = craft;
  const lift = model.mass * model.gravity;
  const set = attainableSet(agility.onBus.model);
  const most = reachAlong(set, [1, 0, 0], { axes: controlAxes, lift });
  if (!most.ok) return most;
  const { along, thrusts } = most.value;
  const roll: Command =
    by === 'plain mixer'
      ? { kind: 'moments', moments: [10 * along, 0, 0], lift }
      : { kind: 'thrusts', thrusts };
  return solved({
    model,
    pilot: (time) => (time < 0 ? holdHere : roll),
    settling: 2,
    duration: 3 * agility.bank.roll.toPass,
    timeStep: FINE,
    over: (state) => uprightness(state) < -0.2,
  });
}

/** Cosine between the craft's down and the world's: below nothing past 90 degrees. */
const uprightness = (state: Readonly<SimulationState>): number =>
  1 - 2 * ((state[at.attitude + 1] as number) ** 2 + (state[at.attitude + 2] as number) ** 2);

/** How far the nose is down [rad]. */
function noseDown(state: Readonly<SimulationState>): number {
  const [w = 1, x = 0, y = 0, z = 0] = state.slice(at.attitude, at.attitude + 4);
  return -Math.asin(Math.min(1, Math.max(-1, 2 * (w * y - z * x))));
}

/** How far it is rolled to the right [rad]. */
function rolled(state: Readonly<SimulationState>): number {
  const [w = 1, x = 0, y = 0, z = 0] = state.slice(at.attitude, at.attitude + 4);
  return Math.atan2(2 * (w * x + y * z), 1 - 2 * (x * x + y * y));
}

/** A dash, and whose tilt it takes, in words. */
interface Dash {
  readonly plan: Plan;
  readonly speed: number;
  readonly tilt: number;
  readonly aim: string;
}

/** Nose down to the tilt of the fastest level flight, less where that makes it faster, height held. */
export function dashPlan(craft: CraftInAir, seconds = 12): Outcome<Dash> {
  const top = knownTop(craft.forward, CHARGE, DASH_DUTY);
  if (!top.ok) return top;
  const known = withinKnown(craft, top.value.at);
  if (!known.ok) return known;
  const { speed, tilt } = known.value;
  if (!(speed > 1)) return noSolution('it makes no way in level flight');
  const { mass, gravity } = craft.oblique;
  return solved({
    speed,
    tilt,
    aim:
      speed < top.value.at.speed
        ? 'as far as anything is known of guards at speed'
        : `the tilt of the fastest level flight at ${Math.round(100 * DASH_DUTY)} % duty`,
    plan: {
      model: craft.oblique,
      pilot: (time, state) => {
        const over = Math.max(0, (state[at.velocity] as number) - speed);
        const lean = Math.max(0, tilt * Math.min(1, time / LEANING) - EASING * over);
        const climb = 3 * (state[at.velocity + 2] as number) + 2 * (state[at.place + 2] as number);
        return {
          kind: 'attitude',
          attitude: [
            -STIFFER * rolled(state) - CALMER * (state[at.rates] as number),
            -lean - STIFFER * (lean - noseDown(state)) - CALMER * (state[at.rates + 1] as number),
            0,
          ],
          lift: (mass * Math.max(0.1 * gravity, gravity + climb)) / Math.max(0.2, Math.cos(lean)),
        };
      },
      settling: 0,
      duration: seconds,
      timeStep: DASH_STEP,
    },
  });
}

/** The fastest level flight, or with guards the one at the steepest tilt that anything is known of. */
function withinKnown(
  { forward }: CraftInAir,
  top: ForwardPoint,
): Outcome<{ readonly speed: number; readonly tilt: number }> {
  return isRinged(forward.model) && top.tilt > KNOWN_RING_TILT
    ? speedAtTilt(forward, CHARGE, KNOWN_RING_TILT, top.speed)
    : solved(top);
}

/** Place held in a mean wind from ahead with Dryden gusts of a seed. */
export function roughPlan(craft: CraftInAir, { wind, seed, duration = 60 }: FlyRequest): Plan {
  const { turbulence } = dayGust(wind);
  const timeStep = 0.01;
  const count = Math.ceil((duration + SETTLING) / timeStep) + 1;
  const gusts = drydenTrace({ turbulence, airspeed: wind, timeStep, count }, xoroshiro128plus(seed));
  const read = windFromTrace(wind, 0, gusts, timeStep);
  return {
    model: craft.model,
    pilot: () => holdHere,
    wind: (time, out) => read(time + SETTLING, out),
    settling: SETTLING,
    duration,
    timeStep: COARSE,
  };
}
