import type { Air } from '../air/standardAtmosphere.ts';
import { cubicWeights } from '../numerics/cubicWeights.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { elementWork, setCondition } from './elementWork.ts';
import type { SectionTables } from './sections.ts';
import { solveAxial } from './solveRotor.ts';
import type { Blade, MapDetail, RotorMap, RotorReading } from './types.ts';

const SIZES: Record<MapDetail, { rows: number; columns: number; stations: number }> = {
  coarse: { rows: 9, columns: 28, stations: 14 },
  full: { rows: 20, columns: 64, stations: 20 },
};
/** Tip speeds a map covers [m/s]: an idling whoop to tip Mach 0.85. */
const TIP_FIRST = 6;
export const TIP_LAST_MACH = 0.85;
/** The flow axis: fine where propellers work (V below 0.3 of the tip speed), coarse when windmilling. */
const FLOW_SCALE = 0.4;
const FLOW_LAST = 2; // V over tip speed
/** Tip Mach number below which compressibility moves nothing by more than 1 %. */
const FEELS_MACH = 0.15;
/** Descent a map covers, of hover induced velocity: short of the vortex ring at -0.4. */
const DESCENT = -0.3;

/**
 * Solves a blade over its whole range once, so that a thousand later answers cost a microsecond.
 * Against `solveRotor`, in shares of the static value at that rpm: `full` 0.1 % in the middle of hover and 1.5 % at worst, 4 % at worst
 * up to V = 0.25 of the tip speed; `coarse` 4 % for 95 % of hover, 6 % up to there (tested).
 *
 * @returns words when the blade has no solution somewhere on the grid
 */
export function buildRotorMap(
  blade: Blade,
  sections: SectionTables,
  air: Air,
  detail: MapDetail,
): Outcome<RotorMap> {
  const { rows, columns, stations } = SIZES[detail];
  const work = elementWork(blade, sections, stations);
  const R = blade.diameter / 2;
  const rootTipFirst = Math.sqrt(TIP_FIRST);
  const rootTipStep = (Math.sqrt(TIP_LAST_MACH * air.speedOfSound) - rootTipFirst) / (rows - 1);
  const slow = { ...air, speedOfSound: Number.POSITIVE_INFINITY };
  const flowFirst = Math.asinh(slowestDescent(blade, sections, air) / FLOW_SCALE);
  const flowStep = (Math.asinh(FLOW_LAST / FLOW_SCALE) - flowFirst) / (columns - 1);
  const thrust = new Float64Array(rows * columns);
  const torque = new Float64Array(rows * columns);
  const thrustByMach = new Float64Array(rows * columns);
  const torqueByMach = new Float64Array(rows * columns);
  for (let row = 0; row < rows; row++) {
    const tip = (rootTipFirst + row * rootTipStep) ** 2;
    const omega = tip / R;
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      const V = FLOW_SCALE * Math.sinh(flowFirst + column * flowStep) * tip;
      const unit = air.density * R * R * (V * V + tip * tip);
      setCondition(work, omega, V, air);
      const trouble = solveAxial(work, omega, V, air.density);
      if (trouble !== undefined) return noSolution(trouble);
      const kT = (work.last[0] as number) / unit;
      const kQ = (work.last[1] as number) / (unit * R);
      thrust[at] = kT;
      torque[at] = kQ;
      if (tip < FEELS_MACH * air.speedOfSound) continue;
      setCondition(work, omega, V, slow);
      if (solveAxial(work, omega, V, air.density) !== undefined) continue;
      thrustByMach[at] = kT - (work.last[0] as number) / unit;
      torqueByMach[at] = kQ - (work.last[1] as number) / (unit * R);
    }
  }
  return solved({
    blade,
    air,
    detail,
    rootTipFirst,
    rootTipStep,
    rows,
    flowFirst,
    flowStep,
    columns,
    thrust,
    torque,
    thrustByMach,
    torqueByMach,
  });
}

/** The slowest V over tip speed every row of the map can be solved at: a slow descent, or 0. */
function slowestDescent(blade: Blade, sections: SectionTables, air: Air): number {
  const work = elementWork(blade, sections, SIZES.coarse.stations);
  let slowest = -1;
  for (const tip of [TIP_FIRST, 30, 100, TIP_LAST_MACH * air.speedOfSound]) {
    const omega = tip / work.R;
    setCondition(work, omega, 0, air);
    if (solveAxial(work, omega, 0, air.density) !== undefined) return 0;
    const T = work.last[0] as number;
    if (T <= 0) return 0;
    const induced = Math.sqrt(T / (2 * air.density * Math.PI * work.R ** 2));
    slowest = Math.max(slowest, (DESCENT * induced) / tip);
  }
  return slowest;
}

/** An empty reading to pass as `out`. */
export const emptyReading = (): RotorReading => ({
  thrust: 0,
  torque: 0,
  thrustByAngularSpeed: 0,
  torqueByAngularSpeed: 0,
  thrustByAxialSpeed: 0,
  torqueByAxialSpeed: 0,
  inside: true,
  weights: new Float64Array(16),
  coefficients: new Float64Array(6),
});

