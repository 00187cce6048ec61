import type { RotorPicture } from './aircraftPicture.ts';
import { closedPath } from './path.ts';
import type { Point } from './shapes.ts';

/** Share of a blade's width ahead of its axis, towards where it turns. Common practice, no source. */
const AHEAD = 0.55;

/** A propeller at rest, seen from above, with its true widths; blades are drawn without sweep. */
export function propellerPath(centre: Point, rotor: RotorPicture, turn: number): string {
  const radius = rotor.propellerRadius * 1000;
  const way = rotor.spin === 'clockwise' ? 1 : -1;
  const outline = [
    ...rotor.blade.map(({ at, width }) => ({ along: at, across: way * width * AHEAD })),
    ...rotor.blade.toReversed().map(({ at, width }) => ({ along: at, across: way * width * (AHEAD - 1) })),
  ];
  return Array.from({ length: rotor.blades }, (_, blade) => {
    const angle = turn + (blade * 2 * Math.PI) / rotor.blades;
    const [c, s] = [Math.cos(angle) * radius, Math.sin(angle) * radius];
    return closedPath(
      outline.map(({ along, across }) => ({
        x: centre.x + along * c - across * s,
        y: centre.y + along * s + across * c,
      })),
    );
  }).join('');
}
