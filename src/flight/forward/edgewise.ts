import { type NoSolution, noSolution } from '../../numerics/outcome.ts';
import { secantRoot } from '../../numerics/secantRoot.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import type { RotorLoads, RotorRead } from '../types.ts';
import { glauertInducedSpeed } from './glauert.ts';

/** What a rotor must do for a thrust in oblique flow. */
export interface ObliqueState {
  /** [rad/s] */
  readonly angularSpeed: number;
  /** Asked of the shaft [N m]. */
  readonly torque: number;
  /** In-plane drag of the blades, against the edgewise flow [N]. */
  readonly inPlaneForce: number;
  /** To the advancing side [N], and hub moments [N m]: see `ObliqueLoads`. */
  readonly sideForce: number;
  readonly momentAdvancingUp: number;
  readonly momentAftUp: number;
  /** Induced speed at the disc [m/s]. */
  readonly inducedSpeed: number;
}

export interface ObliqueRequest {
  /** Of the rotor, before download [N], > 0. */
  readonly thrust: number;
  /** Through the disc from above, wakes of others included [m/s]; a little below 0 in their upwash. */
  readonly axialSpeed: number;
  /** Along the disc [m/s], >= 0. */
  readonly edgewiseSpeed: number;
  /** [kg/m3] */
  readonly airDensity: number;
  /** [m] */
  readonly diameter: number;
  /** Of the reader's thrust and torque; 1 as it says. */
  readonly thrustScale: number;
  readonly torqueScale: number;
  /** Of the in-plane force that comes with lift; 1 when absent. */
  readonly inPlaneScale?: number;
  /** First guess of the angular speed [rad/s]. */
  readonly start?: number;
}

/** No speed gives the thrust: why, and the nearest that the rotor does, at its slowest or its fastest. */
export interface OutOfReach extends NoSolution {
  readonly nearest: ObliqueState;
  readonly because: 'too slow' | 'too little thrust';
}

export type ObliqueAnswer = { readonly ok: true; readonly value: ObliqueState } | OutOfReach;

/** A way to know a rotor in oblique flow. */
export type ObliqueRotor = (rotor: RotorRead, request: ObliqueRequest) => ObliqueAnswer;

/**
 * Profile power of a rotor at advance ratio mu over hover, in-plane drag and radial flow included: 1 + 4.65 mu2
 * (Bennett 1940; Leishman 2006 section 5.4.2, from memory). 1 + mu2 of it turns the shaft, the rest is drag of the blades.
 */
const PROFILE_GROWTH = 4.65;
/** Growth of T0 by the mean square speed of a blade element: 3/2 mu2 of it (Leishman 2006 eq. 3.118, from memory); inflow's share does not grow. */
const THRUST_GROWTH = 1.5;
/**
 * In-plane force of leaning lift over lambda mu, in parts of T0 and of the static thrust at the same speed. A blade's lift
 * leans back by the inflow angle; the advancing blade lifts more than the retreating one, so the two leans leave a
 * force aft. For a rigid blade of constant geometric pitch and chord, cut at 0.15 R, in even inflow the integral gives
 * 1/2 ln(1 / 0.15) / (1/2) = 1.9 of T0 (the thrust term of C_H in Bramwell 1976 and Johnson 1980, from memory, there
 * for little twist). With camber, taper and leaning inflow `solveEdgewise` has 2 for low pitch to 3 for high, less as the
 * retreating side stalls: the numbers are fitted to it over seven propellers, and held to it in
 * test/flight/forward/inPlane.test.ts.
 */
const LEAN_OF_PITCH = 0.9;
const LEAN_OF_STATIC = 2.2;
const LEAN_FADES = 4;
/** Beyond this advance ratio the closed form is no longer believable. */
export const LARGEST_ADVANCE = 0.5;
export const FASTEST = 12000; // [rad/s]
/**
 * Farthest reflection, over tip speed: about the climb at which a propeller of middling pitch stops pulling, where
 * blades see next to no inflow. Held there (ours, no source).
 */
const FLATTEST = 0.25;

/**
 * Oblique flow from axial knowledge alone, in closed form: Glauert's momentum gives the mean flow through the
 * disc, lambda = Vz + v; blades that see this flow in axial climb do so at the climb speed
 * V* = lambda - vh2/lambda, so the axial reader is asked there. Edgewise speed then adds to thrust and profile
 * drag by the mean-square factors above. Lift's own in-plane force is pushed by the airframe, so that its
 * work comes off the shaft's (energy: Q omega + H Vx = T (Vz + v) + profile losses).
 *
 * V* is below zero at small tilt, where axial momentum theory has no solution: there the reader is reflected about
 * hover, value(-V) = 2 value(0) - value(V), good to second order, and held at a quarter of tip speed. Valid to an advance ratio near 0.3, marked out beyond
 * 0.5. No hub moments, no tip Mach of the advancing blade, no wake of one rotor on another. Where a station
 * has an oblique reader of its own, `mappedRotor` takes its place.
 */
