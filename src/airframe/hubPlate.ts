import {
  addBanded,
  type Banded,
  banded,
  factorBanded,
  multiplyBanded,
  solveBanded,
} from '../numerics/banded.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { HubStructure } from './frameModel.ts';
import {
  type Corners,
  type PlateStiffness,
  plateArea,
  plateBending,
  plateStretching,
} from './plateElement.ts';
import type { Point2 } from './types.ts';

/** The middle of a one-piece plate, from the held patch in its centre out to its edge. */
export interface HubPlate {
  /** Edge in plan, convex round the origin [m]. */
  readonly outline: readonly Point2[];
  /** Radius of the middle that the stack and pack hold stiff [m]. */
  readonly heldRadius: number;
  readonly stiffness: PlateStiffness;
  /** Mass over area [kg/m2] */
  readonly areaDensity: number;
}

/** Where an arm leaves the plate: its direction and width, its root on the edge [m]. */
export interface PlateRoot {
  readonly root: Point2;
  readonly yaw: number;
  readonly width: number;
}

const RINGS = 4;
/** Widest angle between spokes [rad]. */
const SPOKE = (2 * Math.PI) / 24;

/**
 * Stiffness and mass of the hub's plate seen from its held middle and the arms' roots. Nodes on spokes
 * and rings; each arm's root section is rigid across its width, as beam theory has it.
 *
 * @throws RangeError when the held middle reaches an arm's root or a corner of the outline
 */
export function condenseHubPlate(
  plate: HubPlate,
  roots: readonly PlateRoot[],
): Outcome<HubStructure['plate']> {
  const inner = Math.min(
    ...plate.outline.map(([x, y]) => edgeRadius(plate.outline, Math.atan2(y, x))),
    ...roots.map(({ root }) => Math.hypot(...root)),
  );
  if (!(plate.heldRadius > 0 && plate.heldRadius < inner)) {
    throw new RangeError(`heldRadius: must be over 0 and under ${inner} m, got ${plate.heldRadius}`);
  }
  const spokes = spokeAngles(roots);
  const mesh = plateMesh(plate, spokes, roots);
  const size = 6 * (1 + roots.length);
  const stiffness = new Float64Array(size * size);
  const mass = new Float64Array(size * size);
  for (const kind of [BENDING, STRETCHING]) {
    const outcome = condenseKind(plate, mesh, kind, size, stiffness, mass);
    if (!outcome.ok) return outcome;
  }
  // The held middle is a flat disc of its own, about the origin.
  const disc = plate.areaDensity * Math.PI * plate.heldRadius ** 2;
  const own = [
    disc,
    disc,
    disc,
    (disc * plate.heldRadius ** 2) / 4,
    (disc * plate.heldRadius ** 2) / 4,
    (disc * plate.heldRadius ** 2) / 2,
  ];
  for (const [i, value] of own.entries()) mass[i * size + i] = (mass[i * size + i] as number) + value;
  return solved({ stiffness, mass });
}

interface Mesh {
  readonly nodes: Float64Array;
  readonly elements: readonly (readonly [number, number, number, number])[];
  /** Interface node that holds each mesh node, or -1. */
  readonly heldBy: Int32Array;
  readonly anchors: readonly Point2[];
  readonly perRing: number;
}

/** Spokes at the sides and middle of each arm's root, and evenly between. */
function spokeAngles(
  roots: readonly PlateRoot[],
): readonly { readonly angle: number; readonly root: number }[] {
  const fixed: { angle: number; root: number }[] = [];
  for (const [index, { root, yaw, width }] of roots.entries()) {
    for (const side of [-1, 0, 1]) {
      const x = root[0] - Math.sin(yaw) * side * (width / 2);
      const y = root[1] + Math.cos(yaw) * side * (width / 2);
      fixed.push({ angle: Math.atan2(y, x), root: index });
    }
  }
  fixed.sort((a, b) => a.angle - b.angle);
  return fixed.flatMap((spoke, i) => {
    const next = fixed[(i + 1) % fixed.length] ?? spoke;
    const gap = (next.angle - spoke.angle + 2 * Math.PI) % (2 * Math.PI) || 2 * Math.PI;
    const steps = Math.max(1, Math.round(gap / SPOKE));
    return Array.from({ length: steps }, (_, k) => ({
      angle: spoke.angle + (gap * k) / steps,
      root: k === 0 ? spoke.root : -1,
    }));
  });
}

