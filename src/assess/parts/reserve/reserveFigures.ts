import { type Agility, agility } from '../../../flight/reserve/agility.ts';
import { failureRate } from '../../../flight/reserve/failureRate.ts';
import { type HotMotor, motorHot } from '../../../flight/reserve/motorHot.ts';
import { type Impaired, motorOut } from '../../../flight/reserve/motorOut.ts';
import { reserveOnBus } from '../../../flight/reserve/onBus.ts';
import type { Reach } from '../../../flight/reserve/types.ts';
import type { FlightModel, Levers } from '../../../flight/types.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';
import type { Matrix3 } from '../../../numerics/vector3.ts';
import type { Numbers } from '../banded.ts';

/** Agility in hover at half charge and what is left after each motor in turn. */
export interface ReserveAnswers {
  readonly agility: Agility;
  readonly out: readonly Impaired[];
  /** Each motor in turn held to what it bears for good. */
  readonly hot: readonly HotMotor[];
  readonly figures: Numbers;
}

/**
 * Of one motor with propeller, controller and plugs, by the flight hour: a placeholder to count motors by, not a
 * measured rate (common practice, no source).
 */
const FAILURES_PER_MOTOR_HOUR = 0.002;
const HOURS = 100;
const HALF_CHARGE = 0.5;

/** @param inPlaneDragPerThrust of the rotors [s/m]; absent when they have no answer edgewise */
export function reserveAnswers(
  model: FlightModel,
  inertia: Matrix3,
  levers: Levers,
  lastCharge: number,
  inPlaneDragPerThrust: number | undefined,
): Outcome<ReserveAnswers> {
  const lively = agility(model, inertia, levers, { charge: HALF_CHARGE });
  if (!lively.ok) return lively;
  const { onBus, lag, fullThrottleTime, bank, gyroscopicShare } = lively.value;
  const { moments, accelerations, combinedShare } = onBus.reserve;
  const last = reserveOnBus(model, inertia, levers, { charge: lastCharge });
  const lastMoments = last.ok ? last.value.reserve.moments : undefined;
  const out = motorOut(onBus.model, inPlaneDragPerThrust);
  const hot = hotMotors(model, levers, lively.value, inPlaneDragPerThrust);
  const rate = failureRate(out, FAILURES_PER_MOTOR_HOUR);
  const figures: Numbers = {
    'roll-moment': smaller(moments.roll),
    'pitch-moment': smaller(moments.pitch),
    'yaw-moment': smaller(moments.yaw),
    'last-roll-moment': lastMoments && smaller(lastMoments.roll),
    'last-pitch-moment': lastMoments && smaller(lastMoments.pitch),
    'last-yaw-moment': lastMoments && smaller(lastMoments.yaw),
    'roll-acceleration': smaller(accelerations.roll),
    'pitch-acceleration': smaller(accelerations.pitch),
    'yaw-acceleration': smaller(accelerations.yaw),
    // Four plain rotors have no room to spare: the balance about hover makes it a third whatever they are.
    'combined-control': model.stations.length > 4 ? combinedShare : undefined,
    'motor-lag': lag,
    'full-throttle-lag': fullThrottleTime,
    'roll-bank-time': bank.roll.toPass,
    'pitch-bank-time': bank.pitch.toPass,
    'roll-stop-time': bank.roll.toStop,
    'gyroscopic-share': gyroscopicShare,
    'left-after-motor-out': out.reduce((least, one) => Math.min(least, controlLeft(one)), 1),
    'turning-after-motor-out': fastestTurn(out),
    ...hotFigures(hot),
    'motor-failures': HOURS * rate.failuresPerHour,
    'failures-without-control': HOURS * (rate.failuresPerHour - rate.byHeld['full hover control']),
  };
  return solved({ agility: lively.value, out, hot, figures });
}

/** Each motor in turn held to what it bears for good, the moments on the bus as known. */
export const hotMotors = (
  model: FlightModel,
  levers: Levers,
  { onBus }: Agility,
  inPlaneDragPerThrust: number | undefined,
): readonly HotMotor[] => motorHot(model, levers, { charge: HALF_CHARGE }, onBus, inPlaneDragPerThrust);

export const hotFigures = (hot: readonly HotMotor[]): Numbers => ({
  'borne-thrust': Math.min(...hot.map(({ bears }) => bears)),
  'left-after-motor-hot': hot.reduce((least, one) => Math.min(least, controlLeft(one)), 1),
});

/** Share of control left, for full hover control only: a hover that turns as it will earns nothing here. */
export const controlLeft = (one: Impaired): number => (one.held === 'full hover control' ? one.share : 0);

/** Of all motors whose loss leaves the craft turning. */
function fastestTurn(out: readonly Impaired[]): number | undefined {
  const rates = out.flatMap(({ turning }) => turning ?? []);
  return rates.length > 0 ? Math.max(...rates) : undefined;
}

const smaller = ({ negative, positive }: Reach): number => Math.min(negative, positive);
