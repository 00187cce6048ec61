import { type PlateModuli, type SectionStiffness, sectionStiffness } from './section.ts';

/**
 * One straight tapered Timoshenko beam element in its own axes (x along, y across in the plate's
 * plane, z through it), two nodes of six: u, v, w, then rotations about x, y, z. Rotations are
 * right-handed: w' = -rotation about y, v' = +rotation about z.
 */

export interface ElementShape {
  readonly length: number;
  /** [m] at a distance from its left node; also asked a little beyond it for soft ends. */
  readonly widthAt: (x: number) => number;
  readonly thickness: number;
  readonly moduli: PlateModuli;
  /** [kg/m3] */
  readonly density: number;
  /** Where the flexible part begins and ends, by kind of bending, from the left node [m]. */
  readonly flexible: {
    readonly axial: readonly [number, number];
    readonly outOfPlane: readonly [number, number];
    readonly inPlane: readonly [number, number];
    readonly torsion: readonly [number, number];
  };
}

const GAUSS: readonly (readonly [point: number, weight: number])[] = [
  [0.069431844202974, 0.173927422568727],
  [0.330009478207572, 0.326072577431273],
  [0.669990521792428, 0.326072577431273],
  [0.930568155797026, 0.173927422568727],
];

/**
 * Stiffness, 12 x 12 row-major, from its flexibility: the deformation of its right end under loads
 * there, integrated over the true taper, inverted, then carried to both nodes by equilibrium. Exact
 * for loads at the nodes whatever the taper.
 */
export function elementStiffness(shape: ElementShape): Float64Array {
  const { length } = shape;
  const along = integrate(shape, shape.flexible.axial, (s) => [1 / s.axial]);
  const twist = integrate(shape, shape.flexible.torsion, (s) => [1 / s.torsion]);
  const up = integrate(shape, shape.flexible.outOfPlane, (s, arm) => [
    (arm * arm) / s.outOfPlane + 1 / s.shearOutOfPlane,
    -arm / s.outOfPlane,
    1 / s.outOfPlane,
  ]);
  const side = integrate(shape, shape.flexible.inPlane, (s, arm) => [
    (arm * arm) / s.inPlane + 1 / s.shearInPlane,
    arm / s.inPlane,
    1 / s.inPlane,
  ]);
  const k = new Float64Array(144);
  stretch(k, 1 / (along[0] as number), 0);
  stretch(k, 1 / (twist[0] as number), 3);
  bend(k, up, 2, 4, -length);
  bend(k, side, 1, 5, length);
  return k;
}

function stretch(k: Float64Array, stiffness: number, at: number): void {
  addPairs(
    k,
    [
      [at, -1],
      [at + 6, 1],
    ],
    [
      [at, -1],
      [at + 6, 1],
    ],
    stiffness,
  );
}

/**
 * Inverts the 2 x 2 flexibility of one bending plane and carries it to both nodes: what deforms is the
 * right end's shift and turn less what the left node carries along, its turn through `lever`.
 */
function bend(k: Float64Array, flexibility: Float64Array, shift: number, turn: number, lever: number): void {
  const [a, b, c] = flexibility as unknown as [number, number, number];
  const determinant = a * c - b * b;
  const shifting: Combination = [
    [shift, -1],
    [shift + 6, 1],
    [turn, -lever],
  ];
  const turning: Combination = [
    [turn, -1],
    [turn + 6, 1],
  ];
  addPairs(k, shifting, shifting, c / determinant);
  addPairs(k, shifting, turning, -b / determinant);
  addPairs(k, turning, shifting, -b / determinant);
  addPairs(k, turning, turning, a / determinant);
}

/** A deformation as a sum of nodal degrees of freedom. */
type Combination = readonly (readonly [at: number, share: number])[];

function addPairs(k: Float64Array, left: Combination, right: Combination, stiffness: number): void {
  for (const [i, x] of left) {
    for (const [j, y] of right) k[i * 12 + j] = (k[i * 12 + j] as number) + x * y * stiffness;
  }
}

