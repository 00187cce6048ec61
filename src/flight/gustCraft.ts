import { type Outcome, solved } from '../numerics/outcome.ts';
import type { Branch } from './circuit.ts';
import { bluffAreas, writeBodyForce } from './forward/bodyDrag.ts';
import type { ForwardCraft } from './forward/forwardTrim.ts';
import { withRing } from './forward/ringDrag.ts';
import { obliqueAnswer } from './forward/turnRotors.ts';
import type { RotorLoads, RotorRead } from './types.ts';

/** One craft as turbulence finds it, linear about its hover: see `holdInGusts`. */
export interface GustCraft {
  /** [kg], > 0 */
  readonly mass: number;
  /** [m/s2], > 0 */
  readonly gravity: number;
  /** [kg/m3] */
  readonly airDensity: number;
  /** Drag coefficient times area facing the wind [m2], >= 0. */
  readonly dragArea: number;
  /** In-plane drag of all rotors over edgewise speed at hover [N s/m], >= 0. */
  readonly rotorDragSlope: number;
  /** Thrust of all rotors lost per speed along the thrust at hover [N s/m], >= 0: see `axialThrustSlope`. */
  readonly axialThrustSlope: number;
}

/** Edgewise speed at which the rotors' in-plane drag is read and taken as a straight line from rest [m/s]. */
const READ_AT = 5;

/**
 * The same aircraft as turbulence finds it: drag area, in-plane drag and axial slope of the rotors about hover.
 *
 * @param gravity [m/s2]
 * @returns words when a rotor has no answer edgewise
 */
export function gustCraft(craft: ForwardCraft, gravity: number): Outcome<GustCraft> {
  const { circuit, trim, dragScale } = craft;
  // At unit speed in air of density 2 the force is the drag area itself.
  const force = new Float64Array(3);
  writeBodyForce(bluffAreas(craft.drag), craft.bars, 1, 0, 0, 2, force);
  let rotorDrag = 0;
  let slope = 0;
  for (const [i, branch] of circuit.branches.entries()) {
    const thrust = trim.load.thrust[i] ?? 0;
    if (!(thrust > 0)) continue;
    const about = trim.load.axialSpeed[i] ?? 0;
    slope +=
      branch.netShare *
      branch.thrustScale *
      axialThrustSlope(branch.rotor, trim.load.angularSpeed[i] ?? 0, about);
    const edgewise = obliqueAnswer(craft.oblique, branch, {
      thrust,
      axialSpeed: Math.max(0, about),
      edgewiseSpeed: READ_AT,
      airDensity: circuit.airDensity,
      diameter: diameterOf(branch),
      thrustScale: branch.thrustScale,
      torqueScale: branch.torqueScale,
      inPlaneScale: branch.inPlaneScale,
    });
    if (!edgewise.ok) return edgewise;
    rotorDrag += withRing(edgewise.value, branch, circuit, Math.max(0, about), READ_AT).inPlaneForce;
  }
  return solved({
    mass: circuit.weight / gravity,
    gravity,
    airDensity: circuit.airDensity,
    dragArea: -(force[0] as number) * dragScale,
    rotorDragSlope: rotorDrag / READ_AT,
    axialThrustSlope: Math.max(0, slope),
  });
}

/**
 * Thrust of one rotor lost per speed along its thrust, at fixed rotor speed [N s/m], by central
 * difference over +-`step`.
 *
 * @param angularSpeed [rad/s]
 * @param about axial speed at the disc [m/s]
 * @param step [m/s], > 0
 */
export function axialThrustSlope(rotor: RotorRead, angularSpeed: number, about = 0, step = 0.25): number {
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  rotor(angularSpeed, about - step, loads);
  const descending = loads.thrust;
  rotor(angularSpeed, about + step, loads);
  return (descending - loads.thrust) / (2 * step);
}

const diameterOf = (branch: Branch): number => Math.sqrt((4 * branch.discArea) / Math.PI);