export const glauertRotor: ObliqueRotor = (rotor, request) => {
  const { thrust, axialSpeed, edgewiseSpeed, airDensity, diameter, thrustScale, torqueScale } = request;
  const disc = (Math.PI / 4) * diameter * diameter;
  const hoverSpeed = Math.sqrt(thrust / (2 * airDensity * disc));
  const induced = glauertInducedSpeed(hoverSpeed, edgewiseSpeed, axialSpeed);
  const through = axialSpeed + induced;
  const equivalent = through > 0 ? through - (hoverSpeed * hoverSpeed) / through : 0;
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  const read = (angularSpeed: number): void => {
    const flattest = 0.5 * FLATTEST * angularSpeed * diameter;
    rotor(angularSpeed, equivalent >= 0 ? equivalent : Math.min(-equivalent, flattest), loads);
    if (equivalent >= 0) return;
    const { thrust: mirrorThrust, torque: mirrorTorque } = loads;
    rotor(angularSpeed, 0, loads);
    loads.thrust = 2 * loads.thrust - mirrorThrust;
    loads.torque = 2 * loads.torque - mirrorTorque;
  };
  const advanceSquare = (angularSpeed: number): number => {
    const ratio = (2 * edgewiseSpeed) / (angularSpeed * diameter);
    return ratio * ratio;
  };
  // Slower than this the blades would be carried backwards; thrust there is not asked for.
  const slowest = (2 * edgewiseSpeed) / (LARGEST_ADVANCE * diameter) + 1;
  const start = Math.max(request.start || 2500, slowest);
  // Over angular speed squared it hardly changes, so once is enough.
  const { still, flowless } = perSpeedSquare(rotor, start, 2 * airDensity * disc);
  const short = (angularSpeed: number): number => {
    read(angularSpeed);
    const grown = THRUST_GROWTH * advanceSquare(angularSpeed) * thrustScale * flowless * angularSpeed ** 2;
    return loads.thrust * thrustScale + grown - thrust;
  };
  const angularSpeed = endFor(short, slowest, start) ?? secantRoot(short, slowest, FASTEST, start);
  const miss = short(angularSpeed);
  const mu2 = advanceSquare(angularSpeed);
  const axialTorque = loads.torque * torqueScale;
  const useful = (loads.thrust * thrustScale * through) / angularSpeed;
  const profileTorque = Math.max(axialTorque - useful, 0);
  const tip = 0.5 * angularSpeed * diameter;
  const profileDrag = ((PROFILE_GROWTH - 1) * profileTorque * angularSpeed * edgewiseSpeed) / (tip * tip);
  const leaning = thrustScale * (LEAN_OF_PITCH * flowless + LEAN_OF_STATIC * still) * angularSpeed ** 2;
  const lean =
    ((request.inPlaneScale ?? 1) * through * edgewiseSpeed * leaning) / (tip * tip * (1 + LEAN_FADES * mu2));
  return answerAt(request, slowest, miss, {
    angularSpeed,
    torque:
      (thrust * through - lean * edgewiseSpeed) / angularSpeed + (axialTorque - useful) + profileTorque * mu2,
    inPlaneForce: profileDrag + lean,
    sideForce: 0,
    momentAdvancingUp: 0,
    momentAftUp: 0,
    inducedSpeed: induced,
  });
};

/** The end of the bracket [rad/s] where a guess beside it finds no root inside: quicker than halving all the way there. */
export function endFor(
  short: (angularSpeed: number) => number,
  slowest: number,
  guess: number,
): number | undefined {
  if (guess < 1.05 * slowest && short(slowest) > 0) return slowest;
  return guess > 0.95 * FASTEST && short(FASTEST) < 0 ? FASTEST : undefined;
}

/**
 * A state that a search over the speed of turning ended at, as the answer or as the nearest to it. Inside its bracket the search
 * cannot miss but by rounding; at an end it has missed by `miss` [N], above 0 where the slowest gives more than is asked.
 */
export function answerAt(
  { thrust, edgewiseSpeed }: ObliqueRequest,
  slowest: number,
  miss: number,
  state: ObliqueState,
): ObliqueAnswer {
  const inside = state.angularSpeed > slowest * (1 + 1e-9) && state.angularSpeed < FASTEST * (1 - 1e-9);
  if (inside || Math.abs(miss) <= 1e-8 * thrust) return { ok: true, value: state };
  const reason =
    miss > 0
      ? `at ${withUnit(edgewiseSpeed.toFixed(1), 'm/s')} edgewise the propeller turns too slowly for its advance ratio (above ${LARGEST_ADVANCE})`
      : `the propeller cannot give ${thrust.toFixed(2)} N at any speed`;
  return { ...noSolution(reason), nearest: state, because: miss > 0 ? 'too slow' : 'too little thrust' };
}

/**
 * Static thrust, and T0: what the blades would pull at the same speed were there no flow through the disc; both over
 * angular speed squared [N s2]. T0 lies on a straight line through thrust over flow (axial speed and induced speed) at
 * hover and at a climb of half the hover's induced speed.
 *
 * @param discUnit 2 rho A [kg/m]
 */
function perSpeedSquare(
  rotor: RotorRead,
  angularSpeed: number,
  discUnit: number,
): { readonly still: number; readonly flowless: number } {
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  rotor(angularSpeed, 0, loads);
  const still = loads.thrust;
  if (!(still > 0)) return { still: 0, flowless: 0 };
  const hover = Math.sqrt(still / discUnit);
  const climb = hover / 2;
  rotor(angularSpeed, climb, loads);
  const flow = climb / 2 + Math.sqrt((climb * climb) / 4 + Math.max(loads.thrust, 0) / discUnit);
  // A reader that hardly minds the climb has no line to draw; three times the static thrust is past any real blade.
  const rise = (hover * Math.max(still - loads.thrust, 0)) / Math.max(flow - hover, 0.05 * hover);
  const square = angularSpeed * angularSpeed;
  return { still: still / square, flowless: Math.min(still + rise, 3 * still) / square };
}
