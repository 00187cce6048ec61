import { waveDrag } from './corrections.ts';
import type { ElementWork } from './elementWork.ts';
import { arcCosine, cosine, decay, sine } from './polynomials.ts';
import { COLUMNS } from './sections.ts';

// The blade-element momentum kernel in axial flow, after Ning 2014 (Wind Energy 17:1327) and 2021
// (Struct. Multidisc. Optim. 64:487), with the residual in the form of Stahlhut and Leishman 2012,
// which stays regular at zero axial speed.

const TWO_OVER_PI = 2 / Math.PI;
/** exp(-14) is below 1e-6: the loss factor is 1. */
const NO_LOSS = 14;

/**
 * Place of angle of attack `alpha` [rad] in a row of the tables. Compressibility steepens the lift
 * curve about zero lift and leaves the stalled plate alone.
 */
function placeOf(w: ElementWork, i: number, alpha: number): number {
  const near = Math.max(0, 1 - alpha * alpha * 1.62); // gone by 45 degrees
  const steep = alpha + (w.compress[i] as number) * (alpha - (w.alpha0[i] as number)) * near * near;
  const count = w.tables.angleCount;
  return Math.min(Math.max(((steep + Math.PI) * (count - 1)) / (2 * Math.PI), 0), count - 1.001);
}

/** c_l of station `i`, stall delay included. */
export function liftOf(w: ElementWork, i: number, alpha: number): number {
  const { values, angleCount } = w.tables;
  const place = placeOf(w, i, alpha);
  const k = place | 0; // an integer for the engine too
  const t = place - k;
  const share = w.rowShare[i] as number;
  const delay = w.delayLift[i] as number;
  const low = ((w.row[i] as number) * angleCount + k) * COLUMNS;
  const high = low + angleCount * COLUMNS;
  return (
    (1 - share) *
      ((1 - t) * ((values[low] as number) + delay * (values[low + 2] as number)) +
        t * ((values[low + 4] as number) + delay * (values[low + 6] as number))) +
    share *
      ((1 - t) * ((values[high] as number) + delay * (values[high + 2] as number)) +
        t * ((values[high + 4] as number) + delay * (values[high + 6] as number)))
  );
}

/** c_d of station `i`, where its c_l is known. */
export function dragOf(w: ElementWork, i: number, alpha: number, cl: number): number {
  const { values, angleCount } = w.tables;
  const place = placeOf(w, i, alpha);
  const k = place | 0;
  const t = place - k;
  const share = w.rowShare[i] as number;
  const delay = w.delayDrag[i] as number;
  const low = ((w.row[i] as number) * angleCount + k) * COLUMNS;
  const high = low + angleCount * COLUMNS;
  const drag =
    (1 - share) *
      ((1 - t) * ((values[low + 1] as number) - delay * (values[low + 3] as number)) +
        t * ((values[low + 5] as number) - delay * (values[low + 7] as number))) +
    share *
      ((1 - t) * ((values[high + 1] as number) - delay * (values[high + 3] as number)) +
        t * ((values[high + 5] as number) - delay * (values[high + 7] as number)));
  return drag * w.dragScale + (w.dragMore[i] as number) + waveDrag(w.mach[i] as number, cl);
}

/** Prandtl's tip and root loss (Glauert 1935, ch. VII, eq. 5.5) at the local inflow angle. */
function lossFactor(w: ElementWork, i: number, absSin: number): number {
  const tip = (w.tipGap[i] as number) / absSin;
  let F = tip > NO_LOSS ? 1 : TWO_OVER_PI * arcCosine(decay(tip));
  const root = (w.rootGap[i] as number) / absSin;
  if (root < NO_LOSS) F *= TWO_OVER_PI * arcCosine(decay(root));
  return F;
}

/**
 * Momentum against blade force at inflow angle phi (Stahlhut and Leishman 2012, eq. 19, times |sin phi|):
 * |s| (Wr s - V c) - k c_l (Wr c + V s), k = sigma / 4F. Zero at the solution; regular at V = 0.
 * Drag is left out of the induction (Wilson and Lissaman 1974, sec. 3): its wake is thin and
 * carries no lift circulation.
 */
function residual(w: ElementWork, i: number, phi: number, Wr: number, V: number): number {
  const s = sine(phi);
  const c = cosine(phi);
  const absSin = Math.max(Math.abs(s), 1e-9);
  const cl = liftOf(w, i, (w.theta[i] as number) - phi);
  const F = lossFactor(w, i, absSin);
  w.last[0] = cl;
  w.last[1] = F;
  w.last[2] = s;
  w.last[3] = c;
  return absSin * (Wr * s - V * c) - ((w.sigma4[i] as number) / F) * cl * (Wr * c + V * s);
}

