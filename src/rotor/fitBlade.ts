import type { Air } from '../air/standardAtmosphere.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { SectionTables } from './sections.ts';
import { solveRotor } from './solveRotor.ts';
import type { Blade, MeasuredPoint } from './types.ts';

/** Spread of the pitch a propeller flies at about its named or measured pitch, 1 sd [rad] (UIUC Propeller Database, our fit). */
const PITCH_SPREAD = (2.6 * Math.PI) / 180;
/** Spread of ln(profile drag) about the sections' own, 1 sd (UIUC Propeller Database, our fit). */
const LOG_DRAG_SPREAD = 0.35;
/** How near a thrust stand can be trusted, 1 sd, relative: the same propeller measured twice differs by 3 to 6 %. */
const STAND_SPREAD = 0.02;
/** Below these coefficients a relative error means nothing; errors are then told against these. */
const LEAST_THRUST_COEFFICIENT = 0.01;
const LEAST_POWER_COEFFICIENT = 0.005;

/**
 * Matches a blade to one measured point: the pitch offset and drag scale that give its thrust and
 * power, held towards none by how far propellers usually are. Use `fitBlade` for several points.
 *
 * @returns words when the point can't belong to this propeller
 */
export function anchorBlade(blade: Blade, sections: SectionTables, point: MeasuredPoint): Outcome<Blade> {
  return fitBlade(blade, sections, [point]);
}

/**
 * Least-squares pitch offset and drag scale over measured points (Gauss and Newton, damped after
 * Marquardt 1963), with the usual spread of propellers as prior: one point is enough and none of
 * many rules.
 *
 * @throws RangeError for no points, or one without positive speed, thrust, and power
 */
export function fitBlade(
  blade: Blade,
  sections: SectionTables,
  points: readonly MeasuredPoint[],
): Outcome<Blade> {
  if (points.length === 0) throw new RangeError('points must hold at least one measured point; found none');
  for (const point of points) checkPoint(point);
  const start = { pitch: 0, logDrag: 0 };
  let best = start;
  let cost = costOf(blade, sections, points, best);
  if (cost === undefined) return noSolution('the rotor has no solution at a measured point');
  let damping = 1e-3;
  for (let n = 0; n < 40; n++) {
    const step = marquardtStep(blade, sections, points, best, damping);
    if (step === undefined) break;
    const next = {
      pitch: clamp(best.pitch + step.pitch, 0.35),
      logDrag: clamp(best.logDrag + step.logDrag, 2),
    };
    const nextCost = costOf(blade, sections, points, next);
    if (nextCost !== undefined && nextCost.sum < cost.sum) {
      const gain = cost.sum - nextCost.sum;
      best = next;
      cost = nextCost;
      damping /= 5;
      if (gain < 1e-9 * (1 + cost.sum)) break;
    } else {
      damping *= 5;
      if (damping > 1e6) break;
    }
  }
  const fitted: Blade = moved(blade, best);
  const worst = Math.max(...cost.residuals.slice(2).map((r) => Math.abs(r) * STAND_SPREAD));
  if (points.length === 1 && worst > 0.25) {
    return noSolution(
      `no pitch and drag near this propeller's give that thrust and power together: still ${(100 * worst).toFixed(0)} % off; check diameter, blades, rpm and that the power is at the shaft`,
    );
  }
  return solved(fitted);
}

interface Parameters {
  /** [rad] */
  readonly pitch: number;
  readonly logDrag: number;
}

interface Cost {
  readonly sum: number;
  readonly residuals: readonly number[];
}

const clamp = (value: number, limit: number) => Math.min(limit, Math.max(-limit, value));

function moved(blade: Blade, by: Parameters): Blade {
  return {
    ...blade,
    anchored: true,
    pitchOffset: blade.pitchOffset + by.pitch,
    dragScale: blade.dragScale * Math.exp(by.logDrag),
  };
}

function costOf(
  blade: Blade,
  sections: SectionTables,
  points: readonly MeasuredPoint[],
  at: Parameters,
): Cost | undefined {
  const residuals = [at.pitch / PITCH_SPREAD, at.logDrag / LOG_DRAG_SPREAD];
  const trial = moved(blade, at);
  for (const point of points) {
    const { angularSpeed, axialSpeed = 0, air } = point;
    const state = solveRotor(trial, sections, { angularSpeed, axialSpeed, air });
    if (!state.ok) return undefined;
    const { thrustUnit, powerUnit } = coefficientUnits(blade, angularSpeed, air);
    const measuredThrust = point.thrust / thrustUnit;
    const measuredPower = point.power / powerUnit;
    residuals.push(
      (state.value.thrustCoefficient - measuredThrust) /
        (STAND_SPREAD * Math.max(measuredThrust, LEAST_THRUST_COEFFICIENT)),
      (state.value.powerCoefficient - measuredPower) /
        (STAND_SPREAD * Math.max(measuredPower, LEAST_POWER_COEFFICIENT)),
    );
  }
  return { sum: residuals.reduce((sum, r) => sum + r * r, 0), residuals };
}

function coefficientUnits(blade: Blade, angularSpeed: number, air: Air) {
  const n = angularSpeed / (2 * Math.PI);
  const thrustUnit = air.density * n ** 2 * blade.diameter ** 4;
  return { thrustUnit, powerUnit: thrustUnit * n * blade.diameter };
}

function marquardtStep(
  blade: Blade,
  sections: SectionTables,
  points: readonly MeasuredPoint[],
  at: Parameters,
  damping: number,
): Parameters | undefined {
  const h = 1e-4;
  const here = costOf(blade, sections, points, at);
  const byPitch = costOf(blade, sections, points, { ...at, pitch: at.pitch + h });
  const byDrag = costOf(blade, sections, points, { ...at, logDrag: at.logDrag + h });
  if (here === undefined || byPitch === undefined || byDrag === undefined) return undefined;
  let pp = 0;
  let pd = 0;
  let dd = 0;
  let gp = 0;
  let gd = 0;
  here.residuals.forEach((r, i) => {
    const jp = ((byPitch.residuals[i] ?? 0) - r) / h;
    const jd = ((byDrag.residuals[i] ?? 0) - r) / h;
    pp += jp * jp;
    pd += jp * jd;
    dd += jd * jd;
    gp += jp * r;
    gd += jd * r;
  });
  pp *= 1 + damping;
  dd *= 1 + damping;
  const determinant = pp * dd - pd * pd;
  if (!(Math.abs(determinant) > 0)) return undefined;
  return { pitch: (pd * gd - dd * gp) / determinant, logDrag: (pd * gp - pp * gd) / determinant };
}

function checkPoint(point: MeasuredPoint): void {
  const positive = ['angularSpeed', 'thrust', 'power'] as const;
  for (const key of positive) {
    if (!(point[key] > 0 && Number.isFinite(point[key]))) {
      throw new RangeError(`${key} of a measured point must be above 0; found ${point[key]}`);
    }
  }
}
