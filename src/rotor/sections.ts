import { sectionPolars } from './sections.generated.ts';

/**
 * Lift and drag of the blade section over every angle, by Reynolds number, laid out for the kernel.
 * `values` holds four numbers a (row, angle): c_l, c_d, lift gap, drag gap. The gaps are what the
 * stall delay closes a share of: potential-flow lift less section lift, and drag above its minimum.
 */
export interface SectionTables {
  readonly values: Float64Array;
  /** Angles a row, from -pi to pi inclusive, evenly spaced. */
  readonly angleCount: number;
  /** Reynolds number of row 0. */
  readonly reynoldsFirst: number;
  readonly rowsPerOctave: number;
  readonly rows: number;
  /** Zero-lift angle of each row [rad]. */
  readonly zeroLift: Float64Array;
}

export const COLUMNS = 4;
const ANGLE_STEP = 0.5; // [deg]
const ANGLE_COUNT = 721;
/** Two-dimensional plate broadside on, with the finite aspect ratio of a blade: Viterna and Janetzke 1982, eq. (8). */
const BROADSIDE_DRAG = 1.25;
/** Lift of the section flown backwards, as a share of forwards: common practice, no source. */
const BACKWARD_LIFT = 0.7;
/**
 * Base drag of a trailing edge some 3 % of the chord thick, as small moulded blades have and XFOIL's sharp
 * sections don't: 0.135 (h/c)^(4/3) / c_d^(1/3) = 0.003 to 0.006 (Hoerner, Fluid-Dynamic Drag, 1965, ch. 3, from memory).
 * Over the UIUC Propeller Database it takes the mean error of the figure of merit from 12.3 to 10.9 %.
 */
const BLUNT_EDGE_DRAG = 0.006;
/** Lift slope of thin-aerofoil theory. */
const POTENTIAL_SLOPE = 2 * Math.PI;
const DEGREE = Math.PI / 180;

interface Polars {
  readonly angleFirst: number;
  readonly angleStep: number;
  readonly reynoldsFirst: number;
  readonly rowsPerOctave: number;
  readonly lift: readonly (readonly number[])[];
  readonly drag: readonly (readonly number[])[];
}

/**
 * The section tables of the shipped polars, extended past stall by Viterna and Janetzke (1982,
 * NASA TM-82944) and reflected for backward flow. About a millisecond; make once and keep.
 */
export function sectionTables(polars: Polars = sectionPolars): SectionTables {
  const rows = polars.lift.length;
  const values = new Float64Array(rows * ANGLE_COUNT * COLUMNS);
  const zeroLift = new Float64Array(rows);
  for (let row = 0; row < rows; row++) {
    const read = extendedPolar(polars, row);
    const alphaZero = zeroLiftAngle(polars, row);
    zeroLift[row] = alphaZero;
    const dragLeast = Math.min(...(polars.drag[row] ?? [])) + BLUNT_EDGE_DRAG;
    for (let k = 0; k < ANGLE_COUNT; k++) {
      const degrees = -180 + k * ANGLE_STEP;
      const { lift, drag } = read(degrees);
      const alpha = degrees * DEGREE;
      const fade = stallDelayFade(degrees);
      const at = (row * ANGLE_COUNT + k) * COLUMNS;
      values[at] = lift;
      values[at + 1] = drag;
      values[at + 2] = fade * Math.max(0, POTENTIAL_SLOPE * Math.sin(alpha - alphaZero) - lift);
      values[at + 3] = fade * Math.max(0, drag - dragLeast);
    }
  }
  const { reynoldsFirst, rowsPerOctave } = polars;
  return { values, angleCount: ANGLE_COUNT, reynoldsFirst, rowsPerOctave, rows, zeroLift };
}

/** Rotation delays stall of a lifting section; it does nothing below zero lift and past deep stall. */
function stallDelayFade(degrees: number): number {
  if (degrees <= 0 || degrees >= 50) return 0;
  const rise = Math.min(1, degrees / 4);
  const fall = Math.min(1, (50 - degrees) / 20);
  return rise * fall;
}

function zeroLiftAngle(polars: Polars, row: number): number {
  const lift = polars.lift[row] ?? [];
  for (let k = lift.length - 1; k > 0; k--) {
    const above = lift[k] ?? 0;
    const below = lift[k - 1] ?? 0;
    if (above > 0 && below <= 0) {
      return (polars.angleFirst + (k - 1 + below / (below - above)) * polars.angleStep) * DEGREE;
    }
  }
  throw new RangeError(`polars row ${row} must cross zero lift`);
}

type Read = (degrees: number) => { lift: number; drag: number };

function extendedPolar(polars: Polars, row: number): Read {
  const lifts = polars.lift[row] ?? [];
  const drags = polars.drag[row] ?? [];
  const first = polars.angleFirst;
  const last = first + (lifts.length - 1) * polars.angleStep;
  const attached: Read = (degrees) => {
    const position = (degrees - first) / polars.angleStep;
    const k = Math.min(Math.floor(position), lifts.length - 2);
    const share = position - k;
    const mix = (of: readonly number[]) => (of[k] ?? 0) * (1 - share) + (of[k + 1] ?? 0) * share;
    return { lift: mix(lifts), drag: mix(drags) + BLUNT_EDGE_DRAG };
  };
  const above = viterna(last, attached(last));
  const atFirst = attached(first);
  const below = viterna(-first, { lift: -atFirst.lift, drag: atFirst.drag });
  const read: Read = (degrees) => {
    if (degrees > 90) {
      const mirrored = read(180 - degrees);
      return { lift: -BACKWARD_LIFT * mirrored.lift, drag: mirrored.drag };
    }
    if (degrees < -90) {
      const mirrored = read(-180 - degrees);
      return { lift: -BACKWARD_LIFT * mirrored.lift, drag: mirrored.drag };
    }
    if (degrees > last) return above(degrees);
    if (degrees < first) {
      const mirrored = below(-degrees);
      return { lift: -mirrored.lift, drag: mirrored.drag };
    }
    return attached(degrees);
  };
  return read;
}

/** Viterna and Janetzke 1982, eqs (1) to (6): a flat plate that meets the polar at `start` [deg]. */
function viterna(start: number, at: { lift: number; drag: number }): Read {
  const s = Math.sin(start * DEGREE);
  const c = Math.cos(start * DEGREE);
  const a2 = ((at.lift - BROADSIDE_DRAG * s * c) * s) / (c * c);
  const b2 = (at.drag - BROADSIDE_DRAG * s * s) / c;
  return (degrees) => {
    const sine = Math.sin(degrees * DEGREE);
    const cosine = Math.cos(degrees * DEGREE);
    return {
      lift: BROADSIDE_DRAG * sine * cosine + (a2 * cosine * cosine) / sine,
      drag: Math.max(0, BROADSIDE_DRAG * sine * sine + b2 * cosine),
    };
  };
}