function integrate(
  shape: ElementShape,
  [from, to]: readonly [number, number],
  terms: (section: SectionStiffness, arm: number) => readonly number[],
): Float64Array {
  const out = new Float64Array(3);
  const span = to - from;
  for (const [point, weight] of GAUSS) {
    const x = from + span * point;
    const section = sectionStiffness(shape.widthAt(x), shape.thickness, shape.moduli);
    for (const [i, term] of terms(section, shape.length - x).entries()) {
      out[i] = (out[i] as number) + term * weight * span;
    }
  }
  return out;
}

/**
 * Consistent mass, 12 x 12 row-major, with the shape functions of a uniform Timoshenko beam of the
 * element's middle (Friedman and Kosmatka 1993) and the true taper in area and rotary inertia.
 */
export function elementMass(shape: ElementShape): Float64Array {
  const { length, thickness, density } = shape;
  const m = new Float64Array(144);
  const middle = sectionStiffness(shape.widthAt(length / 2), thickness, shape.moduli);
  const phiUp = (12 * middle.outOfPlane) / (middle.shearOutOfPlane * length * length);
  const phiSide = (12 * middle.inPlane) / (middle.shearInPlane * length * length);
  const row = new Float64Array(12);
  for (const [x, weight] of GAUSS) {
    const width = shape.widthAt(x * length);
    const scale = density * width * thickness * weight * length;
    const rotaryUp = thickness ** 2 / 12;
    const rotarySide = width ** 2 / 12;
    row.fill(0);
    row[0] = 1 - x;
    row[6] = x;
    addOuter(m, row, scale);
    row.fill(0);
    row[3] = 1 - x;
    row[9] = x;
    addOuter(m, row, scale * (rotaryUp + rotarySide));
    transverse(row, x, length, phiUp, 2, 4, -1);
    addOuter(m, row, scale);
    rotation(row, x, length, phiUp, 2, 4, -1);
    addOuter(m, row, scale * rotaryUp);
    transverse(row, x, length, phiSide, 1, 5, 1);
    addOuter(m, row, scale);
    rotation(row, x, length, phiSide, 1, 5, 1);
    addOuter(m, row, scale * rotarySide);
  }
  return m;
}

function transverse(
  n: Float64Array,
  x: number,
  h: number,
  phi: number,
  shift: number,
  turn: number,
  sign: number,
): void {
  n.fill(0);
  const [x2, x3, f] = [x * x, x * x * x, 1 / (1 + phi)];
  n[shift] = (1 - 3 * x2 + 2 * x3 + phi * (1 - x)) * f;
  n[turn] = sign * h * (x - 2 * x2 + x3 + (phi * (x - x2)) / 2) * f;
  n[shift + 6] = (3 * x2 - 2 * x3 + phi * x) * f;
  n[turn + 6] = sign * h * (x3 - x2 - (phi * (x - x2)) / 2) * f;
}

function rotation(
  n: Float64Array,
  x: number,
  h: number,
  phi: number,
  shift: number,
  turn: number,
  sign: number,
): void {
  n.fill(0);
  const [x2, f] = [x * x, 1 / (1 + phi)];
  n[shift] = ((sign * 6 * (x2 - x)) / h) * f;
  n[turn] = (1 - 4 * x + 3 * x2 + phi * (1 - x)) * f;
  n[shift + 6] = ((sign * 6 * (x - x2)) / h) * f;
  n[turn + 6] = (3 * x2 - 2 * x + phi * x) * f;
}

function addOuter(m: Float64Array, row: Float64Array, scale: number): void {
  for (let i = 0; i < 12; i++) {
    const a = (row[i] as number) * scale;
    if (a === 0) continue;
    for (let j = 0; j < 12; j++) m[i * 12 + j] = (m[i * 12 + j] as number) + a * (row[j] as number);
  }
}
