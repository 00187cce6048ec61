import type { EndLength } from './endLength.ts';
import { type PlateModuli, type SectionStiffness, sectionStiffness, torsionStiffness } from './section.ts';

/**
 * One straight tapered Timoshenko beam element in its own axes (x along, y across in the plate's
 * plane, z through it), two nodes of six: u, v, w, then rotations about x, y, z. Rotations are
 * right-handed: w' = -rotation about y, v' = +rotation about z.
 */

export interface ElementShape {
  /** Of its left node from the arm's root, its own and the whole arm's length [m]. */
  readonly start: number;
  readonly length: number;
  readonly whole: number;
  readonly last: boolean;
  /** Width at a distance from the arm's root, also asked a little beyond its ends [m]. */
  readonly widthAt: (x: number) => number;
  readonly thickness: number;
  readonly moduli: PlateModuli;
  /** [kg/m3] */
  readonly density: number;
  readonly rootEnd: EndLength;
  readonly tipEnd: EndLength;
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
  const { moduli, thickness, start, length } = shape;
  const own = stationsIn(shape, start, start + length);
  const sum = (kind: keyof EndLength, of: (at: Station) => Flexibility) => flexibility(shape, kind, of, own);
  const axial = sum('axial', (at) => [0, 0, spread(at, moduli) / at.section.axial]);
  const twist = sum('torsion', ({ half }) => [0, 0, 1 / torsionStiffness(2 * half, thickness, moduli)]);
  const up = sum('outOfPlane', (at) => lever(-at.arm, at.section.outOfPlane / spread(at, moduli)));
  addTo(
    up,
    sum('shearOutOfPlane', ({ section }) => [1 / section.shearOutOfPlane, 0, 0]),
  );
  const side = sum('inPlane', ({ section, arm }) => lever(arm, section.inPlane));
  addTo(
    side,
    sum('shearInPlane', (at) => taperedShear(at, thickness, moduli.G12)),
  );
  const k = new Float64Array(144);
  stretch(k, 1 / (axial[2] as number), 0);
  stretch(k, 1 / (twist[2] as number), 3);
  bend(k, up, 2, 4, -length);
  bend(k, side, 1, 5, length);
  return k;
}

/** A cross-section: its stiffness, half width with its slope, and distance to the element's right end. */
interface Station {
  /** From the arm's root [m]. */
  readonly x: number;
  /** Of the integration [m]. */
  readonly weight: number;
  readonly section: SectionStiffness;
  readonly half: number;
  readonly slope: number;
  readonly arm: number;
}

/** Flexibility [shift-shift, shift-turn, turn-turn] of unit length. */
type Flexibility = readonly [ss: number, st: number, tt: number];

const lever = (arm: number, bending: number): Flexibility => [
  (arm * arm) / bending,
  arm / bending,
  1 / bending,
];

/**
 * Give of a tapering section over that of an even one. Stress along sloping fibres shears the plate by
 * its slope times y/h: with even stress that adds slope2 E1 / 3 G12 (an upper bound), with plane
 * sections nothing (a lower one); the mean is taken.
 */
const spread = ({ slope }: Station, { E1, G12 }: PlateModuli): number => 1 + (slope ** 2 * E1) / (6 * G12);

/**
 * Shear across the width. Sloping edges carry part of it as bending stress along them: the shear stress
 * that balances M y / I in a tapering section is M h h'/I - (h2 - y2)(V + 3 M h'/h)/2I, h half the
 * width (the balance in Bleich 1932, Balduzzi 2016; untapered it is the parabola, 5/6).
 */
function taperedShear({ half: h, slope, arm }: Station, thickness: number, G12: number): Flexibility {
  const inertia = (2 * thickness * h ** 3) / 3;
  const scale = thickness / (G12 * inertia ** 2);
  const [pv, pm] = [h * slope * arm, h * slope];
  const [qv, qm] = [(1 + (3 * slope * arm) / h) / 2, (1.5 * slope) / h];
  const product = (p1: number, q1: number, p2: number, q2: number): number =>
    scale * (2 * h * p1 * p2 - (4 / 3) * h ** 3 * (p1 * q2 + p2 * q1) + (16 / 15) * h ** 5 * q1 * q2);
  return [product(pv, qv, pv, qv), product(pv, qv, pm, qm), product(pm, qm, pm, qm)];
}

