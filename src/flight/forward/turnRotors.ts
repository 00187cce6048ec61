import { type Branch, type Circuit, motorSide } from '../circuit.ts';
import { copyStation, type Load } from '../load.ts';
import { COAXIAL_WAKE, coaxialCover, inducedSpeed } from '../wake.ts';
import type { ObliqueAnswer, ObliqueRequest, ObliqueRotor, ObliqueState, OutOfReach } from './edgewise.ts';
import { glauertInducedSpeed } from './glauert.ts';
import { mappedRotor } from './mappedRotor.ts';
import { withRing } from './ringDrag.ts';

/** All rotors in one oblique flow. */
export interface RotorSet {
  /** One a station. */
  readonly rotors: readonly ObliqueState[];
  /** Sum of the in-plane drag [N]. */
  readonly inPlaneForce: number;
  /** Why one of them cannot; it then stands at its slowest or fastest. Absent when all can. */
  readonly whyNot?: OutOfReach;
}

interface Rotors {
  readonly circuit: Circuit;
  readonly oblique: ObliqueRotor;
}

/** Descent in upwash over hover induced speed that momentum theory still carries. */
export const MOST_UPWASH = 0.4;

const STOPPED: ObliqueState = {
  angularSpeed: 0,
  torque: 0,
  inPlaneForce: 0,
  sideForce: 0,
  momentAdvancingUp: 0,
  momentAftUp: 0,
  inducedSpeed: 0,
};

/**
 * Turns every rotor for a net thrust in oblique flow, and fills the load with what its motor needs.
 *
 * @param netThrusts one a station [N], >= 0; at 0 it idles at the speed that gives none, in still air it stops
 * @param axialSpeed through the discs from above [m/s]
 * @param edgewiseSpeed along the discs [m/s]
 * @param wash what other rotors' wakes add to the axial speed, one a station [m/s]
 */
export function turnRotors(
  craft: Rotors,
  netThrusts: ArrayLike<number>,
  axialSpeed: number,
  edgewiseSpeed: number,
  wash: ArrayLike<number>,
  load: Load,
): RotorSet {
  const { circuit } = craft;
  const rotors: ObliqueState[] = [];
  let inPlaneForce = 0;
  let whyNot: OutOfReach | undefined;
  for (const i of circuit.order) {
    const branch = circuit.branches[i] as Branch;
    const thrust = (netThrusts[i] as number) / branch.netShare;
    const twin = branch.sameAs;
    const alike = twin < i && load.thrust[twin] === thrust && wash[twin] === wash[i];
    const same = alike ? rotors[twin] : undefined;
    if (same !== undefined) {
      copyStation(load, twin, i);
      rotors[i] = same;
    } else {
      const washed = axialSpeed + (wash[i] as number);
      const through =
        washed + coaxialWash(branch, rotors[branch.inWakeOf]?.inducedSpeed, washed, edgewiseSpeed);
      const found = turnOne(craft, branch, i, thrust, through, edgewiseSpeed, load);
      if (!found.ok) whyNot ??= found;
      rotors[i] = found.ok ? found.value : found.nearest;
    }
    inPlaneForce += rotors[i]?.inPlaneForce ?? 0;
  }
  return whyNot === undefined ? { rotors, inPlaneForce } : { rotors, inPlaneForce, whyNot };
}

/**
 * What the wake of the upper rotor of a coaxial pair adds to the axial speed of the lower one [m/s].
 *
 * @param inducedAbove induced speed of the upper one at its disc [m/s]; absent for a rotor in nobody's wake
 */
export function coaxialWash(
  branch: Branch,
  inducedAbove: number | undefined,
  axialSpeed: number,
  edgewiseSpeed: number,
): number {
  if (inducedAbove === undefined) return 0;
  const { wakeDrop, wakeSize } = branch;
  const cover = coaxialCover(wakeDrop, wakeSize, inducedAbove, axialSpeed, edgewiseSpeed);
  return COAXIAL_WAKE * cover * inducedAbove;
}

function turnOne(
  craft: Rotors,
  branch: Branch,
  i: number,
  thrust: number,
  axialSpeed: number,
  edgewiseSpeed: number,
  load: Load,
): ObliqueAnswer {
  const { circuit } = craft;
  const hoverSpeed = inducedSpeed(thrust, 0, circuit.airDensity, branch.discArea);
  const through = Math.max(axialSpeed, -MOST_UPWASH * hoverSpeed);
  const found: ObliqueAnswer =
    thrust > 0 || through > 0 || edgewiseSpeed > 0
      ? obliqueAnswer(craft.oblique, branch, {
          thrust,
          axialSpeed: through,
          edgewiseSpeed,
          airDensity: circuit.airDensity,
          diameter: Math.sqrt((4 / Math.PI) * branch.discArea),
          thrustScale: branch.thrustScale * fadeOf(branch.guardScale, hoverSpeed, through, edgewiseSpeed),
          torqueScale: branch.torqueScale,
          inPlaneScale: branch.inPlaneScale,
          start: load.angularSpeed[i] as number,
        })
      : { ok: true, value: STOPPED };
  const { angularSpeed, torque } = found.ok ? found.value : found.nearest;
  const idle = branch.idleConstant + branch.idleSlope * angularSpeed;
  const current = angularSpeed > 0 ? torque * branch.speedConstant + idle : 0;
  load.angularSpeed[i] = angularSpeed;
  load.thrust[i] = thrust;
  load.torque[i] = torque;
  load.axialSpeed[i] = through;
  load.current[i] = current;
  load.voltage[i] = angularSpeed / branch.speedConstant + current * motorSide(branch, angularSpeed);
  const ringed = (state: ObliqueState) => withRing(state, branch, circuit, through, edgewiseSpeed);
  return found.ok ? { ok: true, value: ringed(found.value) } : { ...found, nearest: ringed(found.nearest) };
}

/** By the station's own oblique reader where it has one, by `otherwise` where only its axial map is known. */
export const obliqueAnswer = (
  otherwise: ObliqueRotor,
  branch: Branch,
  request: ObliqueRequest,
): ObliqueAnswer =>
  branch.oblique === undefined ? otherwise(branch.rotor, request) : mappedRotor(branch.oblique, request);

/**
 * What is left of a ring's thrust scale at speed, over its hover's: a gain fades as (v/vh)2, the share of the flow
 * through the disc that the rotor itself makes, since a ring only helps to draw that in (ours, no source); a loss stays.
 */
export function fadeOf(
  guardScale: number,
  hoverSpeed: number,
  axialSpeed: number,
  edgewiseSpeed: number,
): number {
  if (!(guardScale > 1)) return 1;
  const induced = glauertInducedSpeed(hoverSpeed, edgewiseSpeed, axialSpeed);
  const left = hoverSpeed > 0 ? Math.min(1, (induced / hoverSpeed) ** 2) : 1;
  return (1 + (guardScale - 1) * left) / guardScale;
}
