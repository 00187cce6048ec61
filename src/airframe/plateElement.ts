/**
 * One four-cornered flat plate element in plan: bending with shear (MITC4, Dvorkin and Bathe 1984) and
 * stretching with incompatible modes (Taylor, Beresford and Wilson 1976). The two do not mix in a flat
 * even plate, so they come apart: bending in w, rotation about x, rotation about y; stretching in u, v.
 */

/** Stiffness of a plate per unit width, in the plan's axes, 3 x 3 row-major (x, y, xy). */
export interface PlateStiffness {
  /** [N/m] */
  readonly stretching: Float64Array;
  /** [N m] */
  readonly bending: Float64Array;
  /** Shear through the thickness, x and y, with the 5/6 in it [N/m]. */
  readonly shear: readonly [number, number];
}

/** Corners in order round the element, x0 y0 x1 y1 ... [m]. */
export type Corners = Float64Array;

const G = 1 / Math.sqrt(3);
const POINTS = [
  [-G, -G],
  [G, -G],
  [G, G],
  [-G, G],
] as const;
const XI = [-1, 1, 1, -1] as const;
const ETA = [-1, -1, 1, 1] as const;

interface Mapping {
  /** dN/dxi, dN/deta of the four corners. */
  readonly dxi: Float64Array;
  readonly deta: Float64Array;
  readonly n: Float64Array;
  readonly j: readonly [xXi: number, yXi: number, xEta: number, yEta: number];
  readonly det: number;
}

function mapping(corners: Corners, xi: number, eta: number): Mapping {
  const [n, dxi, deta] = [new Float64Array(4), new Float64Array(4), new Float64Array(4)];
  let [xXi, yXi, xEta, yEta] = [0, 0, 0, 0];
  for (const a of [0, 1, 2, 3] as const) {
    n[a] = ((1 + XI[a] * xi) * (1 + ETA[a] * eta)) / 4;
    const px = (XI[a] * (1 + ETA[a] * eta)) / 4;
    const pe = (ETA[a] * (1 + XI[a] * xi)) / 4;
    dxi[a] = px;
    deta[a] = pe;
    const [x, y] = [corners[2 * a] as number, corners[2 * a + 1] as number];
    xXi += px * x;
    yXi += px * y;
    xEta += pe * x;
    yEta += pe * y;
  }
  return { n, dxi, deta, j: [xXi, yXi, xEta, yEta], det: xXi * yEta - yXi * xEta };
}

/** Cartesian gradient from one with respect to xi and eta. */
const gradient = (
  { j: [xXi, yXi, xEta, yEta], det }: Mapping,
  a: number,
  b: number,
): readonly [number, number] => [(yEta * a - yXi * b) / det, (-xEta * a + xXi * b) / det];

/** 12 x 12, dofs w, rx, ry a corner. */
export function plateBending(corners: Corners, plate: PlateStiffness): Float64Array {
  const k = new Float64Array(144);
  const shearRows = [covariantShear(corners, 0, -1, 0), covariantShear(corners, 0, 1, 0)] as const;
  const shearColumns = [covariantShear(corners, -1, 0, 1), covariantShear(corners, 1, 0, 1)] as const;
  const b = [new Float64Array(12), new Float64Array(12), new Float64Array(12)] as const;
  const s = [new Float64Array(12), new Float64Array(12)] as const;
  for (const [xi, eta] of POINTS) {
    const map = mapping(corners, xi, eta);
    for (let a = 0; a < 4; a++) {
      const [nx, ny] = gradient(map, map.dxi[a] as number, map.deta[a] as number);
      b[0][3 * a + 2] = nx;
      b[1][3 * a + 1] = -ny;
      b[2][3 * a + 1] = -nx;
      b[2][3 * a + 2] = ny;
    }
    for (let i = 0; i < 12; i++) {
      const along = ((1 - eta) * (shearRows[0][i] as number) + (1 + eta) * (shearRows[1][i] as number)) / 2;
      const across =
        ((1 - xi) * (shearColumns[0][i] as number) + (1 + xi) * (shearColumns[1][i] as number)) / 2;
      const [gx, gy] = gradient(map, along, across);
      s[0][i] = gx;
      s[1][i] = gy;
    }
    addQuadratic(k, 12, b, plate.bending, map.det);
    addQuadratic(k, 12, s, Float64Array.of(plate.shear[0], 0, 0, plate.shear[1]), map.det);
  }
  return k;
}

