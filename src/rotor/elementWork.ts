import type { Air } from '../air/standardAtmosphere.ts';
import { interpolateLinear } from '../numerics/interpolate.ts';
import { lowReynoldsDrag, prandtlGlauert, stallDelayDrag, stallDelayLift } from './corrections.ts';
import type { SectionTables } from './sections.ts';
import type { Blade } from './types.ts';

/**
 * Everything a solve needs, allocated once: a solve allocates nothing. Paper symbols inside, as in the
 * kernel (`elements.ts`).
 */
export interface ElementWork {
  /** Blade elements. */
  readonly count: number;
  readonly tables: SectionTables;
  /** Tip radius [m], blades, hub radius [m], factor on profile drag. */
  readonly R: number;
  readonly B: number;
  readonly hub: number;
  readonly dragScale: number;
  /** Fixed by the blade: radius [m], width [m], chord [m], angle [rad], solidity / 4, Prandtl's B (R - r) / 2 r and its like at the root. */
  readonly r: Float64Array;
  readonly dr: Float64Array;
  readonly c: Float64Array;
  readonly theta: Float64Array;
  readonly sigma4: Float64Array;
  readonly tipGap: Float64Array;
  readonly rootGap: Float64Array;
  /**
   * Set for each condition: row of the section tables and share of the next, factor on profile drag, Prandtl-Glauert
   * factor less 1, angle without lift [rad], delay of stall by turning, Reynolds and Mach number.
   */
  readonly row: Int32Array;
  readonly rowShare: Float64Array;
  readonly dragMore: Float64Array;
  readonly compress: Float64Array;
  readonly alpha0: Float64Array;
  readonly delayLift: Float64Array;
  readonly delayDrag: Float64Array;
  readonly reynolds: Float64Array;
  readonly mach: Float64Array;
  /**
   * Answers: inflow angle [rad], section coefficients, Prandtl's loss, speed of the air [m/s], thrust [N/m] and torque
   * [N m/m] of all blades over the radius.
   */
  readonly phi: Float64Array;
  readonly cl: Float64Array;
  readonly cd: Float64Array;
  readonly F: Float64Array;
  readonly W: Float64Array;
  readonly dT: Float64Array;
  readonly dQ: Float64Array;
  /** [c_l, F, sin phi, cos phi] of the last residual; [T, Q] once a solve is done. */
  readonly last: Float64Array;
}

/** Stations a solve uses unless told: within 0.3 % of 200 (bench and test). */
export const STATIONS = 20;

/** Lays a blade out on stations that crowd to the tip, where the load falls off fastest. */
export function elementWork(blade: Blade, tables: SectionTables, count = STATIONS): ElementWork {
  const R = blade.diameter / 2;
  const root = Math.min(blade.radiusRatio[0] as number, 0.2);
  const floats = () => new Float64Array(count);
  const work: ElementWork = {
    count,
    tables,
    R,
    B: blade.bladeCount,
    hub: root * R,
    dragScale: blade.dragScale,
    r: floats(),
    dr: floats(),
    c: floats(),
    theta: floats(),
    sigma4: floats(),
    tipGap: floats(),
    rootGap: floats(),
    row: new Int32Array(count),
    rowShare: floats(),
    dragMore: floats(),
    compress: floats(),
    alpha0: floats(),
    delayLift: floats(),
    delayDrag: floats(),
    reynolds: floats(),
    mach: floats(),
    phi: floats(),
    cl: floats(),
    cd: floats(),
    F: floats(),
    W: floats(),
    dT: floats(),
    dQ: floats(),
    last: new Float64Array(4),
  };
  for (let i = 0; i < count; i++) {
    // r = root + (1 - root)(1 - (1 - s)^2): the midpoint rule in s tames the square-root fall at the tip.
    const s = (i + 0.5) / count;
    const x = root + (1 - root) * (1 - (1 - s) ** 2);
    const r = x * R;
    const c = interpolateLinear(x, blade.radiusRatio, blade.chordRatio) * R;
    work.r[i] = r;
    work.dr[i] = ((1 - root) * 2 * (1 - s) * R) / count;
    work.c[i] = c;
    work.theta[i] = interpolateLinear(x, blade.radiusRatio, blade.twist) + blade.pitchOffset;
    work.tipGap[i] = (work.B * (R - r)) / (2 * r);
    work.rootGap[i] = (work.B * (r - work.hub)) / (2 * work.hub);
    work.sigma4[i] = (blade.bladeCount * c) / (8 * Math.PI * r);
  }
  return work;
}

/**
 * Everything of a condition that the inflow angle doesn't change. The Reynolds and Mach numbers
 * take the flow without induction, which is within 3 % of the whole wherever lift is made.
 */
export function setCondition(w: ElementWork, omega: number, V: number, air: Air): void {
  const { tables } = w;
  const tip = omega * w.R;
  const tipRatio = tip / Math.sqrt(tip * tip + V * V);
  for (let i = 0; i < w.count; i++) {
    const r = w.r[i] as number;
    const c = w.c[i] as number;
    const W0 = Math.sqrt((omega * r) ** 2 + V * V);
    const reynolds = (air.density * W0 * c) / air.dynamicViscosity;
    const mach = W0 / air.speedOfSound;
    const position = Math.log2(Math.max(reynolds, 1) / tables.reynoldsFirst) * tables.rowsPerOctave;
    const held = Math.min(Math.max(position, 0), tables.rows - 1.000001);
    const row = Math.floor(held);
    const share = held - row;
    w.row[i] = row;
    w.rowShare[i] = share;
    w.alpha0[i] =
      (tables.zeroLift[row] as number) * (1 - share) + (tables.zeroLift[row + 1] as number) * share;
    w.dragMore[i] = w.dragScale * lowReynoldsDrag(reynolds, tables.reynoldsFirst);
    w.compress[i] = prandtlGlauert(mach) - 1;
    w.delayLift[i] = stallDelayLift(c / r, r / w.R, tipRatio);
    w.delayDrag[i] = stallDelayDrag(c / r, r / w.R, tipRatio);
    w.reynolds[i] = reynolds;
    w.mach[i] = mach;
  }
}
