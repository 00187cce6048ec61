type Point = readonly [x: number, y: number];

/**
 * How far a point lies outside the convex hull of some points [same unit]; 0 inside or on it. The
 * largest distance by which any direction separates them, over the directions of all pairs.
 */
export function distanceOutside(points: readonly Point[], point: Point): number {
  const inside = (nx: number, ny: number): number => {
    let furthest = Number.NEGATIVE_INFINITY;
    for (const p of points) furthest = Math.max(furthest, nx * (p[0] - point[0]) + ny * (p[1] - point[1]));
    return furthest;
  };
  let distance = 0;
  const tryNormal = (dx: number, dy: number): void => {
    const length = Math.hypot(dx, dy);
    if (length === 0) return;
    distance = Math.max(distance, -inside(dx / length, dy / length));
  };
  for (const p of points) {
    tryNormal(point[0] - p[0], point[1] - p[1]);
    for (const q of points) {
      tryNormal(q[1] - p[1], p[0] - q[0]);
      tryNormal(p[1] - q[1], q[0] - p[0]);
    }
  }
  return distance;
}
