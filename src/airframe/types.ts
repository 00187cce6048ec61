import type { Matrix3, Vector3 } from '../numerics/vector3.ts';

/**
 * Axes of the whole room: x forward, y right, z down, origin at the layout's motor centre, which is
 * the mean of the motor places in plan, and in height the mid-plane of the arms. SI units throughout.
 */

/** A point in plan [m]: x forward, y right. */
export type Point2 = readonly [x: number, y: number];

// --- layout -----------------------------------------------------------------------------------

/** +1 turns clockwise seen from above (positive about z down), -1 counterclockwise. */
export type Spin = 1 | -1;

/**
 * Which way the front blades sweep over the nose: `inward`, towards the centre line at the front
 * edge (front left motor clockwise); `outward`, away from it.
 */
export type FrontSpin = 'inward' | 'outward';

/** Motor-to-motor distances [m] of the trade's layouts. `width` is across, `length` along. */
export type LayoutParameters =
  | { readonly kind: 'true X' | 'plus'; readonly diagonal: number; readonly frontSpin?: FrontSpin }
  | {
      readonly kind: 'stretched X' | 'squashed X' | 'H';
      readonly width: number;
      readonly length: number;
      readonly frontSpin?: FrontSpin;
    }
  | {
      readonly kind: 'dead cat';
      /** Front pair's distance, wider than the rear's. */
      readonly frontWidth: number;
      readonly rearWidth: number;
      readonly length: number;
      readonly frontSpin?: FrontSpin;
    }
  /** Two in front, one behind on a tail servo that tilts it for yaw. */
  | { readonly kind: 'tri'; readonly frontWidth: number; readonly length: number }
  /** Regular, by the distance between opposite motors. X has its nose between two motors. */
  | {
      readonly kind: 'hexa X' | 'hexa plus' | 'octo' | 'octo plus';
      readonly diagonal: number;
      readonly frontSpin?: FrontSpin;
    }
  /** Four arms with a motor above and one below on each. */
  | {
      readonly kind: 'X8 coaxial';
      readonly width: number;
      readonly length: number;
      /** Distance between the two discs of a pair [m]. */
      readonly discSpacing: number;
      readonly frontSpin?: FrontSpin;
    }
  /** Three arms (two in front, one behind) with a motor above and one below on each. */
  | {
      readonly kind: 'Y6 coaxial';
      readonly frontWidth: number;
      readonly length: number;
      readonly discSpacing: number;
    }
  | {
      readonly kind: 'positions';
      readonly motors: readonly {
        readonly name: string;
        /** [m] in any plan axes parallel to the aircraft's; they are moved so that their mean is the origin. */
        readonly position: Point2;
        readonly spin: Spin;
      }[];
    };

export type LayoutKind = LayoutParameters['kind'];

export interface MotorPlace {
  /** In words: `front left`, `rear right`, `front left above` ... unique in a layout. */
  readonly name: string;
  /** Centre of the prop disc's axis at the arm's mid-plane; z nonzero only for coaxial pairs [m]. */
  readonly position: Vector3;
  readonly spin: Spin;
  /** Which arm carries it, from 0; a coaxial pair shares one. */
  readonly armIndex: number;
  /** The name of the other motor on the same axis. */
  readonly coaxialWith?: string;
  /** Whether the prop is above or below the arm. */
  readonly propSide: 'above' | 'below';
  /** True for the tail of a `tri`, which a servo tilts sideways for yaw. */
  readonly tilts: boolean;
}

export interface Layout {
  readonly kind: LayoutKind;
  readonly motors: readonly MotorPlace[];
  /** Largest motor-to-motor distance in plan [m], the trade's 'wheelbase'. */
  readonly diagonal: number;
}

/** Something a prop must not touch, in plan [m], with its height range when known. */
export type Obstacle =
  | {
      readonly name: string;
      readonly part: string;
      readonly shape: 'outline';
      readonly outline: readonly Point2[];
    }
  /** The inside of a ring round one motor: the gap is measured outwards from the disc. */
  | {
      readonly name: string;
      readonly part: string;
      readonly shape: 'ring';
      readonly motor: string;
      readonly innerRadius: number;
    };

