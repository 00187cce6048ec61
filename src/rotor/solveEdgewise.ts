import { bracketedRoot } from '../numerics/bracketedRoot.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { withUnit } from '../units/formatQuantity.ts';
import { tooFastTip } from './corrections.ts';
import { dragOf, liftOf } from './elements.ts';
import { type ElementWork, elementWork, setCondition } from './elementWork.ts';
import type { SectionTables } from './sections.ts';
import { solveAxial } from './solveRotor.ts';
import type { Blade, EdgewiseCondition, EdgewiseState, RotorCondition } from './types.ts';

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
 * @returns words in the vortex ring, for harder braking than momentum theory carries, and beyond Mach 0.9 of the advancing tip
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
  const fast = tooFastTip(Math.hypot(tip + Vx, condition.axialSpeed) / condition.air.speedOfSound);
  if (fast !== undefined) return noSolution(fast);
  const work = elementWork(blade, sections);
  const flow = axialFlow(work, condition, Vx > 0);
  return flow.ok ? edgewiseOf(work, flow.value, Vx, AZIMUTHS, undefined, condition.inflowLean) : flow;
}

/** A blade solved in axial flow, which gives the radial shape of the inflow and the swirl at every edgewise speed. */
export interface AxialFlow extends RotorCondition {
  /** Axial speed it was solved at [m/s]; 0 for a rotor sinking edgewise. */
  readonly solvedAt: number;
  readonly thrust: number;
  readonly torque: number;
  /** Mean at the disc [m/s]. */
  readonly inducedSpeed: number;
}

/**
 * Solves `work` axially.
 *
 * @param edgewise true when it also moves along its disc, which carries a descent's wake away
 */
export function axialFlow(
  work: ElementWork,
  condition: RotorCondition,
  edgewise: boolean,
): Outcome<AxialFlow> {
  const { angularSpeed, axialSpeed, air } = condition;
  const solvedAt = edgewise ? Math.max(axialSpeed, 0) : axialSpeed;
  setCondition(work, angularSpeed, solvedAt, air);
  const trouble = solveAxial(work, angularSpeed, solvedAt, air.density);
  if (trouble !== undefined) return noSolution(trouble);
  const [thrust, torque] = [work.last[0] as number, work.last[1] as number];
  const inducedSpeed = axialDiscSpeed(thrust / discUnitOf(work, air.density), solvedAt);
  return solved({ ...condition, solvedAt, thrust, torque, inducedSpeed });
}

/** A neighbour's answer to start from, and how close is close enough. */
export interface Near {
  /** [m/s] */
  readonly inducedSpeed: number;
  /** Of the induced speed [m/s]. */
  readonly tolerance: number;
}

/**
 * `solveEdgewise` on a blade that stands solved at `flow`; arguments unchecked.
 *
 * @param near saves two thirds of the work
 */
