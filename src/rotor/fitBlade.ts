import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { Matrix3, Vector3 } from '../numerics/vector3.ts';
import type { SectionTables } from './sections.ts';
import { solveRotor } from './solveRotor.ts';
import { LIFT_SPREAD, SPREADS, STAND_SPREAD } from './spreads.ts';
import type { Blade, MeasuredPoint } from './types.ts';

/** Below these coefficients a relative error means nothing; errors are then told against these. */
const LEAST_THRUST_COEFFICIENT = 0.01;
const LEAST_POWER_COEFFICIENT = 0.005;
/** The same propeller measured twice differs by 3 to 6 % (UIUC Propeller Database); `spreadsOf` holds it. */
const TWICE_MEASURED = 0.04;

/**
 * Matches a blade to one measured point: the pitch offset, drag scale and chord that give its thrust
 * and power, held towards the blade as it was by how far propellers of its kind usually are.
 * Use `fitBlade` for several points.
 *
 * @returns words when the point can't belong to this propeller
 */
export function anchorBlade(blade: Blade, sections: SectionTables, point: MeasuredPoint): Outcome<Blade> {
  return fitBlade(blade, sections, [point]);
}

/**
 * Least-squares pitch offset, drag scale and chord over measured points (Gauss and Newton, damped
 * after Marquardt 1963), each weighed by its spread, with the usual spread of propellers as prior: one point is
 * enough and none of many rules. Points known worse than a stand's, or that contradict each other, leave the band of
 * the blade wider (`anchorSpread`).
 *
 * @returns words when no propeller near this one gives the points
 * @throws RangeError for no points, or one without positive speed, thrust, and power
 */
export function fitBlade(
  blade: Blade,
  sections: SectionTables,
  points: readonly MeasuredPoint[],
): Outcome<Blade> {
  if (points.length === 0) throw new RangeError('points must hold at least one measured point; found none');
  for (const point of points) checkPoint(point);
  const costAt = (at: Parameters) => costOf(blade, sections, points, at);
  let best: Parameters = [0, 0, 0];
  let cost = costAt(best);
  if (cost === undefined) return noSolution('the rotor has no solution at a measured point');
  let damping = 1e-3;
  for (let n = 0; n < 40 && damping < 1e6; n++) {
    const step = marquardtStep(costAt, cost, best, damping);
    if (step === undefined) break;
    const next: Parameters = [
      clamp(best[0] + step[0], 0.35),
      clamp(best[1] + step[1], 1.5),
      clamp(best[2] + step[2], 0.7),
    ];
    const nextCost = costAt(next);
    if (nextCost === undefined || nextCost.sum >= cost.sum) {
      damping *= 5;
      continue;
    }
    const gain = cost.sum - nextCost.sum;
    best = next;
    cost = nextCost;
    damping /= 5;
    if (gain < 1e-9 * (1 + cost.sum)) break;
  }
  const off = cost.residuals.slice(PARAMETERS);
  const thrust = levelOf(points.map((point, i) => [off[2 * i] ?? 0, thrustSpreadOf(point)]));
  const power = levelOf(points.map((point, i) => [off[2 * i + 1] ?? 0, powerSpreadOf(point)]));
  const typical = Math.sqrt((thrust.error ** 2 + power.error ** 2) / 2);
  if (typical > POINT_REFUSED) {
    return noSolution(
      `no pitch, drag and chord near this propeller's give the measured thrust and power together: still ${(100 * typical).toFixed(0)} % off; check diameter, blades, rpm, and that the power is at the shaft`,
    );
  }
  return solved({
    ...moved(blade, best),
    anchorReynolds: spanOf(cost.reynolds),
    anchorTipMach: spanOf(cost.tipMach),
    ...(thrust.beyondStand > 0 || power.beyondStand > 0
      ? { anchorSpread: { thrust: thrust.beyondStand, power: power.beyondStand } }
      : {}),
  });
}

const thrustSpreadOf = ({ thrustSpread = STAND_SPREAD }: MeasuredPoint) => thrustSpread;
const powerSpreadOf = ({ powerSpread = STAND_SPREAD }: MeasuredPoint) => powerSpread;
const spanOf = (values: readonly number[]): readonly [number, number] => [
  Math.min(...values),
  Math.max(...values),
];

/**
 * How far the points are off [relative, root mean square], and what they leave open beyond a usual stand: their spread, by
 * weight (readings of one stand share their errors, so many don't average them away), and what they are off
 * beyond their own spreads and beyond what the band of a matched blade holds anyhow.
 */
