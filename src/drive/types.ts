import type { Trusted } from '../units/trusted.ts';

/**
 * Motor, speed controller, pack and wire as the physics sees them: plain records in SI.
 * Temperatures in kelvin, angular speeds in rad/s, everything direct-current equivalent.
 */

/** A brushless motor by the first-order direct-current equivalent (Drela 2007), with heat. */
export interface MotorModel {
  /** Speed constant K_V [rad/s per V], > 0. Its inverse is the torque constant [N m/A]. */
  readonly speedConstant: number;
  /** Winding resistance between two terminals at `referenceTemperature` [ohm], > 0. */
  readonly resistance: number;
  /**
   * How the effective resistance grows with speed, R (1 + rise x angularSpeed) [s/rad], >= 0: what switched
   * and commutated currents lose beside the copper's direct-current loss. 0 when absent.
   */
  readonly resistanceRise?: number;
  /** Temperature at which `resistance` holds [K]. */
  readonly referenceTemperature: number;
  /** No-load current at `noLoadSpeed` [A], >= 0. */
  readonly noLoadCurrent: number;
  /** [rad/s], > 0 */
  readonly noLoadSpeed: number;
  /**
   * Share of the no-load current at `noLoadSpeed` that grows with speed (eddy currents), 0 to 1;
   * the rest is constant (hysteresis, bearings).
   */
  readonly eddyShare: number;
  readonly heat: MotorHeat;
  readonly limits: MotorLimits;
}

/** Two lumps: the winding, and all the other metal (stator iron, bell, base) called the case. */
export interface MotorHeat {
  /** Heat capacity of the copper winding [J/K], > 0. */
  readonly windingCapacity: number;
  /** Heat capacity of iron, magnets, bell and base [J/K], > 0. */
  readonly caseCapacity: number;
  /** Winding to case [W/K], > 0. */
  readonly windingToCase: number;
  /** Case to still air [W/K], > 0. */
  readonly caseToStillAir: number;
  /** Case to moving air at `washReference` [W/K], > 0; grows as speed to the power `washExponent`. */
  readonly caseToWash: number;
  /** [m/s], > 0 */
  readonly washReference: number;
  /** 0 to 1 */
  readonly washExponent: number;
}

/** A limit that is not known is absent. */
export interface MotorLimits {
  /** Largest current for a burst [A]. */
  readonly current?: number;
  /** Largest electrical power for a burst [W]. */
  readonly power?: number;
  /** Largest winding temperature [K]. */
  readonly windingTemperature: number;
  /** Largest case temperature [K] (magnets). */
  readonly caseTemperature: number;
}

/** A three-phase controller as an averaged step-down converter. */
export interface ControllerModel {
  /** Resistance of the switches in the current's path at working temperature [ohm], >= 0. */
  readonly resistance: number;
  /** Time in which a switch is half on, both edges together [s], >= 0. */
  readonly switchingTime: number;
  /** Pulse frequency [Hz], >= 0. */
  readonly pulseFrequency: number;
  /** Drawn by its logic and gate drivers with the motor off [A], >= 0. */
  readonly idleCurrent: number;
  /** Duty at throttle 0 with motors armed, 0 to 0.2; throttle 1 is duty 1. */
  readonly idleDuty: number;
  /** For as long as it is cooled [A]. */
  readonly continuousCurrent: number;
  /** For about ten seconds [A]. */
  readonly burstCurrent: number;
  /** Largest input voltage [V]. */
  readonly maximumVoltage: number;
}

export type Chemistry = 'LiPo' | 'LiHV' | 'Li-ion';

