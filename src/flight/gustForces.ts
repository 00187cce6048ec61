import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { Branch } from './circuit.ts';
import { bluffAreas, writeBodyForce } from './forward/bodyDrag.ts';
import type { ForwardCraft, ForwardTrim } from './forward/forwardTrim.ts';
import { glauertInducedSpeed } from './forward/glauert.ts';
import { ringDrag } from './forward/ringDrag.ts';
import { coaxialWash, fadeOf, MOST_UPWASH } from './forward/turnRotors.ts';
import { obliqueRead } from './simulation/obliqueRead.ts';
import { emptyObliqueLoads, type ObliqueRead } from './types.ts';
import { inducedSpeed } from './wake.ts';
import { writeWash } from './wakes/wakeTable.ts';

/** Forces of the air on a craft that leans, along its own axes [N]. */
export interface AirForces {
  /** Of all rotors along the thrust, net of download. */
  readonly lift: number;
  /** Of all rotors along the discs, aft; rings' among it. */
  readonly rotorDrag: number;
  /** Of body and bars, aft. */
  readonly bodyDrag: number;
  /** Of body and bars along the thrust, up. */
  readonly bodyLift: number;
}

/**
 * Forces on a craft that keeps the attitude and the rotor speeds of a trim in some other flow: rotors by their oblique maps, or
 * the closed form where there is none, rings and body as in the trim. Wakes are those of the trim's thrusts, swept by the new flow.
 *
 * @param forward through the air, level [m/s]; below 0 it is blown from behind
 * @param climb through the air [m/s]; below 0 in an updraught
 * @returns words when a rotor has no answer at its speed in that flow
 */
export function airForces(
  craft: ForwardCraft,
  trim: ForwardTrim,
  forward: number,
  climb: number,
): Outcome<AirForces> {
  const { circuit } = craft;
  const [sine, cosine] = [Math.sin(trim.tilt), Math.cos(trim.tilt)];
  const along = forward * cosine - climb * sine;
  const through = forward * sine + climb * cosine;
  const force = new Float64Array(3);
  const density = circuit.airDensity * craft.dragScale;
  writeBodyForce(bluffAreas(craft.drag), craft.bars, along, 0, -through, density, force);
  const edgewise = Math.abs(along);
  const { axial, induced } = flowAt(craft, trim, through, edgewise);
  const loads = emptyObliqueLoads();
  let lift = 0;
  let drag = 0;
  let before = -1;
  for (const i of circuit.order) {
    const branch = circuit.branches[i] as Branch;
    const speed = trim.load.angularSpeed[i] as number;
    if (!(speed > 0)) continue;
    const alike =
      before >= 0 &&
      branch.sameAs === circuit.branches[before]?.sameAs &&
      speed === trim.load.angularSpeed[before] &&
      axial[i] === axial[before];
    if (!alike) {
      const fade = fadeOf(branch.guardScale, hoverSpeedOf(craft, trim, i), axial[i] as number, edgewise);
      readerOf(craft, branch, fade)(speed, axial[i] as number, edgewise, loads);
    }
    before = i;
    if (!Number.isFinite(loads.thrust)) {
      return noSolution(
        `the propeller of motor ${i + 1} has no answer in that flow at the speed it turns at`,
      );
    }
    lift += branch.netShare * loads.thrust;
    drag += loads.inPlaneForce;
    if (branch.guardTurning > 0) {
      const [down, own] = [axial[i] as number, induced[i] as number];
      drag += ringDrag(branch, circuit.airDensity, down, own, edgewise).drag;
    }
  }
  return solved({
    lift,
    rotorDrag: along < 0 ? -drag : drag,
    bodyDrag: -(force[0] as number),
    bodyLift: -(force[2] as number),
  });
}

const hoverSpeedOf = ({ circuit }: ForwardCraft, trim: ForwardTrim, i: number): number =>
  inducedSpeed(trim.load.thrust[i] ?? 0, 0, circuit.airDensity, circuit.branches[i]?.discArea ?? 1);

/** Axial speed at every disc, wakes in it, and each rotor's own induced speed [m/s]. */
function flowAt(craft: ForwardCraft, trim: ForwardTrim, through: number, edgewise: number) {
  const { circuit, wakes } = craft;
  const count = circuit.branches.length;
  const wash = trim.wash.slice();
  const axial = new Float64Array(count);
  const induced = new Float64Array(count);
  const settle = (): void => {
    for (const i of circuit.order) {
      const branch = circuit.branches[i] as Branch;
      const washed = through + (wash[i] as number);
      const above = branch.inWakeOf < 0 ? undefined : induced[branch.inWakeOf];
      axial[i] = washed + coaxialWash(branch, above, washed, edgewise);
      const hoverSpeed = hoverSpeedOf(craft, trim, i);
      const carried = Math.max(axial[i] as number, -MOST_UPWASH * hoverSpeed);
      induced[i] = glauertInducedSpeed(hoverSpeed, edgewise, carried);
    }
  };
  settle();
  if (wakes !== undefined) {
    const sources = [...induced].map((own, i) => ({
      inducedSpeed: own,
      throughSpeed: (axial[i] as number) + own,
      edgewiseSpeed: edgewise,
    }));
    writeWash(wakes, sources, wash);
    settle();
  }
  return { axial, induced };
}

/** Thrust and in-plane force of a rotor under the levers, its ring's thrust among them. */
function readerOf({ circuit, oblique }: ForwardCraft, branch: Branch, fade: number): ObliqueRead {
  const { inPlaneScale, rotor } = branch;
  const thrustScale = branch.thrustScale * fade;
  const own = branch.oblique;
  if (own !== undefined) {
    return (angularSpeed, axialSpeed, edgewiseSpeed, out) => {
      own(angularSpeed, axialSpeed, edgewiseSpeed, out);
      out.thrust *= thrustScale;
      out.inPlaneForce *= inPlaneScale;
    };
  }
  const diameter = Math.sqrt((4 / Math.PI) * branch.discArea);
  return obliqueRead(
    oblique,
    (angularSpeed, axialSpeed, out) => {
      rotor(angularSpeed, axialSpeed, out);
      out.thrust *= thrustScale;
      out.torque *= branch.torqueScale;
    },
    { diameter, airDensity: circuit.airDensity, inPlaneScale },
  );
}
