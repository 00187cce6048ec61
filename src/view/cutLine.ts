import type { PicturePoint } from './types.ts';

/**
 * The part of a line that lies in the picture, by Liang and Barsky 1984 (ACM Trans. Graphics 3(1));
 * an end that lies inside is handed back as the very same point.
 */
export function cutLine(
  from: PicturePoint,
  to: PicturePoint,
  frame: { readonly width: number; readonly height: number },
): readonly [PicturePoint, PicturePoint] | undefined {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [enter, leave] = [0, 1];
  for (const [step, room] of [
    [-dx, from.x],
    [dx, frame.width - from.x],
    [-dy, from.y],
    [dy, frame.height - from.y],
  ] as const) {
    if (step === 0 && room < 0) return undefined;
    if (step < 0) enter = Math.max(enter, room / step);
    if (step > 0) leave = Math.min(leave, room / step);
  }
  if (enter > leave) return undefined;
  const at = (t: number): PicturePoint => ({ x: from.x + t * dx, y: from.y + t * dy });
  return [enter === 0 ? from : at(enter), leave === 1 ? to : at(leave)];
}
