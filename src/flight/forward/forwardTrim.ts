import type { DragAreas } from '../../airframe/types.ts';
import { type Outcome, solved } from '../../numerics/outcome.ts';
import { secantRoot } from '../../numerics/secantRoot.ts';
import type { Branch, Circuit } from '../circuit.ts';
import { type HoverTrim, totalNet } from '../hoverTrim.ts';
import { copyStation, emptyLoad, type Load } from '../load.ts';
import type { ObliqueRotor, ObliqueState } from './edgewise.ts';

/** An aircraft in still air, ready to be asked at many speeds. */
export interface ForwardCraft {
  readonly circuit: Circuit;
  readonly trim: HoverTrim;
  /** Of body, arms, pack, camera: everything but the turning propellers. */
  readonly drag: DragAreas;
  readonly dragScale: number;
  readonly oblique: ObliqueRotor;
}

/** Level flight at a speed, motors turning as needed, whatever feeds them. */
export interface ForwardTrim {
  /** Through the air [m/s]. */
  readonly speed: number;
  /** Nose down, the thrust leaning forward [rad], 0 to pi/2. */
  readonly tilt: number;
  /** Net of download, all motors [N]. */
  readonly thrust: number;
  /** Drag of the body along its own x axis [N]. */
  readonly bodyDrag: number;
  /** In-plane drag of all propellers [N]. */
  readonly rotorDrag: number;
  /** Push of the air on the top of the tilted body, against the thrust [N]. */
  readonly download: number;
  readonly load: Load;
  /** One a station. */
  readonly rotors: readonly ObliqueState[];
}

/**
 * Steady level flight. In the tilted aircraft's axes, with q = rho V2 / 2:
 *
 *   forward   W sin(tilt) = q cos2(tilt) CdA_front + rotor in-plane drag
 *   upward    T = W cos(tilt) + q sin2(tilt) CdA_top
 *
 * Drag is built up area by area along the body's axes (Hoerner, Fluid-Dynamic Drag, 1965, cross-flow principle).
 * Each motor keeps its share of the hover trim: moments of drag and in-plane forces about the centre of gravity, and
 * the front rotors' wake on the rear ones, are left out at this depth. The left side rises and the right falls with
 * tilt, so there is one root.
 *
 * @param speed through the air [m/s], >= 0
 */
export function forwardTrim(craft: ForwardCraft, speed: number): Outcome<ForwardTrim> {
  const { circuit, drag, dragScale } = craft;
  const pressure = 0.5 * circuit.airDensity * speed * speed * dragScale;
  const front = pressure * drag.front.area * drag.front.coefficient;
  const top = pressure * drag.top.area * drag.top.coefficient;
  const load = emptyLoad(circuit.branches.length);
  let latest: Outcome<RotorSet> = turnRotors(craft, circuit.weight, 0, 0, load);
  let solvable: RotorSet | undefined;
  const lacking = (tilt: number): number => {
    const sine = Math.sin(tilt);
    const cosine = Math.cos(tilt);
    const thrust = circuit.weight * cosine + top * sine * sine;
    latest = turnRotors(craft, thrust, speed * sine, speed * cosine, load);
    if (latest.ok) solvable = latest.value;
    // A rotor without a solution still leaves a steady way towards the tilt that the body asks.
    const rotorDrag = latest.ok ? latest.value.inPlaneForce : (solvable?.inPlaneForce ?? 0);
    return circuit.weight * sine - front * cosine * cosine - rotorDrag;
  };
  const tilt = speed > 0 ? secantRoot(lacking, 0, Math.PI / 2, Math.atan2(front, circuit.weight)) : 0;
  lacking(tilt);
  if (!latest.ok) return latest;
  const sine = Math.sin(tilt);
  return solved({
    speed,
    tilt,
    thrust: circuit.weight * Math.cos(tilt) + top * sine * sine,
    bodyDrag: front * Math.cos(tilt) ** 2,
    rotorDrag: latest.value.inPlaneForce,
    download: top * sine * sine,
    load,
    rotors: latest.value.rotors,
  });
}

interface RotorSet {
  readonly rotors: readonly ObliqueState[];
  readonly inPlaneForce: number;
}

/** Turns every rotor for its share of a total net thrust, and fills the load. */
function turnRotors(
  craft: ForwardCraft,
  netThrust: number,
  axialSpeed: number,
  edgewiseSpeed: number,
  load: Load,
): Outcome<RotorSet> {
  const { circuit, trim } = craft;
  const share = netThrust / totalNet(circuit, trim.load);
  const rotors: ObliqueState[] = [];
  let inPlaneForce = 0;
  for (let i = 0; i < circuit.branches.length; i++) {
    const branch = circuit.branches[i] as Branch;
    const thrust = (trim.load.thrust[i] as number) * share;
    const twin = branch.sameAs;
    const same = twin < i && load.thrust[twin] === thrust ? rotors[twin] : undefined;
    if (same !== undefined) {
      copyStation(load, twin, i);
      rotors.push(same);
    } else {
      const found = turnOne(craft, branch, i, thrust, axialSpeed, edgewiseSpeed, load);
      if (!found.ok) return found;
      rotors.push(found.value);
    }
    inPlaneForce += rotors[i]?.inPlaneForce ?? 0;
  }
  return solved({ rotors, inPlaneForce });
}

function turnOne(
  craft: ForwardCraft,
  branch: Branch,
  i: number,
  thrust: number,
  axialSpeed: number,
  edgewiseSpeed: number,
  load: Load,
): Outcome<ObliqueState> {
  const { circuit, oblique } = craft;
  const idle: ObliqueState = { angularSpeed: 0, torque: 0, inPlaneForce: 0, inducedSpeed: 0 };
  // The lower rotor of a coaxial pair keeps the wake it has in hover: its own flow is blown away less at speed.
  const wake = branch.inWakeOf < 0 ? 0 : (craft.trim.load.axialSpeed[i] as number);
  const found =
    thrust > 0
      ? oblique(branch.rotor, {
          thrust,
          axialSpeed: axialSpeed + wake,
          edgewiseSpeed,
          airDensity: circuit.airDensity,
          diameter: Math.sqrt((4 / Math.PI) * branch.discArea),
          thrustScale: branch.thrustScale,
          torqueScale: branch.torqueScale,
        })
      : solved(idle);
  if (!found.ok) return found;
  const { angularSpeed, torque } = found.value;
  const current =
    angularSpeed > 0
      ? torque * branch.speedConstant + branch.idleConstant + branch.idleSlope * angularSpeed
      : 0;
  load.angularSpeed[i] = angularSpeed;
  load.thrust[i] = thrust;
  load.torque[i] = torque;
  load.axialSpeed[i] = axialSpeed + wake;
  load.current[i] = current;
  load.voltage[i] = angularSpeed / branch.speedConstant + current * branch.motorSideResistance;
  return found;
}
