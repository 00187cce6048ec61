import { joinedMesh, type Mesh, placedMesh } from './mesh.ts';
import { ALONG_X, boxesMesh, boxMesh, tubeMesh, turnedMesh } from './shapes.ts';

interface Box {
  readonly length: number;
  readonly width: number;
  readonly height: number;
}

/**
 * A motor in its can's diameter and height, about its middle, foot down (+z): base, gap and bell. Where the bell
 * begins is drawn, not measured.
 */
export function motorMesh(diameter: number, height: number): Mesh {
  const r = diameter / 2;
  const at = (share: number): number => height * (0.5 - share);
  return turnedMesh([
    [0, at(0)],
    [0.8 * r, at(0)],
    [0.86 * r, at(0.05)],
    [0.86 * r, at(0.16)],
    [0.66 * r, at(0.18)],
    [0.66 * r, at(0.23)],
    [r, at(0.24)],
    [r, at(0.78)],
    [0.93 * r, at(0.86)],
    [0.42 * r, at(0.93)],
    [0.34 * r, at(1)],
    [0, at(1)],
  ]);
}

/** A camera in its told size: body behind, lens in front. */
export function cameraMesh({ length, width, height }: Box): Mesh {
  const body = 0.68 * length;
  const across = Math.min(width, height);
  const reach = length - body;
  const barrel = placedMesh(
    turnedMesh([
      [0, reach / 2],
      [0.34 * across, reach / 2],
      [0.34 * across, 0],
      [0.42 * across, -0.06 * reach],
      [0.42 * across, -reach / 2],
      [0.3 * across, -reach / 2],
      [0.2 * across, -0.2 * reach],
      [0, -0.26 * reach],
    ]),
    [length / 2 - reach / 2, 0, 0],
    ALONG_X,
  );
  return joinedMesh([placedMesh(boxMesh(body, width, height), [-reach / 2, 0, 0]), barrel]);
}

/** A printed board [m] (common practice, no source). */
const BOARD = 0.0016;

/** A board in its told size: the sheet, and what stands on both sides of it as blocks. */
export function boardMesh({ length, width, height }: Box): Mesh {
  const sheet = Math.min(BOARD, height);
  const [upper, lower] = [0.6 * (height - sheet), 0.4 * (height - sheet)];
  const middle = -height / 2 + upper + sheet / 2;
  if (height - sheet < 1e-4) return boxMesh(length, width, height);
  return boxesMesh([
    { at: [0, 0, middle], size: [length, width, sheet] },
    { at: [0, 0, -height / 2 + upper / 2], size: [0.55 * length, 0.6 * width, upper] },
    { at: [0, 0, height / 2 - lower / 2], size: [0.72 * length, 0.72 * width, lower] },
  ]);
}

/** A stem with a round head, standing in its told size. */
export function antennaMesh({ length, width, height }: Box): Mesh {
  const r = Math.min(length, width) / 2;
  const head = Math.min(0.45 * height, 2.4 * r);
  const stem = 0.28 * r;
  return turnedMesh([
    [0, height / 2],
    [stem, height / 2],
    [stem, -height / 2 + head],
    [0.8 * r, -height / 2 + head],
    [r, -height / 2 + 0.75 * head],
    [r, -height / 2 + 0.25 * head],
    [0.7 * r, -height / 2],
    [0, -height / 2],
  ]);
}

/** Width and thickness of a strap [m] (common practice, no source). */
const STRAP = { width: 0.018, thickness: 0.0012 };

/** A strap round a block of that size, about its middle. */
export function strapMesh({ length, width, height }: Box): Mesh {
  const t = STRAP.thickness;
  const along = Math.min(STRAP.width, 0.4 * length);
  const side = (width + t) / 2;
  const cover = (height + t) / 2;
  return boxesMesh([
    { at: [0, 0, -cover], size: [along, width + 2 * t, t] },
    { at: [0, 0, cover], size: [along, width + 2 * t, t] },
    { at: [0, -side, 0], size: [along, t, height] },
    { at: [0, side, 0], size: [along, t, height] },
  ]);
}

export const canMesh = ({ length, width, height }: Box): Mesh =>
  tubeMesh(Math.min(width, height), 0, length, 'x');
