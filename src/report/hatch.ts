import type { Point } from './shapes.ts';

/**
 * Section lines at 45 degrees inside an outline, `spacing` apart [mm]; `rising` leans like a
 * slash, `falling` like a backslash. Computed rather than patterned, so that a drawing needs no
 * ids and prints alike anywhere. The outline may have dents (even-odd rule).
 */
export function hatch(
  outline: readonly Point[],
  spacing: number,
  lean: 'rising' | 'falling',
): (readonly [Point, Point])[] {
  if (!(spacing > 0)) throw new RangeError(`spacing must be above 0 mm, got ${spacing}`);
  const sign = lean === 'rising' ? 1 : -1;
  // Turn so that the lines run along u and are counted along v.
  const turned = outline.map((p) => ({
    u: (p.x - sign * p.y) / Math.SQRT2,
    v: (sign * p.x + p.y) / Math.SQRT2,
  }));
  const lines: (readonly [Point, Point])[] = [];
  const lowest = Math.min(...turned.map((p) => p.v));
  const highest = Math.max(...turned.map((p) => p.v));
  for (let v = (Math.floor(lowest / spacing) + 0.5) * spacing; v < highest; v += spacing) {
    const crossings: number[] = [];
    turned.forEach((from, i) => {
      const to = turned[(i + 1) % turned.length];
      if (to === undefined || from.v > v === to.v > v) return;
      crossings.push(from.u + ((v - from.v) / (to.v - from.v)) * (to.u - from.u));
    });
    crossings.sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      lines.push([back(crossings[k] ?? 0, v, sign), back(crossings[k + 1] ?? 0, v, sign)]);
    }
  }
  return lines;
}

const back = (u: number, v: number, sign: number): Point => ({
  x: (u + sign * v) / Math.SQRT2,
  y: (v - sign * u) / Math.SQRT2,
});