function addTo(sum: Float64Array, more: Float64Array): void {
  for (const [i, value] of more.entries()) sum[i] = (sum[i] as number) + value;
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

/**
 * Integrates a unit-length flexibility over the element. A soft root or tip adds its length with the
 * end's section; a held one takes away exp(-x / length), which sums to that length.
 *
 * @param own stations between the nodes, for where no end reaches
 */
function flexibility(
  shape: ElementShape,
  kind: keyof EndLength,
  of: (at: Station) => Flexibility,
  own: readonly Station[],
): Float64Array {
  const { start, length, whole } = shape;
  const [root, tip] = [shape.rootEnd[kind], shape.tipEnd[kind]];
  const from = start === 0 ? start - Math.max(0, root) : start;
  const to = start + length + (shape.last ? Math.max(0, tip) : 0);
  const cuts = [from, ...decayCuts(0, -root, 1, from, to), ...decayCuts(whole, -tip, -1, from, to), to];
  cuts.sort((a, b) => a - b);
  const isPlain = cuts.length === 2 && from === start && to === start + length;
  const stations = isPlain ? own : cuts.slice(1).flatMap((b, i) => stationsIn(shape, cuts[i] as number, b));
  const out = new Float64Array(3);
  for (const station of stations) {
    const { x, weight } = station;
    const share = weight * (1 - held(x, -root, whole) - held(whole - x, -tip, whole));
    const [shifts, mixed, turns] = of(station);
    out[0] = (out[0] as number) + shifts * share;
    out[1] = (out[1] as number) + mixed * share;
    out[2] = (out[2] as number) + turns * share;
  }
  return out;
}

function stationsIn(shape: ElementShape, from: number, to: number): readonly Station[] {
  const { start, length, thickness, moduli, widthAt } = shape;
  const step = 1e-3 * length;
  return GAUSS.map(([point, weight]) => {
    const x = from + (to - from) * point;
    const width = widthAt(x);
    return {
      x,
      weight: weight * (to - from),
      section: sectionStiffness(width, thickness, moduli),
      half: width / 2,
      slope: (widthAt(x + step) - widthAt(x - step)) / (4 * step),
      arm: start + length - x,
    };
  });
}

/** Share of the flexibility held back at a distance from a held end, 0 at the far end. */
function held(distance: number, decay: number, whole: number): number {
  if (!(decay > 0) || distance > 30 * decay || distance < 0) return 0;
  const far = Math.exp(-(2 * whole) / decay);
  return (Math.exp(-distance / decay) - far * Math.exp(distance / decay)) / (1 - far);
}

/** Where to cut the integration so that the decay at an end is resolved. */
function decayCuts(end: number, decay: number, way: 1 | -1, from: number, to: number): readonly number[] {
  if (!(decay > 0)) return [];
  return [0.6, 2, 6].map((reach) => end + way * reach * decay).filter((x) => x > from && x < to);
}

/**
 * Consistent mass, 12 x 12 row-major, with the shape functions of a uniform Timoshenko beam of the
 * element's middle (Friedman and Kosmatka 1993) and the true taper in area and rotary inertia.
 */
export function elementMass(shape: ElementShape): Float64Array {
  const { length, thickness, density } = shape;
  const m = new Float64Array(144);
  const middle = sectionStiffness(shape.widthAt(shape.start + length / 2), thickness, shape.moduli);
  const phiUp = (12 * middle.outOfPlane) / (middle.shearOutOfPlane * length * length);
  const phiSide = (12 * middle.inPlane) / (middle.shearInPlane * length * length);
  const row = new Float64Array(12);
  for (const [x, weight] of GAUSS) {
    const width = shape.widthAt(shape.start + x * length);
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