export interface TipGap {
  readonly motor: string;
  /** The other motor's name or the obstacle's. */
  readonly to: string;
  readonly part: string;
  /** Distance in plan from the swept disc's edge [m]; negative when they overlap. */
  readonly gap: number;
  /** Where it is closest, on the disc's edge [m]. */
  readonly place: Point2;
  /** Overlapping area over one disc's area, 0 to 1 (props only; 0 for obstacles). */
  readonly overlapShare: number;
}

// --- mass -------------------------------------------------------------------------------------

/** A solid of even density, described about its own centre except where told. Sizes [m]. */
export type Primitive =
  | { readonly kind: 'point' }
  | { readonly kind: 'box'; readonly length: number; readonly width: number; readonly height: number }
  | { readonly kind: 'cylinder'; readonly diameter: number; readonly height: number; readonly axis?: Axis }
  | {
      readonly kind: 'tube';
      readonly outerDiameter: number;
      readonly innerDiameter: number;
      readonly height: number;
      readonly axis?: Axis;
    }
  /** A slender rod along its axis (default x). */
  | { readonly kind: 'rod'; readonly length: number; readonly diameter: number; readonly axis?: Axis }
  /** A flat plate with an outline in its own plan axes; its place is the outline's origin, at mid-thickness. */
  | { readonly kind: 'plate'; readonly outline: readonly Point2[]; readonly thickness: number }
  /** A flat bar of linear taper along its own x; its place is the middle of the root face. */
  | {
      readonly kind: 'taperedBar';
      readonly length: number;
      readonly rootWidth: number;
      readonly tipWidth: number;
      readonly thickness: number;
    };

export type Axis = 'x' | 'y' | 'z';

export interface Orientation {
  /** About z, positive to the right [rad]. */
  readonly yaw?: number;
  /** About y, positive nose up [rad]. */
  readonly pitch?: number;
  /** About x, positive right side down [rad]. */
  readonly roll?: number;
}

export interface MassItem {
  /** In words, unique in a build as far as possible: `front left motor`. */
  readonly name: string;
  /** Key of the part it belongs to: `frame`, `motors`, `pack` ... */
  readonly part: string;
  readonly primitive: Primitive;
  /** Place of the primitive's reference point [m]. */
  readonly place: Vector3;
  readonly orientation?: Orientation;
  /** One of the two is given; a point needs mass. */
  readonly amount: { readonly mass: number } | { readonly density: number };
}

export interface MassProperties {
  /** [kg] */
  readonly mass: number;
  /** [m] */
  readonly centreOfGravity: Vector3;
  /** About the centre of gravity in the aircraft's axes; off-diagonals are minus the products [kg m2]. */
  readonly inertia: Matrix3;
}

/** Drag area by direction of the wind along each axis: the plain area and its coefficient. */
export interface DragAreas {
  readonly front: DragArea;
  readonly side: DragArea;
  readonly top: DragArea;
}

export interface DragArea {
  /** Projected area [m2]. */
  readonly area: number;
  /** Drag coefficient on that area. */
  readonly coefficient: number;
}

// --- frame ------------------------------------------------------------------------------------

export interface FrameMaterial {
  readonly name: string;
  /** [kg/m3] */
  readonly density: number;
  readonly elastic: ElasticConstants;
  /** Strengths [Pa], positive numbers. */
  readonly strength: {
    /** Along the arm, in tension and compression. */
    readonly tension: number;
    readonly compression: number;
    /** In the plane of the plate. */
    readonly shear: number;
    /** Between plies. */
    readonly interlaminar: number;
    /** One standard deviation of strength over its mean between makers and batches. */
    readonly scatter: number;
  };
  /** One standard deviation of thickness over nominal. */
  readonly thicknessScatter: number;
  readonly source: string;
}

/** An orthotropic solid: 1 along the arm, 2 across it in the plate, 3 through the thickness. Moduli [Pa]. */
export interface ElasticConstants {
  readonly E1: number;
  readonly E2: number;
  readonly E3?: number;
  readonly nu12: number;
  readonly nu13?: number;
  readonly nu23?: number;
  readonly G12: number;
  readonly G13: number;
  readonly G23: number;
}

/** How arms are cut: each alone, all with the bottom plate from one sheet, or two opposite as one bar. */
export type ArmConstruction = 'separate arms' | 'one-piece plate' | 'arm pairs';

