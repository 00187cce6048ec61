import type { Tone } from './shapes.ts';

/**
 * All that a drawing of an aircraft needs, as a plain record. Lengths [m], angles [rad], build
 * axes: x forward, y right, z down, origin at the layout's motor centre.
 */
export interface AircraftPicture {
  readonly name: string;
  readonly rotors: readonly RotorPicture[];
  readonly arms: readonly SlabPicture[];
  readonly plates: readonly SlabPicture[];
  readonly posts: readonly PostPicture[];
  readonly boxes: readonly BoxPicture[];
  readonly guards: readonly GuardPicture[];
  readonly centreOfGravity: Place;
  /** Where the lift of all rotors at equal thrust acts. */
  readonly thrustCentre: { readonly x: number; readonly y: number };
}

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export interface RotorPicture {
  /** Foot of the motor: the face that sits on the arm. */
  readonly at: Place;
  readonly motorRadius: number;
  readonly motorHeight: number;
  readonly propellerRadius: number;
  /** Height of the middle of the disc. */
  readonly discZ: number;
  readonly blades: number;
  /** Blade width seen from above, as shares of the radius at shares of the radius, rising. */
  readonly blade: readonly { readonly at: number; readonly width: number }[];
  /** Seen from above. */
  readonly spin: 'clockwise' | 'anticlockwise';
  /** The propeller hangs under the arm. */
  readonly inverted?: boolean;
  /** Written by the motor: a figure, and a line under it. */
  readonly label?: { readonly figure: string; readonly under: string; readonly tone?: Tone };
}

/** A flat piece of plate: outline seen from above, at a height. */
export interface SlabPicture {
  readonly outline: readonly { readonly x: number; readonly y: number }[];
  /** Upper face. */
  readonly z: number;
  readonly thickness: number;
}

/** A standoff between plates. */
export interface PostPicture {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly topZ: number;
  readonly bottomZ: number;
}

export interface BoxPicture {
  readonly part: 'pack' | 'camera' | 'recording' | 'stack';
  readonly at: Place;
  /** Along x, y, z. */
  readonly size: Place;
  /** Cameras: nose up is positive. */
  readonly tilt?: number;
  /** Cameras: full horizontal angle of view. */
  readonly view?: number;
}

export interface GuardPicture {
  readonly at: Place;
  readonly radius: number;
  readonly thickness: number;
  readonly height: number;
}
