import { closedPath } from './path.ts';
import type { Point } from './shapes.ts';

/**
 * Leading and trailing edge of a drawn blade, as shares of the radius at shares of the radius.
 * Only to look like a propeller at rest: the physics has its own chord tables.
 */
const EDGES = [
  { at: 0.1, lead: 0.03, trail: -0.03 },
  { at: 0.22, lead: 0.075, trail: -0.055 },
  { at: 0.4, lead: 0.1, trail: -0.075 },
  { at: 0.62, lead: 0.085, trail: -0.075 },
  { at: 0.84, lead: 0.05, trail: -0.065 },
  { at: 0.97, lead: 0.005, trail: -0.045 },
  { at: 1, lead: -0.02, trail: -0.03 },
];

/** A propeller at rest, seen from above; the leading edges face the way it turns. */
export function propellerPath(
  centre: Point,
  radius: number,
  blades: number,
  clockwise: boolean,
  turn: number,
): string {
  // More blades on one disc are drawn narrower, as they are cut.
  const slim = Math.min(1, 2.6 / blades);
  const way = clockwise ? 1 : -1;
  const outline = [
    ...EDGES.map((edge) => ({ along: edge.at, across: edge.lead * slim * way })),
    ...EDGES.toReversed().map((edge) => ({ along: edge.at, across: edge.trail * slim * way })),
  ];
  return Array.from({ length: blades }, (_, blade) => {
    const angle = turn + (blade * 2 * Math.PI) / blades;
    const [c, s] = [Math.cos(angle) * radius, Math.sin(angle) * radius];
    return closedPath(
      outline.map(({ along, across }) => ({
        x: centre.x + along * c - across * s,
        y: centre.y + along * s + across * c,
      })),
    );
  }).join('');
}