/** Covariant transverse shear, along xi (way 0) or eta (way 1), as a row over the twelve dofs. */
function covariantShear(corners: Corners, xi: number, eta: number, way: 0 | 1): Float64Array {
  const map = mapping(corners, xi, eta);
  const [x, y] = way === 0 ? [map.j[0], map.j[1]] : [map.j[2], map.j[3]];
  const derivative = way === 0 ? map.dxi : map.deta;
  const row = new Float64Array(12);
  for (let a = 0; a < 4; a++) {
    row[3 * a] = derivative[a] as number;
    row[3 * a + 1] = -y * (map.n[a] as number);
    row[3 * a + 2] = x * (map.n[a] as number);
  }
  return row;
}

/** 8 x 8, dofs u, v a corner. */
export function plateStretching(corners: Corners, plate: PlateStiffness): Float64Array {
  const whole = new Float64Array(144);
  const middle = mapping(corners, 0, 0);
  const b = [new Float64Array(12), new Float64Array(12), new Float64Array(12)] as const;
  for (const [xi, eta] of POINTS) {
    const map = mapping(corners, xi, eta);
    for (let a = 0; a < 4; a++) {
      setStretch(b, 2 * a, gradient(map, map.dxi[a] as number, map.deta[a] as number));
    }
    // Bubbles 1 - xi2 and 1 - eta2, mapped by the middle's Jacobian so that even strain stays even.
    const scale = middle.det / map.det;
    const [ax, ay] = gradient(middle, -2 * xi, 0);
    const [bx, by] = gradient(middle, 0, -2 * eta);
    setStretch(b, 8, [ax * scale, ay * scale]);
    setStretch(b, 10, [bx * scale, by * scale]);
    addQuadratic(whole, 12, b, plate.stretching, map.det);
  }
  return condenseLast(whole, 12, 4);
}

function setStretch(b: readonly Float64Array[], at: number, [nx, ny]: readonly [number, number]): void {
  const [xx, yy, xy] = b;
  if (xx === undefined || yy === undefined || xy === undefined) return;
  xx[at] = nx;
  yy[at + 1] = ny;
  xy[at] = ny;
  xy[at + 1] = nx;
}

/** k += B^T D B scale */
function addQuadratic(
  k: Float64Array,
  n: number,
  b: readonly Float64Array[],
  d: Float64Array,
  scale: number,
): void {
  const m = b.length;
  for (const [p, left] of b.entries()) {
    for (const [q, right] of b.entries()) {
      const value = (d[p * m + q] as number) * scale;
      if (value === 0) continue;
      for (let i = 0; i < n; i++) {
        const x = (left[i] as number) * value;
        if (x === 0) continue;
        for (let j = 0; j < n; j++) k[i * n + j] = (k[i * n + j] as number) + x * (right[j] as number);
      }
    }
  }
}

/** Eliminates the last `count` unknowns one by one. */
function condenseLast(k: Float64Array, n: number, count: number): Float64Array {
  const keep = n - count;
  for (let p = n - 1; p >= keep; p--) {
    const pivot = k[p * n + p] as number;
    for (let i = 0; i < p; i++) {
      const factor = (k[i * n + p] as number) / pivot;
      for (let j = 0; j < p; j++) k[i * n + j] = (k[i * n + j] as number) - factor * (k[p * n + j] as number);
    }
  }
  const out = new Float64Array(keep * keep);
  for (let i = 0; i < keep; i++) out.set(k.subarray(i * n, i * n + keep), i * keep);
  return out;
}

/** Area of the element [m2]. */
export function plateArea(corners: Corners): number {
  const [x0, y0, x1, y1, x2, y2, x3, y3] = corners as unknown as readonly number[];
  return Math.abs(
    (((x2 ?? 0) - (x0 ?? 0)) * ((y3 ?? 0) - (y1 ?? 0)) - ((x3 ?? 0) - (x1 ?? 0)) * ((y2 ?? 0) - (y0 ?? 0))) /
      2,
  );
}
