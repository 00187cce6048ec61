import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { copperRatio, copperSlope } from './copper.ts';
import type { MotorModel } from './types.ts';

/**
 * Winding and case as two lumps, winding -> case -> air. Copper loss heats the winding and grows with its
 * temperature; iron loss heats the case, which the propeller's wash cools. Linear in the temperatures, so the
 * steady state and the course in time are exact. Current and speed are held steady.
 */

/** What heats and cools one motor. */
export interface HeatLoad {
  /** Motor current [A]. */
  readonly current: number;
  /** Winding resistance scale, 1 as the model says. */
  readonly resistanceScale: number;
  /** With `windingLoss` in it [W]. */
  readonly ironLoss: number;
  /** Of `ironLoss` what heats the winding instead [W]; nothing when absent. */
  readonly windingLoss?: number;
  /** Speed of the air over the case [m/s]; the wash at the hub. */
  readonly washSpeed: number;
  /** [K] */
  readonly airTemperature: number;
  /** On heat shed to the air, 1 as the model says. */
  readonly coolingScale: number;
  /** On heat that passes from winding to case, 1 as the model says; 1 when absent. */
  readonly contactScale?: number;
  /** On both heat capacities, 1 as the model says; 1 when absent. */
  readonly heatCapacityScale?: number;
}

export interface MotorTemperatures {
  /** [K] */
  readonly winding: number;
  /** [K] */
  readonly case: number;
}

/** Case to air [W/K] at a speed of the air [m/s]. */
export function caseConductance(motor: MotorModel, washSpeed: number): number {
  const { caseToStillAir, caseToWash, washReference, washExponent } = motor.heat;
  return caseToStillAir + caseToWash * (Math.max(washSpeed, 0) / washReference) ** washExponent;
}

interface Rates {
  /** Copper loss at air temperature [W] and its rise with winding temperature [W/K]. */
  readonly copper: number;
  readonly copperRise: number;
  /** Straight into the case [W]. */
  readonly iron: number;
  readonly toCase: number;
  readonly toAir: number;
}

function ratesOf(motor: MotorModel, load: HeatLoad): Rates {
  const heat = load.current * load.current * motor.resistance * load.resistanceScale;
  const { windingLoss = 0, contactScale = 1 } = load;
  return {
    copper: heat * copperRatio(load.airTemperature, motor.referenceTemperature) + windingLoss,
    iron: load.ironLoss - windingLoss,
    copperRise: heat * copperSlope(motor.referenceTemperature),
    toCase: motor.heat.windingToCase * contactScale,
    toAir: caseConductance(motor, load.washSpeed) * load.coolingScale,
  };
}

/** Where the temperatures settle; no solution when copper loss outgrows the cooling (thermal runaway). */
export function settledTemperatures(motor: MotorModel, load: HeatLoad): Outcome<MotorTemperatures> {
  const { copper, copperRise, iron, toCase, toAir } = ratesOf(motor, load);
  const room = 1 - copperRise * (1 / toCase + 1 / toAir);
  if (!(room > 0)) {
    return noSolution(
      `at ${load.current.toFixed(1)} A the winding heats itself faster than it can be cooled: it never settles`,
    );
  }
  const winding = ((iron + copper) / toAir + copper / toCase) / room;
  const shell = (iron + copper + copperRise * winding) / toAir;
  return solved({ winding: load.airTemperature + winding, case: load.airTemperature + shell });
}

/**
 * The temperatures after `duration` [s] under a steady load, from `start`. By the eigenvalues of the
 * two-lump system, which are real because heat couples both ways with the same sign.
 */
export function temperaturesAfter(
  motor: MotorModel,
  load: HeatLoad,
  start: MotorTemperatures,
  duration: number,
): MotorTemperatures {
  const { copper, copperRise, iron, toCase, toAir } = ratesOf(motor, load);
  const { heatCapacityScale = 1 } = load;
  const windingCapacity = motor.heat.windingCapacity * heatCapacityScale;
  const caseCapacity = motor.heat.caseCapacity * heatCapacityScale;
  const a = (copperRise - toCase) / windingCapacity;
  const b = toCase / windingCapacity;
  const c = toCase / caseCapacity;
  const d = -(toCase + toAir) / caseCapacity;
  const windingHeat = copper / windingCapacity;
  const caseHeat = iron / caseCapacity;
  const half = 0.5 * (a + d);
  const spread = Math.sqrt((0.5 * (a - d)) ** 2 + b * c);
  const fast = half - spread;
  const slow = half + spread;
  const u0 = start.winding - load.airTemperature;
  const v0 = start.case - load.airTemperature;
  // exp(M t) and its integral by Sylvester's formula: f(M) = f(fast) (M - slow)/(fast - slow) + the like.
  const gap = slow - fast;
  const grow = (f: number, s: number, m: number, shift: number): number =>
    (s * (m - fast * shift) - f * (m - slow * shift)) / gap;
  const eFast = Math.exp(fast * duration);
  const eSlow = Math.exp(slow * duration);
  const iFast = integralOfExp(fast, duration);
  const iSlow = integralOfExp(slow, duration);
  const winding =
    grow(eFast, eSlow, a, 1) * u0 +
    grow(eFast, eSlow, b, 0) * v0 +
    grow(iFast, iSlow, a, 1) * windingHeat +
    grow(iFast, iSlow, b, 0) * caseHeat;
  const shell =
    grow(eFast, eSlow, c, 0) * u0 +
    grow(eFast, eSlow, d, 1) * v0 +
    grow(iFast, iSlow, c, 0) * windingHeat +
    grow(iFast, iSlow, d, 1) * caseHeat;
  return { winding: load.airTemperature + winding, case: load.airTemperature + shell };
}

/** Integral of exp(rate s) over s from 0 to t. */
function integralOfExp(rate: number, t: number): number {
  return Math.abs(rate * t) < 1e-12 ? t : Math.expm1(rate * t) / rate;
}

/**
 * Time until winding or case reaches its limit [s], whichever is first; Infinity when neither is reached within
 * `horizon` [s]; 0 when one is over it at the start.
 */
export function timeToLimit(
  motor: MotorModel,
  load: HeatLoad,
  start: MotorTemperatures,
  horizon = 900,
): number {
  const excess = (t: number): number => {
    const at = temperaturesAfter(motor, load, start, t);
    return Math.max(at.winding - motor.limits.windingTemperature, at.case - motor.limits.caseTemperature);
  };
  if (excess(0) >= 0) return 0;
  // Doubling keeps a runaway's exponential within numbers.
  let late = 0.25;
  while (excess(late) < 0) {
    if (late >= horizon) return Number.POSITIVE_INFINITY;
    late = Math.min(2 * late, horizon);
  }
  const found = bracketedRoot(excess, 0, late, 1e-3);
  return found.ok ? found.value : Number.POSITIVE_INFINITY;
}
