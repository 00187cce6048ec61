import type { Matrix3, Vector3 } from '../../numerics/vector3.ts';
import { type Branch, type Circuit, circuitOf, motorSide } from '../circuit.ts';
import type { BarDrag } from '../forward/bodyDrag.ts';
import type { ObliqueRotor } from '../forward/edgewise.ts';
import { glauertInducedSpeed } from '../forward/glauert.ts';
import { ringDrag } from '../forward/ringDrag.ts';
import type { HoverTrim } from '../hoverTrim.ts';
import type { FlightModel, Levers, ObliqueRead, RotorRead } from '../types.ts';
import { COAXIAL_WAKE, coaxialCover, inducedSpeed } from '../wake.ts';
import { obliqueRead } from './obliqueRead.ts';
import type { SimulationModel } from './types.ts';

/** What the simulation needs over and above a flight model. */
export interface FlightBody {
  /** About the centre of gravity [kg m2]. */
  readonly inertia: Matrix3;
  /** Drag coefficient times area seen from ahead, from the side, from above [m2]. */
  readonly dragArea: Vector3;
  /** See `SimulationModel`. */
  readonly bars?: readonly BarDrag[];
  /** Where that drag acts [m]; the centre of gravity when absent. */
  readonly dragCentre?: Vector3;
  /** In-plane drag of a rotor over its thrust and edgewise speed [s/m]. */
  readonly inPlaneDragPerThrust: number;
}

/**
 * The same aircraft for the simulation: same rotors, motors, leads and download. The bus is held at one
 * voltage; a lower coaxial rotor stands in the wake that its upper one has at the hover's thrust.
 *
 * @param oblique when given, rotors answer in edgewise flow, for forward flight: each by its station's own reader, or where
 * it has none by this one, at many times the work.
 * @param hover from `hoverTrim`
 * @param busVoltage [V], as from `reserveOnBus`
 */
export function simulationModel(
  flight: FlightModel,
  levers: Levers,
  hover: HoverTrim,
  body: FlightBody,
  busVoltage: number,
  oblique?: ObliqueRotor,
): SimulationModel {
  const circuit = circuitOf(flight, levers);
  return {
    mass: circuit.weight / flight.gravity,
    gravity: flight.gravity,
    centreOfGravity: flight.centreOfGravity,
    airDensity: flight.airDensity,
    ...body,
    rotors: flight.stations.map((station, i) => {
      const branch = circuit.branches[i] as Branch;
      const speed = hover.load.angularSpeed[i] ?? 0;
      const wake = wakeOver(circuit, branch, hover);
      const rotor = scaledRotor(branch, wake);
      const { inPlaneScale } = branch;
      const disc = { diameter: station.propDiameter, airDensity: flight.airDensity, inPlaneScale };
      return {
        position: station.position,
        spin: station.spin,
        ...(station.thrustAxis === undefined ? {} : { thrustAxis: station.thrustAxis }),
        rotor,
        ...(oblique === undefined
          ? {}
          : {
              oblique: ringed(
                branch,
                flight.airDensity,
                mappedRead(branch, wake) ?? obliqueRead(oblique, rotor, disc),
              ),
            }),
        downloadShare: 1 - branch.netShare,
        rotatingInertia: station.rotatingInertia,
        drive: {
          kind: 'motor',
          speedConstant: branch.speedConstant,
          resistance: motorSide(branch, speed),
          noLoadTorque: (branch.idleConstant + branch.idleSlope * speed) / branch.speedConstant,
          lowestVoltage: branch.idleDuty * busVoltage,
          highestVoltage: busVoltage,
        },
      };
    }),
  };
}

/** What the upper rotor's wake adds to the axial speed of a lower one [m/s], at an axial and an edgewise speed. */
type Wake = (axialSpeed: number, edgewiseSpeed: number) => number;

function wakeOver(circuit: Circuit, branch: Branch, hover: HoverTrim): Wake {
  const above = circuit.branches[branch.inWakeOf];
  if (above === undefined) return () => 0;
  const hoverSpeed = inducedSpeed(
    hover.load.thrust[branch.inWakeOf] ?? 0,
    0,
    circuit.airDensity,
    above.discArea,
  );
  const { wakeDrop, wakeSize } = branch;
  return (axialSpeed, edgewiseSpeed) => {
    const climb = Math.max(axialSpeed, 0);
    // Without edgewise flow it stays as in hover: what a climb takes from it is small beside the climb.
    const induced = edgewiseSpeed > 0 ? glauertInducedSpeed(hoverSpeed, edgewiseSpeed, climb) : hoverSpeed;
    return COAXIAL_WAKE * induced * coaxialCover(wakeDrop, wakeSize, induced, climb, edgewiseSpeed);
  };
}

const scaledRotor =
  (branch: Branch, wake: Wake): RotorRead =>
  (angularSpeed, axialSpeed, out) => {
    branch.rotor(angularSpeed, axialSpeed + wake(axialSpeed, 0), out);
    out.thrust *= branch.thrustScale;
    out.torque *= branch.torqueScale;
  };

/** With the drag of the air that a ring turns. */
function ringed(branch: Branch, airDensity: number, read: ObliqueRead): ObliqueRead {
  if (!(branch.guardTurning > 0)) return read;
  return (angularSpeed, axialSpeed, edgewiseSpeed, out) => {
    read(angularSpeed, axialSpeed, edgewiseSpeed, out);
    const through = Math.max(axialSpeed, 0);
    const hoverSpeed = inducedSpeed(Math.max(out.thrust, 0), 0, airDensity, branch.discArea);
    const induced = glauertInducedSpeed(hoverSpeed, edgewiseSpeed, through);
    const { drag, noseUp } = ringDrag(branch, airDensity, through, induced, edgewiseSpeed);
    out.inPlaneForce += drag;
    out.momentAftUp -= noseUp;
  };
}

/** The station's own oblique reader under the levers. */
function mappedRead({ oblique, ...branch }: Branch, wake: Wake): ObliqueRead | undefined {
  if (oblique === undefined) return undefined;
  return (angularSpeed, axialSpeed, edgewiseSpeed, out) => {
    oblique(angularSpeed, axialSpeed + wake(axialSpeed, edgewiseSpeed), edgewiseSpeed, out);
    const pushed = (branch.inPlaneScale - 1) * out.inPlaneForce;
    out.thrust *= branch.thrustScale;
    out.torque = out.torque * branch.torqueScale - (pushed * edgewiseSpeed) / Math.max(angularSpeed, 1);
    out.inPlaneForce += pushed;
  };
}