export interface ArmGeometry {
  readonly name: string;
  /** Motors it carries, by name. */
  readonly motors: readonly string[];
  /** Where it leaves the plate or clamp, on its mid-plane [m]. */
  readonly root: Vector3;
  /** The motor's axis on its mid-plane [m]. */
  readonly tip: Vector3;
  /** Width at stations, `at` from 0 (root) to 1 (motor axis), rising; linear between [m]. */
  readonly outline: readonly { readonly at: number; readonly width: number }[];
  /** Diameter of the round end that the motor stands on; 0 when the arm simply ends [m]. */
  readonly padDiameter: number;
  readonly thickness: number;
  /** How far it runs on inside the clamp; 0 for a one-piece plate [m]. */
  readonly clampedLength: number;
}

export interface PlateGeometry {
  readonly name: string;
  readonly outline: readonly Point2[];
  readonly thickness: number;
  /** Height of its mid-plane, z down [m]. */
  readonly z: number;
  /** Share of the outline's area cut away by holes and windows, 0 to 0.9. */
  readonly cutAway: number;
}

export interface StandoffGeometry {
  readonly place: Point2;
  /** Height of its ends, z down [m]; top < bottom. */
  readonly topZ: number;
  readonly bottomZ: number;
  readonly outerDiameter: number;
  readonly innerDiameter: number;
  /** [kg/m3] */
  readonly density: number;
  /** Young's modulus [Pa] */
  readonly modulus: number;
}

export interface GuardGeometry {
  readonly motor: string;
  readonly innerRadius: number;
  readonly wallThickness: number;
  readonly height: number;
  /** Height of its middle, z down [m]. */
  readonly z: number;
  /** [kg/m3] */
  readonly density: number;
}

export interface PackPlace {
  readonly side: 'above' | 'below';
  /** Height of the face that the pack lies on, z down [m]. */
  readonly faceZ: number;
  /** Where the pack's middle may be strapped, x [m]. */
  readonly strapRange: readonly [rear: number, front: number];
  /** Largest length and width it takes [m]. */
  readonly maxLength: number;
  readonly maxWidth: number;
}

export interface StackPlace {
  readonly place: Point2;
  /** Height of the face it stands on, z down [m]. */
  readonly faceZ: number;
  /** Free height above that face [m]. */
  readonly headroom: number;
  /** Hole patterns it takes, e.g. 0.0305, 0.020 [m]. */
  readonly patterns: readonly number[];
}

export interface CameraPlace {
  /** Middle of the lens's mount [m]. */
  readonly place: Vector3;
  /** Width of the camera between the cheeks [m]. */
  readonly width: number;
  /** Tilt range, positive up [rad]. */
  readonly tiltRange: readonly [number, number];
}

/** All that is drawn, weighed, shaken and fitted of a frame. */
export interface FrameGeometry {
  readonly construction: ArmConstruction;
  readonly material: FrameMaterial;
  readonly arms: readonly ArmGeometry[];
  readonly plates: readonly PlateGeometry[];
  readonly standoffs: readonly StandoffGeometry[];
  readonly guards: readonly GuardGeometry[];
  readonly pack: PackPlace;
  readonly stack: StackPlace;
  readonly camera?: CameraPlace;
  /** Screws and nuts of the frame, spread over the plates [kg]. */
  readonly hardwareMass: number;
}

// --- modes ------------------------------------------------------------------------------------

/** What a mode looks like, in words. */
export type ModeShape =
  | 'out-of-plane bending'
  | 'in-plane bending'
  | 'torsion'
  | 'in-plane bending with torsion'
  | 'stretching'
  /** Whole frames: every tip up together against the hub. */
  | 'out-of-plane together'
  /** Neighbouring tips against each other, the diagonals alike. */
  | 'out-of-plane pair'
  | 'roll rocking'
  | 'pitch rocking'
  | 'yaw twist'
  /** Neighbouring tips towards and away from each other in the plane. */
  | 'in-plane scissor'
  | 'in-plane sway'
  | 'arm torsion'
  | 'plate bending';

export interface Mode {
  /** [Hz] */
  readonly frequency: number;
  readonly shape: ModeShape;
}