function plateMesh(
  plate: HubPlate,
  spokes: readonly { readonly angle: number; readonly root: number }[],
  roots: readonly PlateRoot[],
): Mesh {
  const count = spokes.length;
  const nodes = new Float64Array(2 * count * (RINGS + 1));
  const heldBy = new Int32Array(count * (RINGS + 1)).fill(-1);
  // Folded order round a ring (0, last, 1, last but one ...) keeps the band narrow across the seam.
  const fold = (j: number): number => (j <= (count - 1) / 2 ? 2 * j : 2 * (count - j) - 1);
  const place = (ring: number, j: number): number => ring * count + fold(j % count);
  for (const [j, { angle, root }] of spokes.entries()) {
    const at = roots[root];
    const edge = at === undefined ? edgeRadius(plate.outline, angle) : rootRadius(at, angle);
    for (let ring = 0; ring <= RINGS; ring++) {
      const radius = plate.heldRadius + (edge - plate.heldRadius) * graded(ring);
      const node = place(ring, j);
      nodes[2 * node] = radius * Math.cos(angle);
      nodes[2 * node + 1] = radius * Math.sin(angle);
      if (ring === 0) heldBy[node] = 0;
      if (ring === RINGS && root >= 0) heldBy[node] = 1 + root;
    }
  }
  const elements: [number, number, number, number][] = [];
  for (let ring = 0; ring < RINGS; ring++) {
    for (let j = 0; j < count; j++) {
      elements.push([place(ring, j), place(ring + 1, j), place(ring + 1, j + 1), place(ring, j + 1)]);
    }
  }
  const anchors: readonly Point2[] = [[0, 0], ...roots.map(({ root }) => root)];
  return { nodes, elements, heldBy, anchors, perRing: count };
}

/** Distance from the origin to a straight root section along a spoke [m]. */
const rootRadius = ({ root, yaw }: PlateRoot, angle: number): number =>
  (root[0] * Math.cos(yaw) + root[1] * Math.sin(yaw)) / Math.cos(angle - yaw);

/** Distance from the origin to an outline along a ray [m]. */
function edgeRadius(outline: readonly Point2[], angle: number): number {
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  let reach = 0;
  let from = outline[outline.length - 1] ?? [0, 0];
  for (const to of outline) {
    const [ex, ey] = [to[0] - from[0], to[1] - from[1]];
    const cross = dx * ey - dy * ex;
    if (cross !== 0) {
      const along = (from[0] * ey - from[1] * ex) / cross;
      const share = (from[0] * dy - from[1] * dx) / cross;
      if (share >= -1e-9 && share <= 1 + 1e-9) reach = Math.max(reach, along);
    }
    from = to;
  }
  return reach;
}

/** Which dofs of a node make one of the two problems, and how an anchor's motion moves them. */
interface Kind {
  readonly dofs: number;
  readonly anchorDofs: readonly number[];
  readonly element: (corners: Corners, plate: PlateStiffness) => Float64Array;
  /** Motion of a node [dx, dy] from the anchor for unit anchor dof. */
  readonly motion: (anchorDof: number, dx: number, dy: number) => readonly number[];
  readonly massShare: readonly number[];
}

const BENDING: Kind = {
  dofs: 3,
  anchorDofs: [2, 3, 4],
  element: plateBending,
  motion: (dof, dx, dy) => (dof === 2 ? [1, 0, 0] : dof === 3 ? [dy, 1, 0] : [-dx, 0, 1]),
  massShare: [1, 0, 0],
};

const STRETCHING: Kind = {
  dofs: 2,
  anchorDofs: [0, 1, 5],
  element: plateStretching,
  motion: (dof, dx, dy) => (dof === 0 ? [1, 0] : dof === 1 ? [0, 1] : [-dy, dx]),
  massShare: [1, 1],
};