/** Last step of the inflow angle [rad]; the error left is its 1.7th power. */
const PHI_TOLERANCE = 1e-7;

/**
 * Inflow angle of station `i`; false when momentum theory has none. At the geometric angle
 * atan(V / Wr) the residual has the sign of minus the lift, at the no-lift angle theta - alpha0 that
 * of the axial flow: the two bracket the root, always, unless the blade pushes against air that
 * comes from behind it.
 *
 * @param brake look for the windmill-brake state there, instead of the hover side
 */
function solveStation(w: ElementWork, i: number, Wr: number, V: number, brake: boolean): boolean {
  const geometric = Math.atan2(V, Wr);
  const noLift = (w.theta[i] as number) - (w.alpha0[i] as number);
  let a = geometric;
  let b = noLift;
  if (V * noLift < 0) {
    if (V > 0 || brake) b = geometric / 2;
    else a = 0;
  }
  let fb = residual(w, i, b, Wr, V);
  if (fb === 0) return keep(w, i, b, Wr);
  let fa = residual(w, i, a, Wr, V);
  if (fa === 0) return keep(w, i, a, Wr);
  if (fa > 0 === fb > 0) {
    // The table's own zero of lift can differ from the interpolated one by a hair.
    const hair = b > a ? 0.03 : -0.03;
    b += hair;
    fb = residual(w, i, b, Wr, V);
    if (fa > 0 === fb > 0) {
      a -= hair;
      fa = residual(w, i, a, Wr, V);
      if (fa > 0 === fb > 0) {
        if (!brake) return false;
        // A crowded root can't be balanced in fast descent: it takes the inflow nearest to balance.
        residual(w, i, geometric / 2, Wr, V);
        return keep(w, i, geometric / 2, Wr);
      }
    }
  }
  // Regula falsi with the damping of Anderson and Bjorck (1973): keeps its bracket, order about 1.7.
  for (let n = 1; n < 80; n++) {
    const x = n % 8 === 0 ? 0.5 * (a + b) : b - (fb * (b - a)) / (fb - fa);
    const f = residual(w, i, x, Wr, V);
    if (f === 0) return keep(w, i, x, Wr);
    if (f > 0 !== fb > 0) {
      a = b;
      fa = fb;
    } else {
      const damp = 1 - f / fb;
      fa *= damp > 0 ? damp : 0.5;
    }
    const step = Math.abs(x - b);
    b = x;
    fb = f;
    if (step < PHI_TOLERANCE || Math.abs(b - a) < PHI_TOLERANCE) break;
  }
  return keep(w, i, b, Wr);
}

/** Keeps the answer of a station; c_l and F are those of the last residual. */
function keep(w: ElementWork, i: number, phi: number, Wr: number): boolean {
  const cl = w.last[0] as number;
  const F = w.last[1] as number;
  const swirl = ((w.sigma4[i] as number) / F) * cl * Math.sign(phi);
  w.phi[i] = phi;
  w.cl[i] = cl;
  w.cd[i] = dragOf(w, i, (w.theta[i] as number) - phi, cl);
  w.F[i] = F;
  w.W[i] = Wr / ((w.last[3] as number) + swirl);
  return true;
}

/**
 * Solves every station at a condition set by `setCondition`; leaves thrust [N] and torque [N m] in
 * `last[0]` and `last[1]`. False when a station has no momentum solution.
 */
export function solveElements(
  w: ElementWork,
  omega: number,
  V: number,
  density: number,
  brake: boolean,
): boolean {
  let T = 0;
  let Q = 0;
  for (let i = 0; i < w.count; i++) {
    const r = w.r[i] as number;
    if (!solveStation(w, i, omega * r, V, brake)) return false;
    const s = w.last[2] as number;
    const c = w.last[3] as number;
    const W = w.W[i] as number;
    const cl = w.cl[i] as number;
    const cd = w.cd[i] as number;
    const load = 0.5 * density * W * W * w.B * (w.c[i] as number);
    const dT = load * (cl * c - cd * s);
    const dQ = load * (cl * s + cd * c) * r;
    w.dT[i] = dT;
    w.dQ[i] = dQ;
    T += dT * (w.dr[i] as number);
    Q += dQ * (w.dr[i] as number);
  }
  w.last[0] = T;
  w.last[1] = Q;
  return true;
}