function levelOf(points: readonly (readonly [residual: number, spread: number])[]) {
  const mean = (of: (residual: number, spread: number) => number) =>
    points.reduce((sum, [residual, spread]) => sum + of(residual, spread), 0) / points.length;
  const spread = mean((_, s) => s ** -2) ** -0.5;
  const offSquare = spread ** 2 * mean((r) => r * r);
  const torn = Math.max(0, offSquare - Math.max(spread, TWICE_MEASURED) ** 2);
  return {
    error: Math.sqrt(mean((r, s) => (r * s) ** 2)),
    beyondStand: Math.sqrt(Math.max(0, spread ** 2 - STAND_SPREAD ** 2) + torn),
  };
}

/** Pitch [rad], ln of drag, ln of chord. */
type Parameters = [pitch: number, logDrag: number, logChord: number];
const PARAMETERS = 3;
/** Further off than this a reading is of something else: common practice, no source. */
const POINT_REFUSED = 0.25;

interface Cost {
  readonly sum: number;
  readonly residuals: readonly number[];
  /** At 0.75 R, of each point. */
  readonly reynolds: readonly number[];
  readonly tipMach: readonly number[];
}

const clamp = (value: number, limit: number) => Math.min(limit, Math.max(-limit, value));

function moved(blade: Blade, [pitch, logDrag, logChord]: Parameters): Blade {
  return {
    ...blade,
    anchored: true,
    pitchOffset: blade.pitchOffset + pitch,
    dragScale: blade.dragScale * Math.exp(logDrag),
    chordRatio: blade.chordRatio.map((chord) => chord * Math.exp(logChord)),
  };
}

function costOf(
  blade: Blade,
  sections: SectionTables,
  points: readonly MeasuredPoint[],
  at: Parameters,
): Cost | undefined {
  const { pitch, drag } = SPREADS[blade.knownBy];
  const residuals = [at[0] / pitch, at[1] / drag, at[2] / LIFT_SPREAD];
  const trial = moved(blade, at);
  const reynolds: number[] = [];
  const tipMach: number[] = [];
  for (const point of points) {
    const { angularSpeed, axialSpeed = 0, air } = point;
    const state = solveRotor(trial, sections, { angularSpeed, axialSpeed, air });
    if (!state.ok) return undefined;
    reynolds.push(state.value.reynolds75);
    tipMach.push(state.value.tipMach);
    const n = angularSpeed / (2 * Math.PI);
    const thrustUnit = air.density * n ** 2 * blade.diameter ** 4;
    const thrust = point.thrust / thrustUnit;
    const power = point.power / (thrustUnit * n * blade.diameter);
    residuals.push(
      (state.value.thrustCoefficient - thrust) /
        (thrustSpreadOf(point) * Math.max(thrust, LEAST_THRUST_COEFFICIENT)),
      (state.value.powerCoefficient - power) /
        (powerSpreadOf(point) * Math.max(power, LEAST_POWER_COEFFICIENT)),
    );
  }
  return { sum: residuals.reduce((sum, r) => sum + r * r, 0), residuals, reynolds, tipMach };
}

/** Solves (J'J + damping diag) step = -J'r by Cramer's rule, J by forward differences. */
function marquardtStep(
  costAt: (at: Parameters) => Cost | undefined,
  here: Cost,
  at: Parameters,
  damping: number,
): Parameters | undefined {
  const h = 1e-4;
  const columns: number[][] = [];
  for (let k = 0; k < PARAMETERS; k++) {
    const beside: Parameters = [...at];
    beside[k] = (beside[k] as number) + h;
    const there = costAt(beside);
    if (there === undefined) return undefined;
    columns.push(here.residuals.map((r, i) => ((there.residuals[i] as number) - r) / h));
  }
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);
  const [p, d, c] = columns as [number[], number[], number[]];
  const grow = 1 + damping;
  const rows: Matrix3 = [
    [dot(p, p) * grow, dot(p, d), dot(p, c)],
    [dot(d, p), dot(d, d) * grow, dot(d, c)],
    [dot(c, p), dot(c, d), dot(c, c) * grow],
  ];
  const right: Vector3 = [-dot(p, here.residuals), -dot(d, here.residuals), -dot(c, here.residuals)];
  const whole = determinant3(rows);
  if (!(Math.abs(whole) > 0)) return undefined;
  const swapped = (k: number): number =>
    determinant3(rows.map((row, i) => row.map((v, j) => (j === k ? right[i] : v))) as unknown as Matrix3);
  return [swapped(0) / whole, swapped(1) / whole, swapped(2) / whole];
}

function determinant3([a, b, c]: Matrix3): number {
  return (
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    a[1] * (b[0] * c[2] - b[2] * c[0]) +
    a[2] * (b[0] * c[1] - b[1] * c[0])
  );
}

function checkPoint(point: MeasuredPoint): void {
  const positive = ['angularSpeed', 'thrust', 'power', 'thrustSpread', 'powerSpread'] as const;
  for (const key of positive) {
    const value = point[key];
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
      throw new RangeError(`${key} of a measured point must be above 0; found ${value}`);
    }
  }
}
