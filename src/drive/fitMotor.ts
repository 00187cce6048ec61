import { denseSolve } from '../numerics/denseSolve.ts';
import type { Trust, Trusted } from '../units/trusted.ts';
import { noLoadCurrentAt } from './motor.ts';
import type { MotorGuess, MotorModel, MotorReading } from './types.ts';

/** A value after readings have been weighed with what was known before. */
export interface Fitted extends Trusted {
  /** Why the readings hardly narrow it, in words; absent where they do. */
  readonly untold?: string;
}

/** A motor after readings have been weighed with the nameplate. */
export interface MotorFit {
  readonly speedConstant: Fitted;
  /** As the readings see it [ohm]: a controller and leads behind the voltage read are in it. */
  readonly resistance: Fitted;
  readonly noLoadCurrent: Fitted;
  /** What speed adds to the resistance [s/rad]. */
  readonly resistanceRise: Fitted;
  /** Of the errors of the logarithms, in the order above. */
  readonly correlation: readonly (readonly number[])[];
  /** Root mean square of the readings' residuals over their expected noise; about 1 when the model holds. */
  readonly misfit: number;
  readonly model: MotorModel;
}

/** Expected noise of a listing or stand (common practice, no source), one standard deviation over the value. */
const VOLTAGE_NOISE = 0.015;
const CURRENT_NOISE = 0.03;
/**
 * What a stand repeats in every line, so that many lines don't average it away, one standard deviation over the value:
 * scales of its meters; a winding 20 K warmer than thought (0.39 % a kelvin, IEC 60028), since no reading tells
 * its temperature. Common practice, no source.
 */
const REPEATED = [0.007, 0.08, 0.05, 0.08] as const;
/** Narrowed by less than this a value counts as untold. */
const HARDLY = 0.7;
const ROUNDS = 40;
const COUNT = 4;

/**
 * Fits a motor to readings at known duty by Gauss-Newton on the logarithms, with the nameplate guess as prior
 * (maximum a posteriori). Two residuals a reading:
 *
 *   voltage  d V - Omega / K_V - i R (1 + rise Omega)      i = I / d, the converter's current
 *   current  i - i0(Omega) - K_V Q                         only where torque was measured
 *
 * Deviations are those of the covariance, stretched by a misfit over 1, and no less than what a stand repeats in
 * every line. The four lean on each other: use the correlation, or treat them as a group. Readings at one
 * speed don't tell R from its rise, nor readings without torque the no-load current: these stay what they were.
 *
 * @param trust of the readings: `maker` for a maker's table, `measured` for the user's own stand
 * @throws RangeError when there is no reading or one is not above zero
 */
export function fitMotor(guess: MotorGuess, readings: readonly MotorReading[], trust: Trust): MotorFit {
  check(readings);
  const prior = [guess.speedConstant, guess.resistance, guess.noLoadCurrent, guess.resistanceRise];
  const start = prior.map(({ value }) => Math.log(Math.max(value, 1e-12)));
  const spread = prior.map(({ value, deviation }) => Math.max(deviation / Math.max(value, 1e-12), 1e-4));
  const x = [...start];
  let covariance = new Float64Array(COUNT * COUNT);
  let misfit = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const residuals = readings.flatMap((reading) => residualsOf(modelAt(guess.model, x), reading));
    misfit = Math.sqrt(residuals.reduce((sum, { residual }) => sum + residual ** 2, 0) / residuals.length);
    covariance = covarianceOf(residuals, spread);
    const pull = start.map(
      (value, r) =>
        (value - (x[r] ?? 0)) / (spread[r] ?? 1) ** 2 +
        residuals.reduce((sum, { residual, slopes }) => sum + (slopes[r] ?? 0) * residual, 0),
    );
    let largest = 0;
    for (let r = 0; r < COUNT; r++) {
      const full = pull.reduce((sum, value, c) => sum + value * (covariance[r * COUNT + c] ?? 0), 0);
      const step = Math.max(-0.3, Math.min(0.3, full));
      x[r] = (x[r] ?? 0) + step;
      largest = Math.max(largest, Math.abs(step));
    }
    if (largest < 1e-12) break;
  }
  const variance = (r: number) => covariance[r * COUNT + r] ?? 1;
  const fitted = (r: number): Fitted => {
    const before = spread[r] ?? 1;
    // A model that misses by more than the noise is not known better than it misses.
    const own = Math.sqrt(variance(r)) * Math.max(1, misfit);
    const sd = Math.min(Math.hypot(own, REPEATED[r] ?? 0), before);
    const value = Math.exp(x[r] ?? 0);
    return sd < HARDLY * before
      ? { value, deviation: sd * value, trust, source: `fitted to ${linesText(readings.length)}` }
      : {
          value,
          deviation: sd * value,
          trust: prior[r]?.trust ?? 'inferred',
          source: `${prior[r]?.source ?? ''}${Math.abs((x[r] ?? 0) - (start[r] ?? 0)) < 1e-6 ? '' : `, weighed with ${linesText(readings.length)}`}`,
          untold: untold(r, readings),
        };
  };
  return {
    speedConstant: fitted(0),
    resistance: fitted(1),
    noLoadCurrent: fitted(2),
    resistanceRise: fitted(3),
    correlation: start.map((_, r) =>
      start.map((__, c) => (covariance[r * COUNT + c] ?? 0) / Math.sqrt(variance(r) * variance(c))),
    ),
    misfit,
    model: modelAt(guess.model, x),
  };
}

