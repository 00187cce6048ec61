import { couldBeSeen } from './bounds.ts';
import { layersOf } from './layers.ts';
import { cutByPlane, type Outline, type Plane, pictureOutlines } from './pictureOutline.ts';
import type { Bore } from './roundSolids.ts';
import { type Silhouette, silhouette } from './silhouette.ts';
import type { Occluder } from './types.ts';
import type { ViewFrame } from './viewFrame.ts';

/** Largest distance of a drawn outline from the true one, in picture widths. */
const TOLERANCE = 2e-4;
/** The same for a search: a twentieth of a degree under a wide lens. */
export const ROUGH = 4e-4;

/** One layer of an occluder as it lies in the picture. */
export interface SeenLayer {
  /** 0 to 1. */
  readonly opacity: number;
  /** Wound one way round where solid, the other way round holes [pixels]. */
  readonly outlines: readonly Outline[];
}

/** An occluder's layers as outlines in the picture; none when it is out of the picture's cone. */
export function seenLayers(
  occluder: Occluder,
  view: ViewFrame,
  exposure: number,
  widths = TOLERANCE,
): SeenLayer[] {
  if (!couldBeSeen(occluder, view)) return [];
  const tolerance = widths * view.width;
  const draw = (seen: Silhouette) =>
    seen === 'everything' ? [wholePicture(view)] : pictureOutlines(seen, view, tolerance);
  const roundness = { eye: view.position, tolerance: tolerance / view.focal };
  return layersOf(occluder, exposure, roundness).map(({ opacity, solids, bore }) => ({
    opacity,
    outlines: [
      ...solids.flatMap((solid) => draw(silhouette(solid, view))),
      ...(bore ? seenThrough(bore, view).flatMap(draw).map(reversed) : []),
    ],
  }));
}

function seenThrough({ ends, eye }: Bore, view: ViewFrame): Silhouette[] {
  if (eye === 'in the wall') return [];
  const [near, far] = [silhouette(ends[0], view), silhouette(ends[1], view)];
  if (eye === 'in the bore' || near === 'everything' || far === 'everything') return [near, far];
  return [sidesOf(far).reduce(cutByPlane, near)];
}

/** The planes through the eye that bound a convex silhouette, facing inwards. */
function sidesOf(directions: readonly number[]): Plane[] {
  const planes: Plane[] = [];
  for (let i = 0; i < directions.length; i += 3) {
    const [x0 = 0, y0 = 0, z0 = 0] = directions.slice(i, i + 3);
    const j = (i + 3) % directions.length;
    const [x1 = 0, y1 = 0, z1 = 0] = directions.slice(j, j + 3);
    planes.push([y0 * z1 - z0 * y1, z0 * x1 - x0 * z1, x0 * y1 - y0 * x1]);
  }
  return planes;
}

function reversed(outline: Outline): Outline {
  const back: number[] = [];
  for (let i = outline.length - 2; i >= 0; i -= 2) back.push(outline[i] as number, outline[i + 1] as number);
  return back;
}

const wholePicture = ({ width, height }: ViewFrame): Outline => [0, 0, width, 0, width, height, 0, height];
