import { type FrameQuestion, frameStructure, type SolvedArms } from '../../../airframe/askFrame.ts';
import { type FrameArm, freeModes } from '../../../airframe/frameModel.ts';
import { elasticModes, type FrameMode, frameModes } from '../../../airframe/frameModes.ts';
import { type ShakeModel, shakeModel } from '../../../airframe/shake.ts';
import type { ModeShape } from '../../../airframe/types.ts';
import { type Outcome, solved } from '../../../numerics/outcome.ts';

/** Of critical, for screwed carbon frames (common practice, no source). */
export const DAMPING = 0.02;

/** A frame solved: its modes, and itself ready to be shaken. */
export interface Structure {
  readonly arms: readonly FrameArm[];
  readonly modes: readonly FrameMode[];
  readonly shaken: ShakeModel;
}

export function structureOf(question: FrameQuestion): Outcome<Structure> {
  const built = frameStructure(question);
  if (!built.ok) return built;
  const free = freeModes(built.value.model);
  if (!free.ok) return free;
  return solved({
    arms: built.value.arms,
    modes: elasticModes(free.value, question.modes ?? 10),
    shaken: shakeModel(free.value, DAMPING),
  });
}

/** Lowest mode that bends arms up and down, and the lowest that bends or twists them in their plane [Hz]. */
export interface FirstModes {
  readonly upright: number;
  readonly sideways: number;
}

export function firstModes(
  modes: readonly { readonly frequency: number; readonly shape: ModeShape }[],
): FirstModes {
  const first = (kind: 'upright' | 'sideways') =>
    modes.find(({ shape }) => kindOf(shape) === kind)?.frequency ?? Number.NaN;
  return { upright: first('upright'), sideways: first('sideways') };
}

/**
 * The first modes of a frame alone, without making it ready to shake.
 *
 * @param arms its arms, where they have been solved before
 */
export function firstModesOf(question: FrameQuestion, arms?: Outcome<SolvedArms>): Outcome<FirstModes> {
  const built = frameStructure(question, arms);
  if (!built.ok) return built;
  const modes = frameModes(built.value.model, question.modes ?? 10);
  return modes.ok ? solved(firstModes(modes.value)) : modes;
}

export function kindOf(shape: ModeShape): 'upright' | 'sideways' | 'other' {
  switch (shape) {
    case 'out-of-plane bending':
    case 'out-of-plane together':
    case 'out-of-plane pair':
    case 'roll rocking':
    case 'pitch rocking':
      return 'upright';
    case 'in-plane bending':
    case 'in-plane bending with torsion':
    case 'torsion':
    case 'yaw twist':
    case 'in-plane scissor':
    case 'in-plane sway':
    case 'arm torsion':
      return 'sideways';
    case 'stretching':
    case 'plate bending':
      return 'other';
  }
}
