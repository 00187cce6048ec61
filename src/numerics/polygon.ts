/** A corner of a polygon in its plane; a polygon is its corners in order, either way round, unclosed. */
export type Corner = readonly [x: number, y: number];

/** Area, centroid and second moments about the plane's origin (Green's theorem); orientation-free. In the corners' unit to the power of
 * two, one and four. */
export interface PolygonMoments {
  readonly area: number;
  readonly centroid: Corner;
  /** Integral of x2, y2 and xy over the area. */
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/** @throws RangeError when fewer than three corners are given or they enclose nothing. */
export function polygonMoments(corners: readonly Corner[]): PolygonMoments {
  let [area, sx, sy, xx, yy, xy] = [0, 0, 0, 0, 0, 0];
  forEdges(corners, ([x0, y0], [x1, y1]) => {
    const cross = x0 * y1 - x1 * y0;
    area += cross / 2;
    sx += (cross * (x0 + x1)) / 6;
    sy += (cross * (y0 + y1)) / 6;
    xx += (cross * (x0 * x0 + x0 * x1 + x1 * x1)) / 12;
    yy += (cross * (y0 * y0 + y0 * y1 + y1 * y1)) / 12;
    xy += (cross * (2 * x0 * y0 + x0 * y1 + x1 * y0 + 2 * x1 * y1)) / 24;
  });
  if (corners.length < 3 || area === 0) {
    throw new RangeError(`corners: a polygon needs 3 or more that enclose an area, got ${corners.length}`);
  }
  const sign = Math.sign(area);
  return {
    area: Math.abs(area),
    centroid: [sx / area, sy / area],
    xx: sign * xx,
    yy: sign * yy,
    xy: sign * xy,
  };
}

/** Distance from a point to the polygon's edge, negative inside, with the nearest point on the edge. */
export function distanceToPolygon(
  [px, py]: Corner,
  corners: readonly Corner[],
): { readonly distance: number; readonly nearest: Corner } {
  let best = Number.POSITIVE_INFINITY;
  let nearest: Corner = [px, py];
  let inside = false;
  forEdges(corners, ([x0, y0], [x1, y1]) => {
    const [dx, dy] = [x1 - x0, y1 - y0];
    const length2 = dx * dx + dy * dy;
    const along = length2 > 0 ? ((px - x0) * dx + (py - y0) * dy) / length2 : 0;
    const t = Math.min(1, Math.max(0, along));
    const point: Corner = [x0 + t * dx, y0 + t * dy];
    const distance = Math.hypot(px - point[0], py - point[1]);
    if (distance < best) [best, nearest] = [distance, point];
    if (y0 > py !== y1 > py && px < x0 + ((py - y0) / (y1 - y0)) * dx) inside = !inside;
  });
  return { distance: inside ? -best : best, nearest };
}

function forEdges(corners: readonly Corner[], visit: (from: Corner, to: Corner) => void): void {
  let from = corners[corners.length - 1];
  for (const to of corners) {
    if (from !== undefined) visit(from, to);
    from = to;
  }
}
