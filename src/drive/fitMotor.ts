import type { Trust, Trusted } from '../units/trusted.ts';
import { noLoadCurrentAt } from './motor.ts';
import type { MotorGuess, MotorModel, MotorReading } from './types.ts';

/** Speed constant, resistance and no-load current after readings have been weighed with the nameplate. */
export interface MotorFit {
  readonly speedConstant: Trusted;
  /** Winding, controller and leads together, as the readings see them [ohm]. */
  readonly resistance: Trusted;
  readonly noLoadCurrent: Trusted;
  /** Of the errors of the logarithms, in the order speed constant, resistance, no-load current. */
  readonly correlation: readonly (readonly number[])[];
  /** Root mean square of the readings' residuals over their expected noise; about 1 when the model holds. */
  readonly misfit: number;
  readonly model: MotorModel;
}

/** Expected noise of a listing or stand (common practice, no source), one standard deviation over the value. */
const VOLTAGE_NOISE = 0.015;
const CURRENT_NOISE = 0.03;
const ROUNDS = 30;

/**
 * Fits a motor to readings at known duty by Gauss-Newton on the logarithms, with the nameplate guess as prior
 * (maximum a posteriori). Two residuals a reading:
 *
 *   voltage  d V - Omega / K_V - i R          i = I / d, the converter's current
 *   current  i - i0(Omega) - K_V Q            only where torque was measured
 *
 * Without torque the no-load current stays what the nameplate says, and the deviations show it. The three lean on
 * each other: use the correlation, or treat them as a group.
 *
 * @param trust of the readings: `maker` for a maker's table, `measured` for the user's own stand
 * @throws RangeError when there is no reading or one is not above zero
 */
export function fitMotor(guess: MotorGuess, readings: readonly MotorReading[], trust: Trust): MotorFit {
  if (readings.length === 0) throw new RangeError('readings must hold at least one line; found none');
  for (const { voltage, current, angularSpeed, duty = 1 } of readings) {
    if (!(voltage > 0 && current > 0 && angularSpeed > 0 && duty > 0 && duty <= 1)) {
      throw new RangeError(
        `each reading needs voltage, current, angularSpeed above 0 and duty up to 1; found ${voltage} V, ${current} A, ${angularSpeed} rad/s, ${duty}`,
      );
    }
  }
  const prior = [guess.speedConstant, guess.resistance, guess.noLoadCurrent];
  const start = prior.map(({ value }) => Math.log(value));
  const spread = prior.map(({ value, deviation }) => Math.max(deviation / value, 1e-4));
  const x = [...start];
  let normal: number[][] = [];
  let chi = 0;
  let count = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const model = modelAt(guess.model, x);
    normal = [0, 1, 2].map((r) => [0, 1, 2].map((c) => (r === c ? 1 / (spread[r] ?? 1) ** 2 : 0)));
    const pull = [0, 1, 2].map((r) => ((start[r] ?? 0) - (x[r] ?? 0)) / (spread[r] ?? 1) ** 2);
    chi = 0;
    count = 0;
    for (const reading of readings) {
      for (const { residual, slopes } of residualsOf(model, reading)) {
        chi += residual * residual;
        count++;
        for (let r = 0; r < 3; r++) {
          pull[r] = (pull[r] ?? 0) + (slopes[r] ?? 0) * residual;
          const row = normal[r] as number[];
          for (let c = 0; c < 3; c++) row[c] = (row[c] ?? 0) + (slopes[r] ?? 0) * (slopes[c] ?? 0);
        }
      }
    }
    const covariance = inverse3(normal);
    let largest = 0;
    for (let r = 0; r < 3; r++) {
      const row = covariance[r] as number[];
      const full = row.reduce((sum, value, c) => sum + value * (pull[c] ?? 0), 0);
      const step = Math.max(-0.3, Math.min(0.3, full));
      x[r] = (x[r] ?? 0) + step;
      largest = Math.max(largest, Math.abs(step));
    }
    if (largest < 1e-12) break;
  }
  const misfit = Math.sqrt(chi / Math.max(count, 1));
  const covariance = inverse3(normal);
  // A model that misses by more than the noise is not known better than it misses.
  const stretch = Math.max(1, misfit);
  const sd = [0, 1, 2].map((r) => Math.min(Math.sqrt(covariance[r]?.[r] ?? 0) * stretch, spread[r] ?? 1));
  const value = x.map(Math.exp);
  const trusted = (r: number): Trusted => {
    const told = (sd[r] ?? 1) < 0.7 * (spread[r] ?? 1);
    return {
      value: value[r] ?? 0,
      deviation: (sd[r] ?? 0) * (value[r] ?? 0),
      trust: told ? trust : (prior[r]?.trust ?? 'inferred'),
      source: told ? `fitted to ${readings.length} readings` : (prior[r]?.source ?? ''),
    };
  };
  return {
    speedConstant: trusted(0),
    resistance: trusted(1),
    noLoadCurrent: trusted(2),
    correlation: covariance.map((row, r) =>
      row.map((v, c) => v / Math.sqrt((covariance[r]?.[r] ?? 1) * (covariance[c]?.[c] ?? 1))),
    ),
    misfit,
    model: modelAt(guess.model, x),
  };
}

function modelAt(base: MotorModel, logs: readonly number[]): MotorModel {
  return {
    ...base,
    speedConstant: Math.exp(logs[0] ?? 0),
    resistance: Math.exp(logs[1] ?? 0),
    noLoadCurrent: Math.exp(logs[2] ?? 0),
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
  const drop = current * model.resistance * (1 + (model.resistanceRise ?? 0) * reading.angularSpeed);
  const voltageNoise = VOLTAGE_NOISE * voltage;
  const first: Residual = {
    residual: (voltage - back - drop) / voltageNoise,
    slopes: [-back / voltageNoise, drop / voltageNoise, 0],
  };
  if (reading.torque === undefined) return [first];
  const idle = noLoadCurrentAt(model, reading.angularSpeed);
  const working = model.speedConstant * reading.torque;
  const currentNoise = CURRENT_NOISE * current;
  return [
    first,
    {
      residual: (current - idle - working) / currentNoise,
      slopes: [working / currentNoise, 0, idle / currentNoise],
    },
  ];
}

/** Inverse of a symmetric positive 3 x 3 matrix by cofactors. */
function inverse3(m: readonly (readonly number[])[]): number[][] {
  const at = (r: number, c: number): number => m[r % 3]?.[c % 3] ?? 0;
  const cofactor = (r: number, c: number): number =>
    at(r + 1, c + 1) * at(r + 2, c + 2) - at(r + 1, c + 2) * at(r + 2, c + 1);
  const determinant = at(0, 0) * cofactor(0, 0) + at(0, 1) * cofactor(0, 1) + at(0, 2) * cofactor(0, 2);
  return [0, 1, 2].map((r) => [0, 1, 2].map((c) => cofactor(c, r) / determinant));
}
