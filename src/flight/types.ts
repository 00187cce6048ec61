import type { ControllerModel, MotorModel, PackModel, WireModel } from '../drive/types.ts';
import type { Vector3 } from '../numerics/vector3.ts';
import type { GuardEffect } from '../rotor/guard.ts';

/**
 * Axes as everywhere: x forward, y right, z down, origin at the layout's motor centre. SI.
 * Everything is computed for a model under levers: `(model, levers)`.
 */

/** What a rotor gives and asks; written by a reader, so that hot loops allocate nothing. */
export interface RotorLoads {
  /** [N], along the thrust axis */
  thrust: number;
  /** Asked of the shaft [N m] */
  torque: number;
}

/**
 * A propeller in the day's air: angular speed [rad/s], axial speed [m/s, positive climbing].
 * Over the angular speeds in use thrust and torque must rise with angular speed at axialSpeed 0.
 */
export type RotorRead = (angularSpeed: number, axialSpeed: number, out: RotorLoads) => void;

/**
 * As `RotorLoads`, in oblique flow. 'Aft' is where the flow along the disc goes; the advancing side lies right of the
 * way for a rotor that turns anticlockwise seen from above.
 */
export interface ObliqueLoads extends RotorLoads {
  /** In the disc, aft [N] */
  inPlaneForce: number;
  /** In the disc, to the advancing side [N] */
  sideForce: number;
  /** On the hub, lifting the advancing side [N m] */
  momentAdvancingUp: number;
  /** On the hub, lifting the aft side [N m] */
  momentAftUp: number;
}

/** To be filled by an `ObliqueRead`. */
export const emptyObliqueLoads = (): ObliqueLoads => ({
  thrust: 0,
  torque: 0,
  inPlaneForce: 0,
  sideForce: 0,
  momentAdvancingUp: 0,
  momentAftUp: 0,
});

/** Angular speed [rad/s], axial speed [m/s, positive climbing], edgewise speed [m/s, >= 0]. */
export type ObliqueRead = (
  angularSpeed: number,
  axialSpeed: number,
  edgewiseSpeed: number,
  out: ObliqueLoads,
) => void;

/** A motor with its propeller, controller and leads, and its place. */
export interface Station {
  /** In words: `front left`. */
  readonly name: string;
  /** Centre of the prop disc [m]. */
  readonly position: Vector3;
  /** +1 turns clockwise seen from above, -1 counterclockwise. The airframe feels the opposite. */
  readonly spin: 1 | -1;
  /** Unit vector of the thrust; straight up (0, 0, -1) when absent. */
  readonly thrustAxis?: Vector3;
  readonly rotor: RotorRead;
  /** The same propeller flying along its disc; a closed form stands in for it when absent (`forward/edgewise.ts`). */
  readonly oblique?: ObliqueRead;
  /** [m] */
  readonly propDiameter: number;
  /** Share of the thrust lost on the arm and guard under or over the disc, 0 to 0.5. */
  readonly downloadShare: number;
  /** Polar moment of everything that turns: bell and propeller [kg m2]. */
  readonly rotatingInertia: number;
  readonly motor: MotorModel;
  readonly controller: ControllerModel;
  /** Bus to controller, direct current. */
  readonly supplyLead: WireModel;
  /** Controller to motor: two of the three leads in series, `length` counting both. */
  readonly motorLead: WireModel;
  /** Index of the station whose wake it works in: the upper one of a coaxial pair. */
  readonly inWakeOf?: number;
  /** The ring round it, from `guardEffect`; open when absent. */
  readonly guard?: GuardEffect;
  /** A servo tilts it about the x axis up to this angle either way [rad], to yaw (tricopter tail). */
  readonly servoTilt?: number;
}

/** One aircraft on one day, ready to fly. */
export interface FlightModel {
  readonly stations: readonly Station[];
  readonly pack: PackModel;
  /** Cell temperature at take-off [K]. */
  readonly packTemperature: number;
  /** Pack to bus. */
  readonly mainWire: WireModel;
  /** Pack connector, both contacts [ohm]. */
  readonly connectorResistance: number;
  /** Drawn from the bus by flight controller, video, receiver, lights, regulators' losses included [W]. */
  readonly avionicsPower: number;
  /** All-up, with pack [kg]. */
  readonly mass: number;
  /** [m] */
  readonly centreOfGravity: Vector3;
  /** [m/s2] */
  readonly gravity: number;
  /** [kg/m3], for washes and momentum; the rotor reader has its own air. */
  readonly airDensity: number;
  /** Outside air [K]. */
  readonly airTemperature: number;
  /** Share of the charge to land with, 0 to 0.9. */
  readonly landingReserve: number;
}