export function edgewiseOf(
  work: ElementWork,
  flow: AxialFlow,
  Vx: number,
  azimuths: Azimuths,
  near?: Near,
  inflowLean = 1,
): Outcome<EdgewiseState> {
  const { angularSpeed: omega, axialSpeed: Vz, air } = flow;
  const tip = omega * work.R;
  const discUnit = discUnitOf(work, air.density);
  const sums: TurnSums = { thrust: 0, torque: 0, aft: 0, side: 0, advancingUp: 0, aftUp: 0 };
  const imbalance = (v: number): number => {
    turn(work, flow, Vx, azimuths, v, inflowLean, sums);
    return sums.thrust - discUnit * v * Math.sqrt(Vx * Vx + (Vz + v) * (Vz + v));
  };
  let v = Vx === 0 ? flow.inducedSpeed : near && quickly(imbalance, near, discUnit * tip);
  if (v === undefined) {
    const fastest = -0.5 * Math.hypot(Vx, Math.max(Vz, 0));
    const root = bracketedRoot(imbalance, fastest, 0.6 * tip, near?.tolerance ?? 1e-7 * tip);
    if (!root.ok) {
      return noSolution(
        `at ${withUnit(Vx.toFixed(1), 'm/s')} edgewise and ${withUnit(Vz.toFixed(1), 'm/s')} axial the blade brakes harder than momentum theory carries`,
      );
    }
    v = root.value;
  }
  if (near === undefined || Vx === 0) turn(work, flow, Vx, azimuths, v, inflowLean, sums);
  if (Vx > 0 && inVortexRing(Vx, Vz, sums.thrust / discUnit)) {
    return noSolution(
      `descending at ${withUnit((-Vz).toFixed(1), 'm/s')} with little forward speed puts the rotor in its own vortex ring, where momentum theory has no answer`,
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

/**
 * The secant method from a neighbour's answer; undefined where it strays, for the bracketed one to take over. The loads left
 * behind are those of its last step but one, whose error is within the tolerance.
 *
 * @param unit 2 rho A times the tip speed; the imbalance falls by about 0.4 of it a metre a second
 */
function quickly(imbalance: (v: number) => number, near: Near, unit: number): number | undefined {
  let before = near.inducedSpeed;
  let missed = imbalance(before);
  let v = before + missed / (0.4 * unit);
  for (let k = 0; k < 8; k++) {
    const miss = imbalance(v);
    const step = (miss * (v - before)) / (missed - miss);
    if (!(Math.abs(step) < unit)) return undefined;
    if (Math.abs(step) <= near.tolerance) return v;
    before = v;
    missed = miss;
    v += step;
  }
  return undefined;
}

const discUnitOf = (work: ElementWork, density: number): number => 2 * density * Math.PI * work.R * work.R;

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

/** Blade positions averaged over a turn: the midpoint rule of a periodic function gains digits fast. */
export interface Azimuths {
  readonly sine: Float64Array;
  readonly cosine: Float64Array;
}

export function evenAzimuths(count: number): Azimuths {
  const angles = Float64Array.from({ length: count }, (_, k) => (2 * Math.PI * (k + 0.5)) / count);
  return { sine: angles.map(Math.sin), cosine: angles.map(Math.cos) };
}

const AZIMUTHS = evenAzimuths(24);

/** Averages the loads over a turn at mean induced speed `v` into `sums`. */
function turn(
  work: ElementWork,
  flow: AxialFlow,
  Vx: number,
  azimuths: Azimuths,
  v: number,
  inflowLean: number,
  sums: TurnSums,
): void {
  const { angularSpeed: omega, axialSpeed: Vz, solvedAt, air } = flow;
  const axialInduced = flow.inducedSpeed;
  const ratio = Vx / (omega * work.R);
  const slopes = dreesSlopes(Math.atan2(Vx, Math.max(Vz + v, 0)), ratio);
  // The axial solution's radial shape fades with the induced speed itself.
  const keep = axialInduced === v ? 1 : axialInduced * v <= 0 ? 0 : Math.min(1, v / axialInduced);
  const lean = v * inflowLean;
  const count = azimuths.sine.length;
  let [thrust, torque, aft, side, advancingUp, aftUp] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < work.count; i++) {
    const r = work.r[i] as number;
    const x = r / work.R;
    const phi = work.phi[i] as number;
    const theta = work.theta[i] as number;
    const W0 = work.W[i] as number;
    const uneven = keep * (W0 * Math.sin(phi) - solvedAt - axialInduced);
    const swirl = keep * (omega * r - W0 * Math.cos(phi));
    const across = omega * r - swirl;
    const through = Vz + v + uneven;
    const load = (0.5 * air.density * (work.c[i] as number) * work.B * (work.dr[i] as number)) / count;
    for (let k = 0; k < count; k++) {
      const sine = azimuths.sine[k] as number;
      const cosine = azimuths.cosine[k] as number;
      const UT = across + Vx * sine;
      const UP = through + lean * x * (slopes.aft * cosine + slopes.advancing * sine);
      const W = Math.sqrt(UT * UT + UP * UP);
      const alpha = wrapped(theta - Math.atan2(UP, UT));
      const cl = liftOf(work, i, alpha);
      const cd = dragOf(work, i, alpha, cl);
      const dT = load * W * (cl * UT - cd * UP);
      const against = load * W * (cl * UP + cd * UT);
      const outward = load * W * cd * Vx * cosine;
      thrust += dT;
      torque += against * r;
      aft += against * sine + outward * cosine;
      side += outward * sine - against * cosine;
      advancingUp += dT * r * sine;
      aftUp += dT * r * cosine;
    }
  }
  sums.thrust = thrust;
  sums.torque = torque;
  sums.aft = aft;
  sums.side = side;
  sums.advancingUp = advancingUp;
  sums.aftUp = aftUp;
}

function wrapped(angle: number): number {
  if (angle > Math.PI) return angle - 2 * Math.PI;
  return angle < -Math.PI ? angle + 2 * Math.PI : angle;
}