function condenseKind(
  plate: HubPlate,
  mesh: Mesh,
  kind: Kind,
  size: number,
  stiffness: Float64Array,
  mass: Float64Array,
): Outcome<true> {
  const nodeCount = mesh.heldBy.length;
  const n = nodeCount * kind.dofs;
  const whole = banded(n, (mesh.perRing + 3) * kind.dofs - 1);
  const lumped = new Float64Array(n);
  const corners = new Float64Array(8);
  for (const element of mesh.elements) {
    for (const [a, node] of element.entries())
      corners.set(mesh.nodes.subarray(2 * node, 2 * node + 2), 2 * a);
    scatterElement(whole, element, kind.dofs, kind.element(corners, plate.stiffness));
    const share = (plateArea(corners) * plate.areaDensity) / 4;
    for (const node of element) {
      for (const [d, part] of kind.massShare.entries()) {
        lumped[node * kind.dofs + d] = (lumped[node * kind.dofs + d] as number) + share * part;
      }
    }
  }
  const fixed = fixHeld(whole, mesh.heldBy, kind.dofs);
  const factors = factorBanded(fixed);
  if (factors === undefined) return noSolution('the hub plate has a loose part');
  const shapes: { at: number; u: Float64Array; force: Float64Array }[] = [];
  for (let anchor = 0; anchor < mesh.anchors.length; anchor++) {
    for (const dof of kind.anchorDofs) {
      const u = heldMotion(mesh, kind, anchor, dof);
      const right = new Float64Array(n);
      multiplyBanded(whole, u, right);
      for (let i = 0; i < n; i++)
        right[i] =
          (mesh.heldBy[Math.floor(i / kind.dofs)] as number) >= 0 ? (u[i] as number) : -(right[i] as number);
      solveBanded(factors, right);
      const force = new Float64Array(n);
      multiplyBanded(whole, right, force);
      shapes.push({ at: anchor * 6 + dof, u: right, force });
    }
  }
  for (const a of shapes) {
    for (const b of shapes) {
      let [k, m] = [0, 0];
      for (let i = 0; i < n; i++) {
        const ai = a.u[i] as number;
        k += ai * (b.force[i] as number);
        m += ai * (lumped[i] as number) * (b.u[i] as number);
      }
      stiffness[a.at * size + b.at] = k;
      mass[a.at * size + b.at] = (mass[a.at * size + b.at] as number) + m;
    }
  }
  return solved(true);
}

function scatterElement(into: Banded, element: readonly number[], dofs: number, k: Float64Array): void {
  const n = element.length * dofs;
  for (let i = 0; i < n; i++) {
    const row = (element[Math.floor(i / dofs)] as number) * dofs + (i % dofs);
    for (let j = 0; j < n; j++) {
      const column = (element[Math.floor(j / dofs)] as number) * dofs + (j % dofs);
      if (column <= row) addBanded(into, row, column, k[i * n + j] as number);
    }
  }
}

/** A copy with held nodes' rows and columns replaced by the unit matrix. */
function fixHeld(matrix: Banded, heldBy: Int32Array, dofs: number): Banded {
  const { size, width } = matrix;
  const values = Float64Array.from(matrix.values);
  const isHeld = (i: number): boolean => (heldBy[Math.floor(i / dofs)] as number) >= 0;
  for (let i = 0; i < size; i++) {
    const rowHeld = isHeld(i);
    for (let j = Math.max(0, i - width); j <= i; j++) {
      if (rowHeld || isHeld(j)) values[i * (width + 1) + j - i + width] = i === j ? 1 : 0;
    }
  }
  return { size, width, values };
}

function heldMotion(mesh: Mesh, kind: Kind, anchor: number, dof: number): Float64Array {
  const u = new Float64Array(mesh.heldBy.length * kind.dofs);
  const [x0, y0] = mesh.anchors[anchor] ?? [0, 0];
  for (const [node, holder] of mesh.heldBy.entries()) {
    if (holder !== anchor) continue;
    const dx = (mesh.nodes[2 * node] as number) - x0;
    const dy = (mesh.nodes[2 * node + 1] as number) - y0;
    u.set(kind.motion(dof, dx, dy), node * kind.dofs);
  }
  return u;
}

/** Rings crowd the held middle and the edge, where bending changes fastest. */
const graded = (ring: number): number => (1 - Math.cos((Math.PI * ring) / RINGS)) / 2;
