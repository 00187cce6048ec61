import type { FrameGeometry, Layout, MassItem, MassProperties, MotorPlace } from '../airframe/types.ts';
import type { ConnectorModel, ControllerModel, MotorModel, PackModel, WireModel } from '../drive/types.ts';
import type { Levers } from '../flight/types.ts';
import type { Vector3 } from '../numerics/vector3.ts';
import type { Blade } from '../rotor/types.ts';
import type { Trust } from '../units/trusted.ts';
import type { Camera } from '../view/types.ts';
import type { Build } from './schema/build.ts';
import type { Box } from './schema/fields.ts';
import type { Part, PartOf } from './schema/part.ts';

/**
 * A build with everything looked up, inferred and placed: all that the physics, the drawing, the fit
 * rules and the money need, in SI and the aircraft's axes (x forward, y right, z down from the motors'
 * centre in the mid-plane of the arms).
 */
export interface Craft {
  readonly build: Build;
  readonly parts: CraftParts;
  readonly layout: Layout;
  readonly frame: FrameGeometry;
  /** In the order of `layout.motors`. */
  readonly motors: readonly CraftMotor[];
  /** The different propellers on board, usually one; `CraftMotor.rotor` points into it. */
  readonly rotors: readonly CraftRotor[];
  readonly controllerModel: ControllerModel;
  readonly packModel: PackModel;
  readonly wiring: CraftWiring;
  /** What draws power beside the motors. */
  readonly avionics: readonly { readonly part: string; readonly name: string; readonly power: number }[];
  /** From the bus, losses of the regulators included [W]. */
  readonly avionicsPower: number;
  readonly cameras: readonly CraftCamera[];
  readonly massItems: readonly MassItem[];
  /** Added up, or as measured where the build tells it. */
  readonly massProperties: MassProperties;
  /** Of that, what no list of parts has: solder, ties, tape, small screws [kg]; 0 when the whole was weighed. */
  readonly sundryMass: number;
  /** The pack's middle and size, for drawing and balance. */
  readonly pack: { readonly place: Vector3; readonly size: Box };
  /** Bottom to top: what stands on what in the stack. */
  readonly stack: readonly StackLayer[];
  readonly unknowns: readonly Unknown[];
  /** Everything inferred, in words, such as `motors: shaft`: never to look like a maker's value. */
  readonly inferred: readonly string[];
}

/** The parts themselves, by seat. */
export interface CraftParts {
  readonly frame: PartOf<'frame'>;
  /** One for each motor of the layout. */
  readonly motors: readonly PartOf<'motor'>[];
  readonly propellers: readonly PartOf<'propeller'>[];
  /** Absent when built into the flight controller. */
  readonly controllers?: PartOf<'controller'>;
  readonly flightController: PartOf<'flightController'>;
  readonly pack: PartOf<'pack'>;
  readonly cameras: readonly PartOf<'camera'>[];
  readonly videoLink?: PartOf<'videoLink'>;
  readonly receiver?: PartOf<'receiver'>;
  readonly antennas: readonly PartOf<'antenna'>[];
  readonly extras: readonly { readonly part: Part; readonly count: number }[];
  readonly connector?: PartOf<'connector'>;
}

export interface CraftMotor {
  readonly place: MotorPlace;
  readonly partId: string;
  /** Index into `Craft.rotors`. */
  readonly rotor: number;
  /** Middle of the prop disc [m]. */
  readonly discPlace: Vector3;
  readonly model: MotorModel;
  /** Bell and propeller about the shaft [kg m2]. */
  readonly rotatingInertia: number;
  /** Share of the thrust lost on the arm in the slipstream. */
  readonly downloadShare: number;
  readonly motorLead: WireModel;
  readonly supplyLead: WireModel;
  readonly fit: MotorFit;
}

/** What must match when a motor is mounted. Fields named in `inferred` are ours, not the maker's. */
export interface MotorFit {
  /** Diameters of the hole circles in its base [m]. */
  readonly mountCircles: readonly number[];
  readonly mountScrew: string;
  /** How deep a screw may go before the winding [m]. */
  readonly threadDepth: number;
  readonly shaftDiameter: number;
  readonly fixing: string;
  readonly bellDiameter: number;
  /** Base to propeller seat [m]. */
  readonly height: number;
  readonly inferred: readonly string[];
}

export interface CraftRotor {
  readonly partId: string;
  readonly blade: Blade;
  /** How its measured points are known, the least known of them; absent without points. */
  readonly pointTrust?: Trust;
  /** About the shaft [kg m2]. */
  readonly inertia: number;
  readonly hubDiameter: number;
  readonly hubThickness: number;
  readonly bore: number;
  readonly fixing: string;
  readonly inferred: readonly string[];
}

export interface CraftWiring {
  /** Pack to bus, out and back. */
  readonly main: WireModel;
  readonly connector: ConnectorModel;
  /** Name of the plug on the pack lead, when the build tells it. */
  readonly plug?: string;
  readonly inferred: readonly string[];
}

export interface CraftCamera {
  readonly partId: string;
  readonly role: 'flying' | 'recording';
  readonly camera: Camera;
  /** Middle of its body [m], and its size. */
  readonly place: Vector3;
  readonly size: Box;
}

export interface StackLayer {
  readonly seat: 'controllers' | 'flightController' | 'videoLink';
  readonly partId: string;
  /** Middle [m]. */
  readonly place: Vector3;
  readonly size: Box;
  /** Side of its square of holes [m], when it has one. */
  readonly pattern?: number;
}

/** An input that is not known exactly. What is not known of the propeller depends on how fast it turns: see `RotorDoubt`. */
export interface Unknown {
  readonly lever: Exclude<keyof Levers, 'thrustScale' | 'torqueScale'>;
  /** In words: `winding resistance`. */
  readonly label: string;
  /** One standard deviation over the value. */
  readonly deviation: number;
  readonly trust: Trust;
  readonly source: string;
}
