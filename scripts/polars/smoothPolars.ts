import type { PolarPoint } from './runXfoil.ts';

export interface SmoothPolars {
  /** [deg] */
  readonly angleFirst: number;
  /** [deg] */
  readonly angleStep: number;
  /** One row a Reynolds number, one value an angle. */
  readonly lift: number[][];
  readonly drag: number[][];
}

const ANGLE_FIRST = -8; // [deg]
const ANGLE_LAST = 16; // [deg]
const ANGLE_STEP = 0.5; // [deg]
/** Kernel widths, one standard deviation: wide enough to iron out laminar-bubble jumps. */
const ANGLE_WIDTH = 1.0; // [deg]
const LOG_REYNOLDS_WIDTH = 0.22;

/**
 * Local plane-plus-curvature regression over (angle, ln Re) with a Gaussian kernel: XFOIL's
 * scatter and bursting bubbles go, the stall and the drag bucket stay.
 */
export function smoothPolars(
  raw: readonly (readonly PolarPoint[])[],
  reynolds: readonly number[],
): SmoothPolars {
  const count = Math.round((ANGLE_LAST - ANGLE_FIRST) / ANGLE_STEP) + 1;
  const lift: number[][] = [];
  const drag: number[][] = [];
  for (const target of reynolds) {
    const liftRow: number[] = [];
    const dragRow: number[] = [];
    for (let i = 0; i < count; i++) {
      const angle = ANGLE_FIRST + i * ANGLE_STEP;
      const [cl, cd] = localFit(raw, reynolds, angle, Math.log(target));
      liftRow.push(cl);
      dragRow.push(Math.exp(cd));
    }
    lift.push(liftRow);
    drag.push(dragRow);
  }
  return { angleFirst: ANGLE_FIRST, angleStep: ANGLE_STEP, lift, drag };
}

function localFit(
  raw: readonly (readonly PolarPoint[])[],
  reynolds: readonly number[],
  angle: number,
  logReynolds: number,
): [lift: number, logDrag: number] {
  const terms = 4; // 1, da, da^2, dRe
  const normal = Array.from({ length: terms }, () => new Array<number>(terms + 2).fill(0));
  raw.forEach((points, row) => {
    const dRe = Math.log(reynolds[row] ?? Number.NaN) - logReynolds;
    const rowWeight = Math.exp(-0.5 * (dRe / LOG_REYNOLDS_WIDTH) ** 2);
    if (rowWeight < 1e-4) return;
    for (const [a, cl, cd] of points) {
      const da = a - angle;
      const weight = rowWeight * Math.exp(-0.5 * (da / ANGLE_WIDTH) ** 2);
      if (weight < 1e-9) continue;
      const basis = [1, da, da * da, dRe];
      basis.forEach((p, i) => {
        const line = normal[i] as number[];
        basis.forEach((q, j) => {
          line[j] = (line[j] ?? 0) + weight * p * q;
        });
        line[terms] = (line[terms] ?? 0) + weight * p * cl;
        line[terms + 1] = (line[terms + 1] ?? 0) + weight * p * Math.log(cd);
      });
    }
  });
  for (let i = 0; i < terms; i++)
    (normal[i] as number[])[i] = ((normal[i] as number[])[i] ?? 0) * (1 + 1e-9) + 1e-9;
  return solveFirst(normal, terms);
}

/** Gauss elimination of a small positive-definite system with two right-hand sides; the first unknown of each. */
function solveFirst(normal: number[][], n: number): [number, number] {
  for (let i = n - 1; i > 0; i--) {
    const pivotRow = normal[i] as number[];
    for (let k = 0; k < i; k++) {
      const line = normal[k] as number[];
      const factor = (line[i] ?? 0) / (pivotRow[i] ?? 1);
      for (let j = 0; j < line.length; j++) line[j] = (line[j] ?? 0) - factor * (pivotRow[j] ?? 0);
    }
  }
  const first = normal[0] as number[];
  return [(first[n] ?? 0) / (first[0] ?? 1), (first[n + 1] ?? 0) / (first[0] ?? 1)];
}
