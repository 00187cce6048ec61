import { add3, cross3, dot3, scale3, subtract3, type Vector3 } from '../../numerics/vector3.ts';
import type { Point } from '../shapes.ts';
import type { Bounds } from './mesh.ts';

/** From where an aircraft is looked at: straight lines stay parallel (orthographic, ISO 5456-3 when askew). */
export interface Look {
  /** Bearing of the eye from the nose, towards the right [rad]. */
  readonly azimuth: number;
  /** Of the eye above the plane of the arms [rad], -pi/2 to pi/2. */
  readonly elevation: number;
}

/** The trade's views. The plan has its nose up the sheet. */
export const VIEWS = {
  'three-quarter': { azimuth: (40 * Math.PI) / 180, elevation: (32 * Math.PI) / 180 },
  plan: { azimuth: Math.PI, elevation: Math.PI / 2 },
  side: { azimuth: Math.PI / 2, elevation: 0 },
  front: { azimuth: 0, elevation: 0 },
} as const satisfies Readonly<Record<string, Look>>;

export type ViewName = keyof typeof VIEWS;

/** The sheet's own axes in the aircraft's: to the right, up, and out of the sheet towards the eye. */
export interface SheetAxes {
  readonly right: Vector3;
  readonly up: Vector3;
  readonly out: Vector3;
}

export function sheetAxes({ azimuth, elevation }: Look): SheetAxes {
  const [ca, sa] = [Math.cos(azimuth), Math.sin(azimuth)];
  const [ce, se] = [Math.cos(elevation), Math.sin(elevation)];
  const out: Vector3 = [ca * ce, sa * ce, -se];
  const right: Vector3 = [sa, -ca, 0];
  return { right, up: cross3(out, right), out };
}

/** Where the aircraft comes to lie on a window. */
export interface Sighting {
  readonly look: Look;
  /** [m] of the aircraft for a pixel. */
  readonly pen: number;
  /** The place [m] in the middle of the window. */
  readonly centre: Vector3;
  readonly width: number;
  readonly height: number;
}

/** From the aircraft's axes [m] to the window [px], x to the right and y down. */
export function sighted(sighting: Sighting): (place: Vector3) => Point {
  const { right, up } = sheetAxes(sighting.look);
  const { centre, pen, width, height } = sighting;
  return (place) => {
    const from = subtract3(place, centre);
    return { x: width / 2 + dot3(from, right) / pen, y: height / 2 - dot3(from, up) / pen };
  };
}

/**
 * The sighting that shows all of these places with so much room round them [px].
 *
 * @param window `spare`: so far may a place stray from where it is told [m]
 */
export function fitted(
  places: readonly Vector3[],
  look: Look,
  window: { readonly width: number; readonly height: number; readonly room: number; readonly spare?: number },
): Sighting {
  const axes = sheetAxes(look);
  const { width, height, room, spare = 0 } = window;
  const across = spanOf(places, axes.right);
  const upright = spanOf(places, axes.up);
  const deep = spanOf(places, axes.out);
  const pen = Math.max(
    (across.length + 2 * spare) / Math.max(width - 2 * room, 40),
    (upright.length + 2 * spare) / Math.max(height - 2 * room, 40),
  );
  const centre = add3(
    scale3(axes.right, across.middle),
    add3(scale3(axes.up, upright.middle), scale3(axes.out, deep.middle)),
  );
  return { look, pen, centre, width, height };
}

function spanOf(places: readonly Vector3[], axis: Vector3) {
  let [low, high] = [Infinity, -Infinity];
  for (const place of places) {
    const along = dot3(place, axis);
    low = Math.min(low, along);
    high = Math.max(high, along);
  }
  return { length: high - low, middle: (low + high) / 2 };
}

export const middleOf = ({ low, high }: Bounds): Vector3 => [
  (low[0] + high[0]) / 2,
  (low[1] + high[1]) / 2,
  (low[2] + high[2]) / 2,
];

export function cornersOf({ low, high }: Bounds): readonly Vector3[] {
  return [low[0], high[0]].flatMap((x) =>
    [low[1], high[1]].flatMap((y) => [low[2], high[2]].map((z): Vector3 => [x, y, z])),
  );
}