/**
 * Thrust, torque and their slopes from a map. Allocates nothing when `out` is given.
 * Outside the map the coefficients of its edge are kept and `inside` is false.
 *
 * @param angularSpeed [rad/s], >= 0
 * @param axialSpeed [m/s] along the thrust
 * @param air of the moment. Reynolds and Mach number follow rpm but change apart with height: the row
 * is that of the same Reynolds number, and the share compressibility has in it is exchanged for that
 * of the same Mach number.
 */
export function readRotorMap(
  map: RotorMap,
  angularSpeed: number,
  axialSpeed: number,
  air: Air,
  out: RotorReading = emptyReading(),
): RotorReading {
  const R = map.blade.diameter / 2;
  const tip = Math.max(angularSpeed * R, 1e-9);
  const t = axialSpeed / tip;
  const root = Math.sqrt(t * t + FLOW_SCALE * FLOW_SCALE);
  const flow = (Math.log((t + root) / FLOW_SCALE) - map.flowFirst) / map.flowStep;
  const flowHeld = flow < -1e-9 || flow > map.columns - 1 + 1e-9;
  const sameAir = air === map.air;
  const reynoldsRatio = sameAir
    ? 1
    : (air.density * map.air.dynamicViscosity) / (map.air.density * air.dynamicViscosity);
  const column = cubicWeights(Math.min(Math.max(flow, 0), map.columns - 1), map.columns, out.weights, 0);

  const at = out.coefficients;
  at.fill(0);
  addRow(map, tip, reynoldsRatio, column, map.thrust, map.torque, 1, out);
  if (!sameAir) {
    const machRatio = map.air.speedOfSound / air.speedOfSound;
    addRow(map, tip, machRatio, column, map.thrustByMach, map.torqueByMach, 1, out);
    addRow(map, tip, reynoldsRatio, column, map.thrustByMach, map.torqueByMach, -1, out);
  }
  const S = axialSpeed * axialSpeed + tip * tip;
  const unit = air.density * R * R;
  const byFlow = flowHeld ? 0 : 1 / (root * map.flowStep);
  const kT = at[0] as number;
  const kTbyFlow = (at[1] as number) * byFlow;
  const kQ = at[3] as number;
  const kQbyFlow = (at[4] as number) * byFlow;
  out.thrust = unit * S * kT;
  out.thrustByAxialSpeed = unit * (2 * axialSpeed * kT + (S * kTbyFlow) / tip);
  out.thrustByAngularSpeed = unit * R * (2 * tip * kT + S * ((at[2] as number) - (kTbyFlow * t) / tip));
  out.torque = unit * R * S * kQ;
  out.torqueByAxialSpeed = unit * R * (2 * axialSpeed * kQ + (S * kQbyFlow) / tip);
  out.torqueByAngularSpeed = unit * R * R * (2 * tip * kQ + S * ((at[5] as number) - (kQbyFlow * t) / tip));
  out.inside = !flowHeld && tip <= TIP_LAST_MACH * air.speedOfSound;
  return out;
}

/**
 * Adds the table at a tip speed to `coefficients`: thrust value, slope a column, slope a m/s of tip
 * speed, then the same of torque.
 */
function addRow(
  map: RotorMap,
  tip: number,
  ratio: number,
  column: number,
  thrust: Float64Array,
  torque: Float64Array,
  sign: number,
  out: RotorReading,
): void {
  const { weights, coefficients } = out;
  const rootTip = Math.sqrt(tip * ratio);
  const position = (rootTip - map.rootTipFirst) / map.rootTipStep;
  const held = Math.min(Math.max(position, 0), map.rows - 1);
  const first = cubicWeights(held, map.rows, weights, 8) * map.columns + column;
  const bySpeed = held === position ? (sign * ratio) / (2 * rootTip * map.rootTipStep) : 0;
  let at = first;
  let T = 0;
  let Tf = 0;
  let Ts = 0;
  let Q = 0;
  let Qf = 0;
  let Qs = 0;
  for (let k = 8; k < 12; k++) {
    const value = weights[k] as number;
    const slope = weights[k + 4] as number;
    const t = across(thrust, at, weights, 0);
    T += value * t;
    Ts += slope * t;
    Tf += value * across(thrust, at, weights, 4);
    const q = across(torque, at, weights, 0);
    Q += value * q;
    Qs += slope * q;
    Qf += value * across(torque, at, weights, 4);
    at += map.columns;
  }
  add(coefficients, 0, sign * T);
  add(coefficients, 1, sign * Tf);
  add(coefficients, 2, bySpeed * Ts);
  add(coefficients, 3, sign * Q);
  add(coefficients, 4, sign * Qf);
  add(coefficients, 5, bySpeed * Qs);
}

/** Weighted sum of the four knots from `at` along a row. */
function across(table: Float64Array, at: number, weights: Float64Array, k: number): number {
  return (
    (weights[k] as number) * (table[at] as number) +
    (weights[k + 1] as number) * (table[at + 1] as number) +
    (weights[k + 2] as number) * (table[at + 2] as number) +
    (weights[k + 3] as number) * (table[at + 3] as number)
  );
}

function add(to: Float64Array, at: number, value: number): void {
  to[at] = (to[at] as number) + value;
}
