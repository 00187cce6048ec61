import { type Fold, foldAlike } from '../foldAlike.ts';
import type { Scale, SoftWant } from './softWants.ts';
import type { Scored } from './types.ts';

/** Told apart from this share of a scale on. */
const ALIKE = 0.01;

/** A list, best first, with those folded that no want tells apart. */
export const foldScored = (top: readonly Scored[], wants: readonly SoftWant[]): readonly Fold[] =>
  foldAlike(
    top.map((scored) => wants.map(({ measure }) => finite(scored.values[measure]))),
    wants.map(({ scale }) => ALIKE * extentOf(scale)),
  );

/** Beyond any scale, so that two that never get too hot count as alike. */
const finite = (value: number | undefined) =>
  value === undefined || Number.isNaN(value) ? 0 : Math.min(Math.max(value, -1e9), 1e9);

function extentOf(scale: Scale): number {
  switch (scale.kind) {
    case 'ramp':
      return Math.abs(scale.best - scale.worst);
    case 'window':
      return scale.high - scale.low;
    case 'target':
      return scale.tolerance;
  }
}
