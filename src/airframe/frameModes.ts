import { type Outcome, solved } from '../numerics/outcome.ts';
import { type FrameModel, type FreeModes, freeModes, RIGID } from './frameModel.ts';
import type { Mode, ModeShape } from './types.ts';

/** One elastic mode of a free frame, mass-normalised [1/sqrt(kg)]. */
export interface FrameMode extends Mode {
  /** The hub body's motion at the origin: x, y, z, and turns about x, y, z. */
  readonly hub: Float64Array;
  /** Each arm's tip in the arm's own axes, hub motion included: along, across, down, and turns. */
  readonly tips: readonly { readonly name: string; readonly motion: Float64Array }[];
}

/**
 * The lowest elastic modes of the whole free frame, rising, each named by its shape.
 *
 * @param count 1 or more; fewer come back when the reduced model has fewer
 */
export function frameModes(model: FrameModel, count: number): Outcome<readonly FrameMode[]> {
  const free = freeModes(model);
  return free.ok ? solved(elasticModes(free.value, count)) : free;
}

/** The same where the frame is solved already. */
export function elasticModes({ model, values, vectors }: FreeModes, count: number): readonly FrameMode[] {
  return Array.from(values.subarray(RIGID, RIGID + count), (value, k) => {
    const vector = vectors.subarray((RIGID + k) * model.size, (RIGID + k + 1) * model.size);
    return {
      frequency: Math.sqrt(value) / (2 * Math.PI),
      shape: nameFrameShape(model, vector, value),
      hub: vector.slice(0, 6),
      tips: model.arms.map((reduced) => ({ name: reduced.arm.name, motion: tipMotion(vector, reduced) })),
    };
  });
}

type ReducedArm = FrameModel['arms'][number];

/** Tip motion: the root's, carried to the tip, plus the arm's own bending. */
export function tipMotion(vector: Float64Array, reduced: ReducedArm): Float64Array {
  const root = new Float64Array(6);
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) {
      root[i] =
        (root[i] as number) +
        (reduced.toRoot[i * 6 + j] as number) * (vector[reduced.rootNode + j] as number);
    }
  }
  const { length } = reduced.arm.beam;
  const own = ownBending(vector, reduced);
  const carried = [0, length * (root[5] as number), -length * (root[4] as number), 0, 0, 0];
  return own.map((value, i) => value + (root[i] as number) + (carried[i] ?? 0));
}

function ownBending(vector: Float64Array, reduced: ReducedArm): Float64Array {
  const tip = new Float64Array(6);
  for (let k = 0; k < reduced.modes; k++) {
    const share = vector[reduced.firstMode + k] as number;
    for (let i = 0; i < 6; i++)
      tip[i] = (tip[i] as number) + share * (reduced.tipShapes[k * 6 + i] as number);
  }
  return tip;
}

/**
 * Names a mode: by where its strain energy is (plate, arms up and down, arms sideways, arms' twist), then
 * by which pattern over the tips is largest.
 */
function nameFrameShape(model: FrameModel, vector: Float64Array, value: number): ModeShape {
  const energy = { upright: 0, sideways: 0, twist: 0 };
  for (const reduced of model.arms) {
    for (let k = 0; k < reduced.modes; k++) {
      const at = reduced.firstMode + k;
      const strain = (vector[at] as number) ** 2 * (model.stiffness[at * model.size + at] as number);
      energy[heldKind(reduced, k)] += strain;
    }
  }
  const arms = energy.upright + energy.sideways + energy.twist;
  if (value - arms > 0.5 * value) return 'plate bending';
  if (energy.twist > energy.upright && energy.twist > energy.sideways) return 'arm torsion';
  const upright = energy.upright > energy.sideways;
  const patterns = tipPatterns(model, vector, upright ? 2 : 1);
  const largest = Math.max(...patterns.map(({ size }) => size));
  const leading = patterns.find(({ size }) => size === largest)?.pattern ?? 'rest';
  return NAMES[leading][upright ? 'upright' : 'sideways'];
}

type Pattern = 'together' | 'fore and aft' | 'left and right' | 'rest';

const NAMES: Record<Pattern, { readonly upright: ModeShape; readonly sideways: ModeShape }> = {
  together: { upright: 'out-of-plane together', sideways: 'yaw twist' },
  'fore and aft': { upright: 'pitch rocking', sideways: 'in-plane sway' },
  'left and right': { upright: 'roll rocking', sideways: 'in-plane sway' },
  rest: { upright: 'out-of-plane pair', sideways: 'in-plane scissor' },
};

/** What a held arm's mode moves most by kinetic energy of its end: up and down, sideways, or about its axis. */
function heldKind({ arm, tipShapes }: ReducedArm, k: number): 'upright' | 'sideways' | 'twist' {
  const [, v = 0, w = 0, turn = 0] = tipShapes.subarray(6 * k, 6 * k + 4);
  const { tipBody } = arm.beam;
  const sideways = Math.abs(v + turn * (tipBody?.height ?? 0));
  const gyration = tipBody === undefined ? arm.beam.thickness : Math.sqrt(tipBody.inertia[0] / tipBody.mass);
  const twist = Math.abs(turn) * gyration;
  if (Math.abs(w) > sideways && Math.abs(w) > twist) return 'upright';
  return sideways >= twist ? 'sideways' : 'twist';
}

/** Size of each pattern in the arms' own bending at the tips, w (2) or v (1), by least squares. */
function tipPatterns(
  model: FrameModel,
  vector: Float64Array,
  dof: 1 | 2,
): readonly { pattern: Pattern; size: number }[] {
  const bend = model.arms.map((reduced) => ownBending(vector, reduced)[dof] as number);
  const one = model.arms.map(() => 1);
  const x = model.arms.map(({ arm }) => (dof === 2 ? Math.cos(arm.yaw) : -Math.sin(arm.yaw)));
  const y = model.arms.map(({ arm }) => (dof === 2 ? Math.sin(arm.yaw) : Math.cos(arm.yaw)));
  const kinds: readonly (readonly [Pattern, readonly number[]])[] = [
    ['together', one],
    ['fore and aft', x],
    ['left and right', y],
  ];
  let rest = bend;
  const found: { pattern: Pattern; size: number }[] = [];
  for (const [pattern, shape] of kinds) {
    const norm = Math.hypot(...shape);
    const share = rest.reduce((sum, value, i) => sum + value * (shape[i] ?? 0), 0) / norm;
    rest = rest.map((value, i) => value - (share * (shape[i] ?? 0)) / norm);
    found.push({ pattern, size: Math.abs(share) });
  }
  return [...found, { pattern: 'rest', size: Math.hypot(...rest) }];
}
