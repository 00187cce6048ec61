import { dot3, rotation3, subtract3, type Vector3 } from '../numerics/vector3.ts';
import { placeOf } from './bounds.ts';
import { cutLine } from './cutLine.ts';
import { type SeenLayer, seenLayers } from './seenLayers.ts';
import { length3, offset3 } from './solid.ts';
import type { Camera, Occluder, Picture, PictureOutline, PicturePoint } from './types.ts';
import { imageOf, type ViewFrame, viewFrame } from './viewFrame.ts';

/** The aircraft's attitude while the picture is taken: nose up and right side down [rad]. */
export interface Attitude {
  readonly pitch: number;
  readonly roll: number;
}

/**
 * The picture as the camera sees it, to be drawn by a page or report: silhouettes with the farthest
 * first, the horizon at an attitude (level unless told), and the cross at the optical axis. For the
 * share that is lost use `cover`.
 *
 * @throws RangeError for a camera or occluder out of range
 */
export function picture(
  camera: Camera,
  occluders: readonly Occluder[],
  attitude: Attitude = { pitch: 0, roll: 0 },
): Picture {
  const view = viewFrame(camera);
  const farFirst = occluders
    .map((occluder) => ({ occluder, distance: length3(subtract3(placeOf(occluder), view.position)) }))
    .sort((a, b) => b.distance - a.distance);
  return {
    width: view.width,
    height: view.height,
    outlines: farFirst.flatMap(({ occluder }) =>
      seenLayers(occluder, view, camera.exposure)
        .filter((layer) => layer.outlines.length > 0)
        .map((layer) => toOutline(occluder, layer)),
    ),
    horizon: horizon(view, attitude),
    cross: { x: view.width / 2, y: view.height / 2 },
  };
}

function toOutline(occluder: Occluder, { opacity, outlines }: SeenLayer): PictureOutline {
  const pieces = outlines.map((flat) => {
    const points: PicturePoint[] = [];
    for (let i = 0; i < flat.length; i += 2) points.push({ x: flat[i] as number, y: flat[i + 1] as number });
    return points;
  });
  return { id: occluder.id, kind: occluder.kind, opacity, pieces };
}

/** Directions square to the plumb line, a degree apart, as far as they fall in the picture. */
function horizon(view: ViewFrame, { pitch, roll }: Attitude): PicturePoint[][] {
  const [, , plumb] = rotation3(0, pitch, roll);
  const [optical] = view.toCamera;
  const ahead = offset3(optical, [-dot3(optical, plumb), plumb]);
  // Looking straight down or up, any level direction will do.
  const forward = length3(ahead) > 1e-6 ? ahead : offset3([1, 0, 0], [-plumb[0], plumb]);
  const aside: Vector3 = [
    plumb[1] * forward[2] - plumb[2] * forward[1],
    plumb[2] * forward[0] - plumb[0] * forward[2],
    plumb[0] * forward[1] - plumb[1] * forward[0],
  ];
  const [a, b] = [1 / length3(forward), 1 / length3(aside)];
  const lines: PicturePoint[][] = [];
  let line: PicturePoint[] = [];
  let last: PicturePoint | undefined;
  for (let step = 0; step <= 720; step++) {
    // From behind the camera round to behind it, so that what it sees comes in one run.
    const turn = (step * Math.PI) / 360 - Math.PI;
    const direction = offset3([0, 0, 0], [a * Math.cos(turn), forward], [b * Math.sin(turn), aside]);
    const [x, y, z] = view.toCamera.map((row) => dot3(row, direction)) as [number, number, number];
    const drawable = view.law === 'rectilinear' ? x > 1e-3 : x > -0.9;
    const here = drawable ? imageOf(view, x, y, z) : undefined;
    const seen = last && here ? cutLine(last, here, view) : undefined;
    if (seen) {
      if (line.length === 0) line.push(seen[0]);
      line.push(seen[1]);
    }
    if (!seen || seen[1] !== here) {
      if (line.length > 0) lines.push(line);
      line = [];
    }
    last = here;
  }
  if (line.length > 0) lines.push(line);
  return lines;
}
