import type { Matrix3, Vector3 } from '../../numerics/vector3.ts';
import type { BarDrag } from '../forward/bodyDrag.ts';
import type { ObliqueRead, RotorRead } from '../types.ts';

/**
 * Axes of the craft x forward, y right, z down; of the world north, east, down. SI.
 */

/** How a rotor's speed follows what is asked of it. */
export type RotorDrive =
  /** Speed follows its command as a first-order lag. */
  | {
      readonly kind: 'lag';
      /** [s], > 0 */
      readonly timeConstant: number;
      /** [rad/s] */
      readonly lowestSpeed: number;
      readonly highestSpeed: number;
    }
  /** A motor at a voltage, fed forward for the speed that is asked and cut at the bus. */
  | {
      readonly kind: 'motor';
      /** K_V [rad/s per V] */
      readonly speedConstant: number;
      /** Winding, controller and leads, warm [ohm]. */
      readonly resistance: number;
      /** [N m] */
      readonly noLoadTorque: number;
      /** At the controller's output, lowest duty and full duty [V]. */
      readonly lowestVoltage: number;
      readonly highestVoltage: number;
    };

export interface SimulatedRotor {
  /** Centre of the prop disc [m]. */
  readonly position: Vector3;
  /** Unit vector of the thrust; straight up (0, 0, -1) when absent. */
  readonly thrustAxis?: Vector3;
  /** +1 turns clockwise seen from above, -1 counterclockwise. */
  readonly spin: 1 | -1;
  readonly rotor: RotorRead;
  /** Takes the place of `rotor` and of `inPlaneDragPerThrust` in flight, at many times the work. */
  readonly oblique?: ObliqueRead;
  /** Share of the thrust lost on arm and guard, 0 to 0.5. */
  readonly downloadShare: number;
  /** Polar moment of everything that turns [kg m2], > 0. */
  readonly rotatingInertia: number;
  readonly drive: RotorDrive;
}

/** One rigid craft. Tilting servos are not simulated. */
export interface SimulationModel {
  readonly rotors: readonly SimulatedRotor[];
  /** [kg] */
  readonly mass: number;
  /** [m/s2] */
  readonly gravity: number;
  /** [m] */
  readonly centreOfGravity: Vector3;
  /** About the centre of gravity, rotors standing still included [kg m2]. */
  readonly inertia: Matrix3;
  /** [kg/m3] */
  readonly airDensity: number;
  /** Drag coefficient times area of the bluff parts, seen from ahead, from the side, from above [m2]. */
  readonly dragArea: Vector3;
  /** Slender bars whose drag is not in `dragArea`; none when absent. */
  readonly bars?: readonly BarDrag[];
  /** Where that drag acts [m]; the centre of gravity when absent. */
  readonly dragCentre?: Vector3;
  /** In-plane drag of a rotor over its thrust and edgewise speed [s/m]. */
  readonly inPlaneDragPerThrust: number;
}

/**
 * Place of the centre of gravity (3) [m], its velocity (3) [m/s], both in the world; attitude quaternion
 * w x y z turning craft into world (4); turn rates about the craft's axes (3) [rad/s]; rotor speeds [rad/s].
 */
export type SimulationState = Float64Array;

/** Where a `SimulationState` keeps what. */
export const at = { place: 0, velocity: 3, attitude: 6, rates: 10, rotors: 13 } as const;

/** What is asked of the craft at one moment. */
export type Command =
  /** Each rotor's net thrust [N]. */
  | { readonly kind: 'thrusts'; readonly thrusts: readonly number[] }
  /** Moments about the craft's axes [N m] and lift [N], open loop. */
  | { readonly kind: 'moments'; readonly moments: Vector3; readonly lift: number }
  /** Turn rates [rad/s] and lift [N]. */
  | { readonly kind: 'rates'; readonly rates: Vector3; readonly lift: number }
  /** Roll, pitch and yaw angles [rad] and lift [N]. */
  | { readonly kind: 'attitude'; readonly attitude: Vector3; readonly lift: number }
  /** A place in the world to hold [m] and a heading [rad]. */
  | { readonly kind: 'place'; readonly place: Vector3; readonly heading: number };

/** Pure: the same time and state, the same command. */
export type Pilot = (time: number, state: Readonly<SimulationState>) => Command;

/** Wind in the world [m/s], written into `out`. */
export type WindRead = (time: number, out: Float64Array) => void;

/** Gains of the plain cascade; the tilt and place gains are those of `HoldController`. */
export interface FlightGains {
  /** Wanted turn acceleration over error of rate [1/s]. */
  readonly rateGain: number;
  /** Natural frequency [rad/s] and damping of the attitude loop. */
  readonly tiltFrequency: number;
  readonly tiltDamping: number;
  /** [1/s2] */
  readonly placeGain: number;
  /** [1/s] */
  readonly speedGain: number;
  /** Largest tilt that holding a place may ask [rad]. */
  readonly largestTilt: number;
}

/** Common practice, no source: a steady craft of a few hundred grams. */
export const plainGains: FlightGains = {
  rateGain: 25,
  tiltFrequency: 12,
  tiltDamping: 0.8,
  placeGain: 1,
  speedGain: 2,
  largestTilt: 0.8,
};

/** Histories at even steps, one entry a sample. */
export interface Traces {
  /** [s] */
  readonly time: Float64Array;
  /** x, y, z in the world [m], and their rates [m/s]. */
  readonly place: readonly [Float64Array, Float64Array, Float64Array];
  readonly velocity: readonly [Float64Array, Float64Array, Float64Array];
  /** Roll, pitch, yaw [rad]. */
  readonly attitude: readonly [Float64Array, Float64Array, Float64Array];
  /** About the craft's axes [rad/s]. */
  readonly rates: readonly [Float64Array, Float64Array, Float64Array];
  /** Of each rotor [rad/s]. */
  readonly rotorSpeed: readonly Float64Array[];
  /** The state at the end. */
  readonly end: SimulationState;
}
