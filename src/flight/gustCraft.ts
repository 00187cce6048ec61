import { type Outcome, solved } from '../numerics/outcome.ts';
import type { Branch } from './circuit.ts';
import type { ForwardCraft } from './forward/forwardTrim.ts';
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
  const { circuit, trim, drag, dragScale } = craft;
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
    const edgewise = craft.oblique(branch.rotor, {
      thrust,
      axialSpeed: Math.max(0, about),
      edgewiseSpeed: READ_AT,
      airDensity: circuit.airDensity,
      diameter: diameterOf(branch),
      thrustScale: branch.thrustScale,
      torqueScale: branch.torqueScale,
    });
    if (!edgewise.ok) return edgewise;
    rotorDrag += edgewise.value.inPlaneForce;
  }
  return solved({
    mass: circuit.weight / gravity,
    gravity,
    airDensity: circuit.airDensity,
    dragArea: drag.front.area * drag.front.coefficient * dragScale,
    topDragArea: drag.top.area * drag.top.coefficient * dragScale,
    rotorDragSlope: rotorDrag / READ_AT,
    axialThrustSlope: Math.max(0, slope),
  });
}

const diameterOf = (branch: Branch): number => Math.sqrt((4 * branch.discArea) / Math.PI);
