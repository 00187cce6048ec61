import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import type { Matrix3, Vector3 } from '../../numerics/vector3.ts';
import { scale3, subtract3 } from '../../numerics/vector3.ts';
import { emptyObliqueLoads, type ObliqueLoads } from '../types.ts';
import type { SimulatedRotor, SimulationModel } from './types.ts';

/** A rotor with what does not change in flight worked out. */
export interface PreparedRotor {
  readonly rotor: SimulatedRotor;
  /** From the centre of gravity [m]. */
  readonly lever: Vector3;
  readonly axis: Vector3;
  /** Unit vector of the rotor's own spin. */
  readonly spinAxis: Vector3;
}

export interface PreparedCraft {
  readonly model: SimulationModel;
  readonly rotors: readonly PreparedRotor[];
  readonly inverseInertia: Matrix3;
  /** From the centre of gravity [m]. */
  readonly dragLever: Vector3;
  /** Wind, loads and vectors that the derivative writes into: one set for each run. */
  readonly scratch: Scratch;
}

export interface Scratch {
  readonly loads: ObliqueLoads;
  readonly rotation: Float64Array;
  readonly force: Float64Array;
}

const UP: Vector3 = [0, 0, -1];

/** @returns words when the inertia has no inverse */
export function prepareCraft(model: SimulationModel): Outcome<PreparedCraft> {
  for (const [name, value] of Object.entries({ mass: model.mass, airDensity: model.airDensity })) {
    if (!(value > 0)) throw new RangeError(`${name} must be over 0; found ${value}`);
  }
  const inverseInertia = inverse3(model.inertia);
  if (!inverseInertia.ok) return inverseInertia;
  return solved({
    model,
    inverseInertia: inverseInertia.value,
    dragLever: subtract3(model.dragCentre ?? model.centreOfGravity, model.centreOfGravity),
    rotors: model.rotors.map((rotor) => {
      const axis = rotor.thrustAxis ?? UP;
      return {
        rotor,
        axis,
        lever: subtract3(rotor.position, model.centreOfGravity),
        spinAxis: scale3(axis, -rotor.spin),
      };
    }),
    scratch: {
      loads: emptyObliqueLoads(),
      rotation: new Float64Array(9),
      force: new Float64Array(3),
    },
  });
}

function inverse3([[a, b, c], [d, e, f], [g, h, i]]: Matrix3): Outcome<Matrix3> {
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!(determinant > 0)) return noSolution('the inertia tensor is not that of a solid body');
  const k = 1 / determinant;
  return solved([
    [k * (e * i - f * h), k * (c * h - b * i), k * (b * f - c * e)],
    [k * (f * g - d * i), k * (a * i - c * g), k * (c * d - a * f)],
    [k * (d * h - e * g), k * (b * g - a * h), k * (a * e - b * d)],
  ]);
}
