import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { dragOf, liftOf } from './elements.ts';
import { type ElementWork, elementWork, setCondition } from './elementWork.ts';
import type { SectionTables } from './sections.ts';
import { solveAxial } from './solveRotor.ts';
import type { Blade, EdgewiseCondition, EdgewiseState } from './types.ts';

/** Blade positions averaged over a turn: the midpoint rule of a periodic function gains digits fast. */
const AZIMUTHS = 24;
/** Above this share of the tip speed the retreating blade flies backwards over much of its span. */
const LARGEST_RATIO = 0.6;

/** What one average over a turn sums up, in newtons and newton metres. */
interface TurnSums {
  thrust: number;
  torque: number;
  aft: number;
  side: number;
  advancingUp: number;
  aftUp: number;
}

/**
 * A rotor moving along its disc: blade elements averaged over a turn, Glauert's momentum (1926) for
 * the mean induced speed and Drees' linear distribution (1949) fore and aft and from side to side. The
 * radial shape of the inflow and the swirl are those of `solveRotor`, so that the two agree
 * exactly at zero edgewise speed. Use `solveRotor` for axial flow.
 *
 * Blades are rigid; the Reynolds and Mach numbers of a station are those of its mean speed.
 *
 * @returns words in the vortex ring and for harder braking than momentum theory carries
 * @throws RangeError edgewiseSpeed outside 0 to 0.6 of the tip speed
 */
export function solveEdgewise(
  blade: Blade,
  sections: SectionTables,
  condition: EdgewiseCondition,
): Outcome<EdgewiseState> {
  const { angularSpeed: omega, edgewiseSpeed: Vx } = condition;
  const tip = omega * (blade.diameter / 2);
  if (!(omega > 0)) throw new RangeError(`angularSpeed must be above 0 rad/s; found ${omega} rad/s`);
  if (!(Vx >= 0 && Vx <= LARGEST_RATIO * tip)) {
    throw new RangeError(
      `edgewiseSpeed must be between 0 and ${LARGEST_RATIO} of the tip speed, ${(LARGEST_RATIO * tip).toFixed(1)} m/s; found ${Vx} m/s`,
    );
  }
  return edgewiseOf(elementWork(blade, sections), condition, AZIMUTHS);
}

/** `solveEdgewise` on a blade already laid out, over `azimuths` positions; arguments unchecked. */
export function edgewiseOf(
  work: ElementWork,
  condition: EdgewiseCondition,
  azimuths: number,
): Outcome<EdgewiseState> {
  const { angularSpeed: omega, axialSpeed: Vz, edgewiseSpeed: Vx, air } = condition;
  const tip = omega * work.R;
  const axial = Vx === 0 ? Vz : Math.max(Vz, 0);
  setCondition(work, omega, axial, air);
  const trouble = solveAxial(work, omega, axial, air.density);
  if (trouble !== undefined) return noSolution(trouble);

  const disc = Math.PI * work.R * work.R;
  const discUnit = 2 * air.density * disc;
  const axialInduced = axialDiscSpeed((work.last[0] as number) / discUnit, axial);
  const sums: TurnSums = { thrust: 0, torque: 0, aft: 0, side: 0, advancingUp: 0, aftUp: 0 };
  const imbalance = (v: number): number => {
    turn(work, condition, azimuths, axial, v, axialInduced, sums);
    return sums.thrust - discUnit * v * Math.hypot(Vx, Vz + v);
  };
  const root =
    Vx === 0
      ? solved(axialInduced)
      : bracketedRoot(imbalance, -0.5 * Math.hypot(Vx, Math.max(Vz, 0)), 0.6 * tip, 1e-7 * tip);
  if (!root.ok) {
    return noSolution(
      `at ${Vx.toFixed(1)} m/s edgewise and ${Vz.toFixed(1)} m/s axial the blade brakes harder than momentum theory carries`,
    );
  }
  const v = root.value;
  turn(work, condition, azimuths, axial, v, axialInduced, sums);
  if (Vx > 0 && inVortexRing(Vx, Vz, sums.thrust / discUnit)) {
    return noSolution(
      `descending at ${(-Vz).toFixed(1)} m/s with little forward speed puts the rotor in its own vortex ring, where momentum theory has no answer`,
    );
  }
  const n = omega / (2 * Math.PI);
  const D = 2 * work.R;
  const power = sums.torque * omega;
  return solved({
    thrust: sums.thrust,
    torque: sums.torque,
    power,
    inPlaneForce: sums.aft,
    sideForce: sums.side,
    momentAdvancingUp: sums.advancingUp,
    momentAftUp: sums.aftUp,
    inducedSpeed: v,
    wakeSkew: Math.atan2(Vx, Vz + v),
    thrustCoefficient: sums.thrust / (air.density * n ** 2 * D ** 4),
    powerCoefficient: power / (air.density * n ** 3 * D ** 5),
    edgewiseRatio: Vx / tip,
    tipMach: Math.hypot(tip + Vx, Vz) / air.speedOfSound,
  });
}

