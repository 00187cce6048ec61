import type { TipGive } from '../airframe/armBeam.ts';
import type { FrameQuestion, SolvedArms } from '../airframe/askFrame.ts';
import type { Outcome } from '../numerics/outcome.ts';
import type { Recalled } from '../numerics/recall.ts';
import type { CoverMemory } from '../view/cover.ts';

/**
 * What one quick assessment leaves for the next: of a build that is slid about most stays as it was. Held by who asks
 * again and again, written by `assess`; without one everything is worked out, with the same results.
 */
export interface QuickMemory {
  readonly arms: Recalled<FrameQuestion['arms'], Outcome<SolvedArms>>;
  /** Of the same arms' tips. */
  readonly gives: Recalled<FrameQuestion['arms'], Outcome<readonly TipGive[]>>;
  /** By the camera's index. */
  readonly covers: Map<number, CoverMemory>;
}

export const emptyMemory = (): QuickMemory => ({ arms: {}, gives: {}, covers: new Map() });
