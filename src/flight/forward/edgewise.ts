import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { secantRoot } from '../../numerics/secantRoot.ts';
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
  /** First guess of the angular speed [rad/s]. */
  readonly start?: number;
}

/** A way to know a rotor in oblique flow. */
export type ObliqueRotor = (rotor: RotorRead, request: ObliqueRequest) => Outcome<ObliqueState>;

/**
 * Profile power of a rotor at advance ratio mu over hover, in-plane drag and radial flow included: 1 + 4.65 mu2
 * (Bennett 1940; Leishman 2006 section 5.4.2, from memory). 1 + mu2 of it turns the shaft, the rest is drag of the blades.
 */
const PROFILE_GROWTH = 4.65;
/** Growth of thrust at fixed inflow: mean square speed of a blade element, 1 + 3/2 mu2 (Leishman 2006 eq. 3.118, from memory). */
const THRUST_GROWTH = 1.5;
/** Beyond this advance ratio the closed form is no longer believable. */
const LARGEST_ADVANCE = 0.5;
const FASTEST = 12000; // [rad/s]

/**
 * Oblique flow from axial knowledge alone, in closed form: Glauert's momentum gives the mean flow through the
 * disc, lambda = Vz + v; blades that see this flow in axial climb do so at the climb speed
 * V* = lambda - vh2/lambda, so the axial reader is asked there. Edgewise speed then adds to thrust and profile
 * drag by the mean-square factors above.
 *
 * V* is below zero at small tilt, where axial momentum theory has no solution: there the reader is reflected about
 * hover, value(-V) = 2 value(0) - value(V), good to second order. Valid to an advance ratio near 0.3, marked out beyond
 * 0.5. No hub moments, no tip Mach of the advancing blade, no wake of one rotor on another. An azimuth-averaged
 * blade-element rotor can take its place as `ObliqueRotor`.
 */
export const glauertRotor: ObliqueRotor = (rotor, request) => {
  const { thrust, axialSpeed, edgewiseSpeed, airDensity, diameter, thrustScale, torqueScale } = request;
  const disc = (Math.PI / 4) * diameter * diameter;
  const hoverSpeed = Math.sqrt(thrust / (2 * airDensity * disc));
  const induced = glauertInducedSpeed(hoverSpeed, edgewiseSpeed, axialSpeed);
  const through = axialSpeed + induced;
  const equivalent = through - (hoverSpeed * hoverSpeed) / through;
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  const read = (angularSpeed: number): void => {
    rotor(angularSpeed, Math.abs(equivalent), loads);
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
  const short = (angularSpeed: number): number => {
    read(angularSpeed);
    return loads.thrust * thrustScale * (1 + THRUST_GROWTH * advanceSquare(angularSpeed)) - thrust;
  };
  const start = Math.max(request.start || 2500, slowest);
  const angularSpeed = secantRoot(short, slowest, FASTEST, start);
  const miss = short(angularSpeed);
  if (!(Math.abs(miss) <= 1e-8 * thrust)) {
    return noSolution(
      miss > 0
        ? `at ${edgewiseSpeed.toFixed(1)} m/s edgewise the propeller turns too slowly for its advance ratio (above ${LARGEST_ADVANCE})`
        : `the propeller cannot give ${thrust.toFixed(2)} N at any speed`,
    );
  }
  const mu2 = advanceSquare(angularSpeed);
  const axialTorque = loads.torque * torqueScale;
  const useful = (loads.thrust * thrustScale * through) / angularSpeed;
  const profileTorque = Math.max(axialTorque - useful, 0);
  const tip = 0.5 * angularSpeed * diameter;
  return solved({
    angularSpeed,
    torque: (thrust * through) / angularSpeed + (axialTorque - useful) + profileTorque * mu2,
    inPlaneForce: ((PROFILE_GROWTH - 1) * profileTorque * angularSpeed * edgewiseSpeed) / (tip * tip),
    inducedSpeed: induced,
  });
};