/** Induced speed of the disc in axial flow, T = 2 rho A v |V + v|; `load` is T / (2 rho A) [m2/s2]. */
function axialDiscSpeed(load: number, V: number): number {
  const half = V / 2;
  const inside = half * half + load;
  return inside <= 0 ? -half : Math.sqrt(inside) - half;
}

/** Descent from 0.4 of the hover induced speed while the wake is not carried off edgewise (Johnson 2005, from memory). */
function inVortexRing(Vx: number, Vz: number, load: number): boolean {
  const hover = Math.sqrt(Math.max(load, 0));
  return Vz < -0.4 * hover && Vx < 1.0 * hover;
}

/**
 * Drees' distribution (1949; Leishman 2006, eqs 3.164 and 3.165): growth of the inflow aft and to the
 * advancing side, a unit of r/R. Both vanish in axial flow.
 */
export function dreesSlopes(wakeSkew: number, edgewiseRatio: number): { aft: number; advancing: number } {
  const sine = Math.sin(wakeSkew);
  const aft =
    Math.abs(sine) < 1e-6 ? 0 : ((4 / 3) * (1 - Math.cos(wakeSkew) - 1.8 * edgewiseRatio ** 2)) / sine;
  return { aft, advancing: -2 * edgewiseRatio };
}

/** Averages the loads over a turn at mean induced speed `v` into `sums`. */
function turn(
  work: ElementWork,
  condition: EdgewiseCondition,
  azimuths: number,
  axial: number,
  v: number,
  axialInduced: number,
  sums: TurnSums,
): void {
  const { angularSpeed: omega, axialSpeed: Vz, edgewiseSpeed: Vx, air } = condition;
  const ratio = Vx / (omega * work.R);
  const slopes = dreesSlopes(Math.atan2(Vx, Math.max(Vz + v, 0)), ratio);
  // The axial solution's radial shape fades with the induced speed itself.
  const keep = axialInduced === v ? 1 : axialInduced * v <= 0 ? 0 : Math.min(1, v / axialInduced);
  sums.thrust = sums.torque = sums.aft = sums.side = sums.advancingUp = sums.aftUp = 0;
  for (let i = 0; i < work.count; i++) {
    const r = work.r[i] as number;
    const x = r / work.R;
    const phi = work.phi[i] as number;
    const W0 = work.W[i] as number;
    const uneven = keep * (W0 * Math.sin(phi) - axial - axialInduced);
    const swirl = keep * (omega * r - W0 * Math.cos(phi));
    const share = (work.B * (work.dr[i] as number)) / azimuths;
    const load = 0.5 * air.density * (work.c[i] as number) * share;
    for (let k = 0; k < azimuths; k++) {
      const azimuth = (2 * Math.PI * (k + 0.5)) / azimuths;
      const sine = Math.sin(azimuth);
      const cosine = Math.cos(azimuth);
      const UT = omega * r - swirl + Vx * sine;
      const UR = Vx * cosine;
      const UP = Vz + v * (1 + slopes.aft * x * cosine + slopes.advancing * x * sine) + uneven;
      const W = Math.sqrt(UT * UT + UP * UP);
      const alpha = wrapped((work.theta[i] as number) - Math.atan2(UP, UT));
      const cl = liftOf(work, i, alpha);
      const cd = dragOf(work, i, alpha, cl);
      const dT = load * W * (cl * UT - cd * UP);
      const against = load * W * (cl * UP + cd * UT);
      const outward = load * W * cd * UR;
      sums.thrust += dT;
      sums.torque += against * r;
      sums.aft += against * sine + outward * cosine;
      sums.side += outward * sine - against * cosine;
      sums.advancingUp += dT * r * sine;
      sums.aftUp += dT * r * cosine;
    }
  }
}

function wrapped(angle: number): number {
  if (angle > Math.PI) return angle - 2 * Math.PI;
  return angle < -Math.PI ? angle + 2 * Math.PI : angle;
}
