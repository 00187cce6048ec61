import { addBanded, type Banded, banded, factorBanded, solveBanded } from '../numerics/banded.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { type ElementShape, elementMass, elementStiffness } from './beamElement.ts';
import type { EndLength } from './endLength.ts';
import type { PlateModuli } from './section.ts';

/** A rigid body on the arm's end, its centre of gravity above the mid-plane. */
export interface TipBody {
  /** [kg] */
  readonly mass: number;
  /** Of its centre of gravity above the arm's mid-plane, up positive [m]. */
  readonly height: number;
  /** About its centre of gravity: x along the arm, y across, z upright [kg m2]. */
  readonly inertia: readonly [x: number, y: number, z: number];
}

/** An arm fixed at its root, in its own axes: x to the motor, y across, z down. */
export interface ArmBeam {
  /** Root to motor axis [m]. */
  readonly length: number;
  /** Half a list is fine: width at stations, `at` 0 to 1 [m]. */
  readonly outline: readonly { readonly at: number; readonly width: number }[];
  /** [m] */
  readonly thickness: number;
  readonly moduli: PlateModuli;
  /** [kg/m3] */
  readonly density: number;
  readonly rootEnd: EndLength;
  readonly tipEnd: EndLength;
  readonly tipBody?: TipBody;
}

/** Stiffness and mass of the arm's nodes, root first, six degrees of freedom each; band of 11. */
export interface ArmMatrices {
  readonly stiffness: Banded;
  readonly mass: Banded;
  readonly elements: number;
}

const ELEMENTS = 20;

export function assembleArm(arm: ArmBeam): ArmMatrices {
  const mass = assembled(arm, elementMass);
  if (arm.tipBody !== undefined) addTipBody(mass, arm.tipBody, mass.size - 6);
  return { stiffness: assembled(arm, elementStiffness), mass, elements: ELEMENTS };
}

function assembled(arm: ArmBeam, of: (shape: ElementShape) => Float64Array): Banded {
  const matrix = banded(6 * (ELEMENTS + 1), 11);
  const h = arm.length / ELEMENTS;
  for (let e = 0; e < ELEMENTS; e++) scatter(matrix, of(elementShape(arm, e, ELEMENTS, h)), e);
  return matrix;
}

/** The same matrix with the root fixed: its first six rows and columns left out (a view, not a copy). */
export const rootFixed = ({ size, width, values }: Banded): Banded => ({
  size: size - 6,
  width,
  values: values.subarray(6 * (width + 1)),
});

function elementShape(arm: ArmBeam, e: number, elements: number, h: number): ElementShape {
  const start = e * h;
  return {
    start,
    length: h,
    whole: arm.length,
    last: e === elements - 1,
    widthAt: (x) => outlineWidth(arm.outline, x / arm.length),
    thickness: arm.thickness,
    moduli: arm.moduli,
    density: arm.density,
    rootEnd: arm.rootEnd,
    tipEnd: arm.tipEnd,
  };
}

/** Width of a piecewise linear outline, constant beyond its ends [m]. */
export function outlineWidth(outline: ArmBeam['outline'], at: number): number {
  let before = outline[0];
  if (before === undefined) throw new RangeError('outline: needs a station');
  for (const station of outline) {
    if (station.at >= at) {
      const span = station.at - before.at;
      const share = span > 0 ? Math.min(1, Math.max(0, (at - before.at) / span)) : 1;
      return before.width + share * (station.width - before.width);
    }
    before = station;
  }
  return before.width;
}

function scatter(into: Banded, element: Float64Array, e: number): void {
  for (let i = 0; i < 12; i++) {
    for (let j = 0; j <= i; j++) addBanded(into, 6 * e + i, 6 * e + j, element[i * 12 + j] as number);
  }
}

function addTipBody(mass: Banded, body: TipBody, at: number): void {
  const z = -body.height;
  const [ix, iy, iz] = body.inertia;
  for (const axis of [0, 1, 2]) addBanded(mass, at + axis, at + axis, body.mass);
  addBanded(mass, at + 3, at + 3, ix + body.mass * z * z);
  addBanded(mass, at + 4, at + 4, iy + body.mass * z * z);
  addBanded(mass, at + 5, at + 5, iz);
  addBanded(mass, at + 4, at, body.mass * z);
  addBanded(mass, at + 3, at + 1, -body.mass * z);
}

/** Force and moment at the tip section's middle, in the arm's axes (x along, y across, z down) [N, N m]. */
export type TipLoad = readonly [fx: number, fy: number, fz: number, mx: number, my: number, mz: number];

/** Tip displacement and rotation under tip loads, [m] and [rad], one row of six a load. */
export function tipResponses(arm: ArmBeam, loads: readonly TipLoad[]): Outcome<readonly Float64Array[]> {
  const stiffness = rootFixed(assembled(arm, elementStiffness));
  const factors = factorBanded(stiffness);
  if (factors === undefined) return noSolution('the arm has no stiffness in some direction');
  return solved(
    loads.map((load) => {
      const x = new Float64Array(stiffness.size);
      x.set(load, stiffness.size - 6);
      solveBanded(factors, x);
      return x.slice(stiffness.size - 6);
    }),
  );
}

/** What a unit of each tip load moves the tip by: row i under load i, [m] and [rad]. */
export type TipGive = readonly Float64Array[];

export const tipGive = (arm: ArmBeam): Outcome<TipGive> => tipResponses(arm, UNIT_LOADS);

const UNIT_LOADS: readonly TipLoad[] = [
  [1, 0, 0, 0, 0, 0],
  [0, 1, 0, 0, 0, 0],
  [0, 0, 1, 0, 0, 0],
  [0, 0, 0, 1, 0, 0],
  [0, 0, 0, 0, 1, 0],
  [0, 0, 0, 0, 0, 1],
];

/** The same for arms that are alike: mirrored ones differ in their last bits only, nine figures make them one. */
export const beamKey = (arm: ArmBeam): string =>
  JSON.stringify(arm, (_, value) => (typeof value === 'number' ? value.toPrecision(9) : value));
