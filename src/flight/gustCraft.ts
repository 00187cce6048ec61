import { type Outcome, solved } from '../numerics/outcome.ts';
import type { Branch } from './circuit.ts';
import { bluffAreas, writeBodyForce } from './forward/bodyDrag.ts';
import type { ForwardCraft } from './forward/forwardTrim.ts';
import { withRing } from './forward/ringDrag.ts';
import { obliqueAnswer } from './forward/turnRotors.ts';
import { axialThrustSlope, type GustCraft } from './gustJolt.ts';

/** Edgewise speed at which the rotors' in-plane drag is read and taken as a straight line from rest [m/s]. */
const READ_AT = 5;

/**
 * The same aircraft as gusts find it: drag areas, in-plane drag and axial slope of the rotors about hover.
 *
 * @param gravity [m/s2]
 * @returns words when a rotor has no answer edgewise
 */
export function gustCraft(craft: ForwardCraft, gravity: number): Outcome<GustCraft> {
  const { circuit, trim, dragScale } = craft;
  const bluff = bluffAreas(craft.drag);
  // At unit speed in air of density 2 the force is the drag area itself.
  const areaAlong = (u: number, w: number): number => {
    const force = new Float64Array(3);
    writeBodyForce(bluff, craft.bars, u, 0, w, 2, force);
    return Math.abs(u * (force[0] as number) + w * (force[2] as number)) * dragScale;
  };
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
    dragArea: areaAlong(1, 0),
    topDragArea: areaAlong(0, 1),
    rotorDragSlope: rotorDrag / READ_AT,
    axialThrustSlope: Math.max(0, slope),
  });
}

const diameterOf = (branch: Branch): number => Math.sqrt((4 * branch.discArea) / Math.PI);
