import type { Vector3 } from '../numerics/vector3.ts';

/**
 * All places [m] and directions are in build axes: x forward, y right, z down, origin at the motor centre.
 */

/**
 * How the angle off the optical axis becomes a distance on the sensor, r = f g(theta):
 * rectilinear f tan(theta), equidistant f theta, equisolid 2 f sin(theta/2).
 * Kannala and Brandt 2006 (IEEE PAMI 28(8)), eqs. (1), (3) and (4).
 */
export type LensLaw = 'rectilinear' | 'equidistant' | 'equisolid';

/** One camera. Yaw, then pitch, then roll, as aircraft attitude is told. */
export interface Camera {
  /** The lens's entrance pupil [m], build axes. */
  readonly position: Vector3;
  /** Tilt of the optical axis up from the build's x axis [rad], -pi/2 to pi/2. */
  readonly pitch: number;
  /** Right side of the camera down [rad]. */
  readonly roll: number;
  /** Optical axis turned to the right [rad]. */
  readonly yaw: number;
  readonly lensLaw: LensLaw;
  /** Full angle of view [rad] across the picture's width or from corner to corner. */
  readonly field: { readonly across: 'width' | 'diagonal'; readonly angle: number };
  /** Picture size [pixels]; their ratio is the aspect. */
  readonly width: number;
  readonly height: number;
  /** Shutter time [s], > 0. */
  readonly exposure: number;
}

/** A propeller's swept disc, seen through as its blades allow; its hub is opaque. */
export interface SweptDisc {
  readonly kind: 'sweptDisc';
  readonly id: string;
  /** [m] */
  readonly centre: Vector3;
  /** Shaft direction, any length > 0. */
  readonly axis: Vector3;
  /** [m] */
  readonly radius: number;
  /** [m], 0 to below radius. */
  readonly hubRadius: number;
  /** Depth swept along the shaft (chord times sine of blade angle) and height of the hub [m], >= 0. */
  readonly thickness: number;
  readonly blades: number;
  /** Mean chord as seen along the shaft [m]. */
  readonly chord: number;
  /** [rad/s], >= 0. */
  readonly angularSpeed: number;
}

/** A straight tapered arm of rectangular section. */
export interface Bar {
  readonly kind: 'bar';
  readonly id: string;
  /** Centres of the end sections [m]. */
  readonly from: Vector3;
  readonly to: Vector3;
  /** Widths at the ends, across the bar and level with the plate [m]. */
  readonly widthFrom: number;
  readonly widthTo: number;
  /** Along the plate's normal [m]. */
  readonly thickness: number;
  /** The plate's normal, not along the bar; build z where absent. */
  readonly normal?: Vector3;
}

/** A block: pack, stack, camera body. */
export interface Box {
  readonly kind: 'box';
  readonly id: string;
  /** [m] */
  readonly centre: Vector3;
  /** Edge lengths along its own x, y, z [m]. */
  readonly size: Vector3;
  /** Its own axes turned from the build's [rad]; square to the build where absent. */
  readonly turned?: { readonly pitch: number; readonly roll: number; readonly yaw: number };
}

/** A flat plate level with the build's x-y plane, of any simple outline. */
export interface Plate {
  readonly kind: 'plate';
  readonly id: string;
  /** At least three corners in order, not crossing [m]. */
  readonly outline: readonly (readonly [x: number, y: number])[];
  /** Height of the middle surface [m], z down. */
  readonly z: number;
  readonly thickness: number;
}

/** A guard hoop: a short tube round an axis. */
export interface Ring {
  readonly kind: 'ring';
  readonly id: string;
  /** [m] */
  readonly centre: Vector3;
  /** Any length > 0. */
  readonly axis: Vector3;
  /** Inner and outer radius [m]. */
  readonly innerRadius: number;
  readonly outerRadius: number;
  /** Length along the axis [m], > 0. */
  readonly height: number;
}

/** A round bar: antenna, standoff, or a motor when it is short and thick. */
export interface Rod {
  readonly kind: 'rod';
  readonly id: string;
  /** Middles of its ends [m]. */
  readonly from: Vector3;
  readonly to: Vector3;
  /** [m] */
  readonly radius: number;
}

export interface Ball {
  readonly kind: 'ball';
  readonly id: string;
  /** [m] */
  readonly centre: Vector3;
  /** [m] */
  readonly radius: number;
}

/** Something that can stand in the picture. */
export type Occluder = SweptDisc | Bar | Box | Plate | Ring | Rod | Ball;

/** What one camera loses to the aircraft. Shares are of the picture's area, 0 to 1. */
export interface Cover {
  /** Light kept out, discs weighted by how much their blades hide. */
  readonly covered: number;
  /** Anything of the aircraft in the way, discs counted whole. */
  readonly touched: number;
  readonly byOccluder: readonly OccluderCover[];
  /** Of each kind told, by itself. */
  readonly byKind: Readonly<Record<string, { readonly covered: number; readonly touched: number }>>;
  /** Opacity over the picture, row by row from the top left, 0 to 1. */
  readonly map: CoverMap;
}

export interface OccluderCover {
  readonly id: string;
  readonly kind: Occluder['kind'];
  /** As if it stood alone; overlaps make the sum exceed the total. */
  readonly covered: number;
  readonly touched: number;
}

/** How much of the picture is covered, cell by cell. */
export interface CoverMap {
  readonly columns: number;
  readonly rows: number;
  /** 0 clear to 1 covered, row by row from the top left. */
  readonly opacity: Float32Array;
}

/** A place in the picture [pixels], x to the right and y down from the top left corner. */
export interface PicturePoint {
  readonly x: number;
  readonly y: number;
}

/** The picture as the camera sees it, as plain data to draw. */
export interface Picture {
  /** [pixels] */
  readonly width: number;
  readonly height: number;
  /** Far ones first, so that drawing in order hides rightly. */
  readonly outlines: readonly PictureOutline[];
  /** Where level ground far away would meet the sky; empty when out of the picture. */
  readonly horizon: readonly (readonly PicturePoint[])[];
  /** Where the optical axis points. */
  readonly cross: PicturePoint;
}

export interface PictureOutline {
  readonly id: string;
  readonly kind: Occluder['kind'];
  /** How much light it keeps out, 0 to 1. */
  readonly opacity: number;
  /** Its silhouette in pieces, to fill as one path by the non-zero rule. */
  readonly pieces: readonly (readonly PicturePoint[])[];
}