/** Scale factors on what is least certain, all 1 in `neutralLevers`; perturbed one at a time for bands. */
export interface Levers {
  /** Thrust of every rotor at given angular speed. */
  readonly thrustScale: number;
  /** Torque of every rotor at given angular speed. */
  readonly torqueScale: number;
  /** Winding resistance of every motor. */
  readonly windingResistanceScale: number;
  /** What switched currents lose at speed beside it. */
  readonly runningResistanceScale: number;
  readonly noLoadCurrentScale: number;
  readonly speedConstantScale: number;
  /** Resistance of every controller. */
  readonly controllerResistanceScale: number;
  /** What every controller loses beside its resistance: logic and switching. */
  readonly controllerIdleScale: number;
  /** Duty of every controller at no throttle: a setting. */
  readonly idleDutyScale: number;
  readonly packResistanceScale: number;
  readonly packCapacityScale: number;
  readonly wireResistanceScale: number;
  readonly avionicsPowerScale: number;
  readonly massScale: number;
  /** Heat that a motor sheds at a given temperature. */
  readonly coolingScale: number;
  /** Heat that passes from winding to case at a given difference of temperature. */
  readonly windingContactScale: number;
  /** Where losses at speed turn to heat: at 1 all in the iron, at 1.4 four tenths of them in the winding, at 2 all. */
  readonly speedLossPlaceScale: number;
  /** Heat that winding and case of every motor take up for a kelvin: how slowly they warm. */
  readonly heatCapacityScale: number;
  /** Thrust that arms and guards take away. */
  readonly downloadScale: number;
  /** Power above hover that the pilot's style asks. */
  readonly styleScale: number;
  /** Drag of the airframe in forward flight. */
  readonly dragScale: number;
  /** In-plane force that comes with lift on every rotor in edgewise flow. */
  readonly inPlaneScale: number;
  /** Of the momentum that guard rings take from the air they turn. */
  readonly guardTurningScale: number;
}

export const neutralLevers: Levers = {
  thrustScale: 1,
  torqueScale: 1,
  windingResistanceScale: 1,
  runningResistanceScale: 1,
  noLoadCurrentScale: 1,
  speedConstantScale: 1,
  controllerResistanceScale: 1,
  controllerIdleScale: 1,
  idleDutyScale: 1,
  packResistanceScale: 1,
  packCapacityScale: 1,
  wireResistanceScale: 1,
  avionicsPowerScale: 1,
  massScale: 1,
  coolingScale: 1,
  windingContactScale: 1,
  speedLossPlaceScale: 1,
  heatCapacityScale: 1,
  downloadScale: 1,
  styleScale: 1,
  dragScale: 1,
  inPlaneScale: 1,
  guardTurningScale: 1,
};

/** One motor at a coupled operating point. Powers [W]. */
export interface StationPoint {
  /** [rad/s] */
  readonly angularSpeed: number;
  /** Of the rotor [N], before download on the arm. */
  readonly thrust: number;
  /** What the airframe gets of it [N]. */
  readonly netThrust: number;
  /** [N m] */
  readonly torque: number;
  /** Controller duty, 0 to 1. */
  readonly duty: number;
  /** Pilot's throttle that gives the duty, 0 to 1; below 0 when the idle duty is already more. */
  readonly throttle: number;
  /** Motor current [A]. */
  readonly motorCurrent: number;
  /** At the motor's terminals [V]. */
  readonly motorVoltage: number;
  /** Drawn by the controller from the bus [A]. */
  readonly supplyCurrent: number;
  /** At the controller's input [V]. */
  readonly supplyVoltage: number;
  readonly shaftPower: number;
  readonly copperLoss: number;
  readonly ironLoss: number;
  readonly controllerLoss: number;
  /** In supply and motor leads. */
  readonly leadLoss: number;
}

/**
 * All motors on one battery at one moment. Exactly:
 * chemicalPower = sum of shaftPower and of every loss + avionicsPower + mainLoss + packLoss.
 */
export interface OperatingPoint {
  readonly stations: readonly StationPoint[];
  /** At the power bus [V]. */
  readonly busVoltage: number;
  /** At the pack's terminals [V]. */
  readonly packVoltage: number;
  /** [A] */
  readonly packCurrent: number;
  /** Open-circuit voltage x current [W]. */
  readonly chemicalPower: number;
  readonly packLoss: number;
  /** Main wire and connector [W]. */
  readonly mainLoss: number;
  readonly avionicsPower: number;
  /** Net of download, all motors [N]. */
  readonly netThrust: number;
}

/** Share of the flying time at a demand; demands beyond the aircraft are flown at full throttle. */
export type StyleBin = { readonly share: number } & (
  | {
      /** Total thrust over weight. */
      readonly thrustToWeight: number;
    }
  | {
      /** Same throttle on every motor, 0 to 1. */
      readonly throttle: number;
    }
);

/** How somebody flies, as a histogram. */
export interface Style {
  readonly name: string;
  /** Shares add to 1. */
  readonly bins: readonly StyleBin[];
  readonly source: string;
}