/** A pack of `series` groups of `parallel` cells. */
export interface PackModel {
  readonly chemistry: Chemistry;
  readonly series: number;
  readonly parallel: number;
  /** Charge between full and the chemistry's empty at low current and 25 degC, new, whole pack [C]. */
  readonly capacity: number;
  /** Of the whole pack, sustained (series and slow part together), at 25 degC, half charge, new [ohm]. */
  readonly resistance: number;
  /** Share of `resistance` that builds up over `polarisationTime` (the RC pair), 0 to 0.8. */
  readonly slowShare: number;
  /** Time constant of the RC pair [s], > 0. */
  readonly polarisationTime: number;
  /** What the cells honestly bear continuously [A], the whole pack. */
  readonly continuousCurrent: number;
  /** Charge cycles behind it, >= 0. */
  readonly cycles: number;
  /** Loaded voltage per cell at which it must be landed [V]. */
  readonly cutOffCellVoltage: number;
  /** Heat capacity of the whole pack [J/K], > 0. */
  readonly heatCapacity: number;
}

/** The state in which a pack is asked for current. */
export interface PackState {
  /** 1 full, 0 empty. */
  readonly charge: number;
  /** Of the cells [K]. */
  readonly temperature: number;
  /** The current it has carried for minutes, whose slow part has built up [A]. Absent: the asked current itself. */
  readonly settledCurrent?: number;
}

/** Thevenin equivalent of a pack in one state: terminal voltage = emf - resistance x current. */
export interface PackSource {
  /** Open-circuit voltage: what the chemistry gives [V]. */
  readonly openCircuit: number;
  /** `openCircuit` less the slow polarisation already built up [V]. */
  readonly emf: number;
  /** [ohm] */
  readonly resistance: number;
}

/** Copper out and back: `length` is of all the conductor that the current passes through. */
export interface WireModel {
  /** Copper cross-section [m2], > 0. */
  readonly area: number;
  /** Conductor length, out and back together [m], >= 0. */
  readonly length: number;
  /** Of the copper [K]. */
  readonly temperature: number;
}

export interface ConnectorModel {
  /** Both contacts together [ohm]. */
  readonly resistance: number;
  /** [A] */
  readonly continuousCurrent: number;
  /** [A] */
  readonly burstCurrent: number;
}

/** A motor at one point, with every loss. voltage x current = shaftPower + copperLoss + ironLoss. */
export interface MotorPoint {
  readonly angularSpeed: number;
  /** At the shaft [N m]. */
  readonly torque: number;
  /** Equivalent direct current [A]. */
  readonly current: number;
  /** At the motor's terminals [V]. */
  readonly voltage: number;
  /** [W] */
  readonly shaftPower: number;
  /** I2R in the winding at its temperature [W]. */
  readonly copperLoss: number;
  /** Hysteresis, eddy currents, bearings, and what switched currents lose at speed [W]. */
  readonly ironLoss: number;
  /** Shaft power over electrical power; 0 when no power goes in. */
  readonly efficiency: number;
}

/** A listing's motor: the ten-field road. */
export interface MotorNameplate {
  /** [m] */
  readonly statorDiameter: number;
  /** [m] */
  readonly statorHeight: number;
  /** [rad/s per V] */
  readonly speedConstant: number;
  /** With its leads [kg]; inferred from the stator when absent. */
  readonly mass?: number;
}

/** A motor's numbers, each with what is known of it. */
export interface MotorGuess {
  readonly speedConstant: Trusted;
  readonly resistance: Trusted;
  readonly noLoadCurrent: Trusted;
  /** The angular speed at which `noLoadCurrent` holds [rad/s]. */
  readonly noLoadSpeed: number;
  /** What speed adds to the resistance [s/rad]. */
  readonly resistanceRise: Trusted;
  readonly mass: Trusted;
  readonly maximumCurrent: Trusted;
  readonly maximumPower: Trusted;
  /** The whole model at the guessed values. */
  readonly model: MotorModel;
}

/** One line of a maker's table or of a thrust stand. */
export interface MotorReading {
  /** At the controller's input [V]. */
  readonly voltage: number;
  /** Drawn from the supply [A]. */
  readonly current: number;
  /** [rad/s] */
  readonly angularSpeed: number;
  /** Shaft torque when it was measured [N m]. */
  readonly torque?: number;
  /** 0 to 1; absent means full throttle. */
  readonly duty?: number;
}
