type Corner = readonly [x: number, y: number];
type Triangle = readonly [Corner, Corner, Corner];

/**
 * A simple polygon cut into triangles by ears (Meisters 1975, Amer. Math. Monthly 82): fine for
 * plate outlines of some tens of corners. Its triangles are wound alike and fill it exactly.
 *
 * @param outline at least three corners in order, either way round, not crossing; units as given
 * @throws RangeError when no ear is left or the areas differ, which means that the outline crosses itself
 */
export function triangulate(outline: readonly Corner[]): Triangle[] {
  if (outline.length < 3)
    throw new RangeError(`outline must have at least 3 corners; found ${outline.length}`);
  const rest = signedArea(outline) >= 0 ? [...outline] : [...outline].reverse();
  const triangles: Triangle[] = [];
  while (rest.length > 3) {
    const ear = rest.findIndex((_, i) => isEar(rest, i));
    if (ear < 0) throw new RangeError(`outline must not cross itself; ${rest.length} corners were left over`);
    const triangle = around(rest, ear);
    if (turn(...triangle) > 0) triangles.push(triangle);
    rest.splice(ear, 1);
  }
  const last = around(rest, 1);
  if (turn(...last) > 0) triangles.push(last);
  const whole = Math.abs(signedArea(outline));
  const cut = triangles.reduce((sum, triangle) => sum + turn(...triangle) / 2, 0);
  if (Math.abs(cut - whole) > 1e-6 * whole) {
    throw new RangeError(`outline must not cross itself; its area is ${whole} but its triangles' ${cut}`);
  }
  return triangles;
}

function around(corners: readonly Corner[], i: number): Triangle {
  const n = corners.length;
  const corner = (k: number): Corner => corners[(k + n) % n] ?? [0, 0];
  return [corner(i - 1), corner(i), corner(i + 1)];
}

function isEar(corners: readonly Corner[], i: number): boolean {
  const [a, b, c] = around(corners, i);
  // A straight or doubled corner is cut off as an ear without area.
  const bend = turn(a, b, c);
  if (bend < 0) return false;
  if (bend === 0) return true;
  return corners.every(
    (p) => p === a || p === b || p === c || turn(a, b, p) < 0 || turn(b, c, p) < 0 || turn(c, a, p) < 0,
  );
}

const turn = (a: Corner, b: Corner, c: Corner): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

function signedArea(corners: readonly Corner[]): number {
  let twice = 0;
  for (let i = 0; i < corners.length; i++) {
    const [a, b] = around(corners, i);
    twice += a[0] * b[1] - a[1] * b[0];
  }
  return twice / 2;
}