const linesText = (count: number) => `${count} ${count === 1 ? 'reading' : 'readings'}`;

/** Speeds nearer than this together don't part R from its rise (ours, no source). */
const APART = 1.5;

function untold(parameter: number, readings: readonly MotorReading[]): string {
  if (parameter === 2) {
    return readings.some(({ torque }) => torque !== undefined)
      ? 'the idle current is lost in the load: read it unloaded'
      : 'no reading tells torque';
  }
  const speeds = readings.map(({ angularSpeed }) => angularSpeed);
  if (Math.max(...speeds) < APART * Math.min(...speeds)) {
    return `${readings.length === 1 ? 'one reading' : 'readings at about one speed'} can't part volts of turning, of the winding and of what speed adds: read at several voltages`;
  }
  return `${linesText(readings.length)} can't tell it better than it was known`;
}

function check(readings: readonly MotorReading[]): void {
  if (readings.length === 0) throw new RangeError('readings must hold at least one line; found none');
  for (const { voltage, current, angularSpeed, duty = 1 } of readings) {
    if (!(voltage > 0 && current > 0 && angularSpeed > 0 && duty > 0 && duty <= 1)) {
      throw new RangeError(
        `each reading needs voltage, current, angularSpeed above 0 and duty up to 1; found ${voltage} V, ${current} A, ${angularSpeed} rad/s, ${duty}`,
      );
    }
  }
}

function modelAt(base: MotorModel, logs: readonly number[]): MotorModel {
  return {
    ...base,
    speedConstant: Math.exp(logs[0] ?? 0),
    resistance: Math.exp(logs[1] ?? 0),
    noLoadCurrent: Math.exp(logs[2] ?? 0),
    resistanceRise: Math.exp(logs[3] ?? 0),
  };
}

interface Residual {
  /** Reading less model, over its noise. */
  readonly residual: number;
  /** Of the model's prediction by the logarithms, over the noise. */
  readonly slopes: readonly number[];
}

function residualsOf(model: MotorModel, reading: MotorReading): readonly Residual[] {
  const duty = reading.duty ?? 1;
  const current = reading.current / duty;
  const voltage = duty * reading.voltage;
  const back = reading.angularSpeed / model.speedConstant;
  const still = current * model.resistance;
  const rising = still * (model.resistanceRise ?? 0) * reading.angularSpeed;
  const drop = still + rising;
  const voltageNoise = Math.hypot(VOLTAGE_NOISE * voltage, CURRENT_NOISE * drop);
  const first: Residual = {
    residual: (voltage - back - drop) / voltageNoise,
    slopes: [-back, drop, 0, rising].map((slope) => slope / voltageNoise),
  };
  if (reading.torque === undefined) return [first];
  const idle = noLoadCurrentAt(model, reading.angularSpeed);
  const working = model.speedConstant * reading.torque;
  const currentNoise = CURRENT_NOISE * current;
  return [
    first,
    {
      residual: (current - idle - working) / currentNoise,
      slopes: [working, 0, idle, 0].map((slope) => slope / currentNoise),
    },
  ];
}

/** Of the logarithms: the inverse of prior and readings taken together. */
function covarianceOf(residuals: readonly Residual[], spread: readonly number[]): Float64Array<ArrayBuffer> {
  const normal = new Float64Array(COUNT * COUNT);
  const unit = new Float64Array(COUNT * COUNT);
  for (let r = 0; r < COUNT; r++) {
    unit[r * COUNT + r] = 1;
    for (let c = 0; c < COUNT; c++) {
      normal[r * COUNT + c] = residuals.reduce(
        (sum, { slopes }) => sum + (slopes[r] ?? 0) * (slopes[c] ?? 0),
        r === c ? 1 / (spread[r] ?? 1) ** 2 : 0,
      );
    }
  }
  const inverse = denseSolve(normal, unit, COUNT);
  if (inverse === undefined)
    throw new RangeError('readings: their speeds, volts and amperes are out of all range');
  return Float64Array.from(inverse);
}
