import type { Air } from '../air/standardAtmosphere.ts';
import { cubicWeights, weighted } from '../numerics/cubicWeights.ts';
import { type Outcome, solved } from '../numerics/outcome.ts';
import { elementWork } from './elementWork.ts';
import { emptyReading, readRotorMap } from './rotorMap.ts';
import type { SectionTables } from './sections.ts';
import { axialFlow, edgewiseOf, evenAzimuths } from './solveEdgewise.ts';
import type { EdgewiseMap, EdgewiseReading, RotorMap } from './types.ts';

const ROWS = 5;
const COLUMNS = 16;
const LAYERS = 6;
const STATIONS = 14;
const AZIMUTHS = 16;
/** Of the induced speed, over tip speed. */
const CLOSE = 1e-4;
/** Edgewise and axial speed over tip speed that the map covers. */
const RATIO_LAST = 0.5;
const FLOW_LAST = 0.8;
const FLOW_SCALE = 0.4;
const TIP_FIRST = 12; // [m/s]
const TIP_LAST_MACH = 0.75; // the advancing tip is faster still

/**
 * Adds the edgewise axis to a rotor map: what flight along the disc changes, on a coarse grid, since it
 * is smooth. Axial speeds from 0 (no descent) to 0.8 of the tip speed, edgewise to half of it.
 */
export function buildEdgewiseMap(axial: RotorMap, sections: SectionTables): Outcome<EdgewiseMap> {
  const { blade, air } = axial;
  const work = elementWork(blade, sections, STATIONS);
  const { R } = work;
  const rootTipFirst = Math.sqrt(TIP_FIRST);
  const rootTipStep = (Math.sqrt(TIP_LAST_MACH * air.speedOfSound) - rootTipFirst) / (ROWS - 1);
  const flowStep = Math.asinh(FLOW_LAST / FLOW_SCALE) / (COLUMNS - 1);
  const ratioStep = RATIO_LAST / (LAYERS - 1);
  const azimuths = evenAzimuths(AZIMUTHS);
  const tables = Array.from({ length: 6 }, () => new Float64Array(LAYERS * ROWS * COLUMNS));
  for (let row = 0; row < ROWS; row++) {
    const tip = (rootTipFirst + row * rootTipStep) ** 2;
    const angularSpeed = tip / R;
    const unit = air.density * R * R * tip * tip;
    for (let column = 0; column < COLUMNS; column++) {
      const axialSpeed = FLOW_SCALE * Math.sinh(column * flowStep) * tip;
      const still = axialFlow(work, { angularSpeed, axialSpeed, air }, true);
      if (!still.ok) return still;
      let near = { inducedSpeed: still.value.inducedSpeed, tolerance: CLOSE * tip };
      for (let layer = 1; layer < LAYERS; layer++) {
        const state = edgewiseOf(work, still.value, layer * ratioStep * tip, azimuths, near);
        if (!state.ok) return state;
        const { value } = state;
        near = { ...near, inducedSpeed: value.inducedSpeed };
        const loads = [
          value.thrust - still.value.thrust,
          (value.torque - still.value.torque) / R,
          value.inPlaneForce,
          value.sideForce,
          value.momentAdvancingUp / R,
          value.momentAftUp / R,
        ];
        const at = (layer * ROWS + row) * COLUMNS + column;
        tables.forEach((table, k) => {
          table[at] = (loads[k] as number) / unit;
        });
      }
    }
  }
  return solved({
    axial,
    ratioStep,
    layers: LAYERS,
    rootTipFirst,
    rootTipStep,
    rows: ROWS,
    flowStep,
    columns: COLUMNS,
    tables,
  });
}

/** An empty reading to pass as `out`. */
export const emptyEdgewiseReading = (): EdgewiseReading => ({
  thrust: 0,
  torque: 0,
  inPlaneForce: 0,
  sideForce: 0,
  momentAdvancingUp: 0,
  momentAftUp: 0,
  inside: true,
  axial: emptyReading(),
  weights: new Float64Array(24),
});

/**
 * Loads of a rotor in oblique flow from a map; allocates nothing when `out` is given. Held at the
 * edge outside, where `inside` is false.
 *
 * @param angularSpeed [rad/s], >= 0
 * @param axialSpeed through the disc [m/s]
 * @param edgewiseSpeed along the disc [m/s], >= 0
 */
export function readEdgewiseMap(
  map: EdgewiseMap,
  angularSpeed: number,
  axialSpeed: number,
  edgewiseSpeed: number,
  air: Air,
  out: EdgewiseReading = emptyEdgewiseReading(),
): EdgewiseReading {
  const { axial, weights } = out;
  readRotorMap(map.axial, angularSpeed, axialSpeed, air, axial);
  const R = map.axial.blade.diameter / 2;
  const tip = Math.max(angularSpeed * R, 1e-9);
  const flow = Math.asinh(axialSpeed / (FLOW_SCALE * tip)) / map.flowStep;
  const layer = edgewiseSpeed / (tip * map.ratioStep);
  const row = (Math.sqrt(tip) - map.rootTipFirst) / map.rootTipStep;
  const column = cubicWeights(held(flow, map.columns), map.columns, weights, 0);
  // Into upwash, a column's width at most, straight on.
  if (flow < 0) {
    const beyond = Math.max(flow, -1);
    for (let k = 0; k < 4; k++) {
      weights[k] = (weights[k] as number) + beyond * (weights[4 + k] as number);
    }
  }
  const firstRow = cubicWeights(held(row, map.rows), map.rows, weights, 8);
  const firstLayer = cubicWeights(held(layer, map.layers), map.layers, weights, 16);
  const unit = air.density * R * R * tip * tip;
  // Flow along the disc changes thrust and torque alike from wherever it comes, and at the first layer there is none: they begin flat.
  // Continued straight, 3 m/s along a 5 inch disc gave twice the lift that it does.
  const straight = weights[17] as number;
  if (layer < 1) weights[17] = straight + 2 * mirroredShare(layer);
  out.thrust = axial.thrust + unit * at(map, 0, firstLayer, firstRow, column, weights);
  out.torque = axial.torque + unit * R * at(map, 1, firstLayer, firstRow, column, weights);
  weights[17] = straight;
  out.inPlaneForce = unit * at(map, 2, firstLayer, firstRow, column, weights);
  out.sideForce = unit * at(map, 3, firstLayer, firstRow, column, weights);
  out.momentAdvancingUp = unit * R * at(map, 4, firstLayer, firstRow, column, weights);
  out.momentAftUp = unit * R * at(map, 5, firstLayer, firstRow, column, weights);
  out.inside = axial.inside && flow >= -1 && layer <= map.layers - 1 && flow <= map.columns - 1;
  return out;
}

/** Weight that the cubic has for the knot before the first, `share` of the way from there to the second. */
const mirroredShare = (share: number): number => share * (share * (1 - 0.5 * share) - 0.5);

const held = (position: number, count: number) => Math.min(Math.max(position, 0), count - 1);

function at(
  map: EdgewiseMap,
  table: number,
  firstLayer: number,
  firstRow: number,
  column: number,
  weights: Float64Array,
): number {
  const values = map.tables[table] as Float64Array;
  let sum = 0;
  for (let k = 0; k < 4; k++) {
    const first = ((firstLayer + k) * map.rows + firstRow) * map.columns + column;
    sum += (weights[16 + k] as number) * weighted(values, first, map.columns, weights, 0, 8);
  }
  return sum;
}
