import { LIFT_SPREAD, SPREADS } from './spreads.ts';
import type { Blade } from './types.ts';

/** How a matched blade differs from what its shape alone says. */
export interface Oddness {
  /** Pitch added [rad], drag and chord over what they were. */
  readonly pitch: number;
  readonly drag: number;
  readonly chord: number;
  /** The largest of the three over its usual spread among propellers: beyond 2 lies one propeller in twenty. */
  readonly deviations: number;
}

/** @param shape the blade before `fitBlade`; @param matched the blade after */
export function howOdd(shape: Blade, matched: Blade): Oddness {
  const { pitch: pitchSpread, drag: dragSpread } = SPREADS[shape.knownBy];
  const middle = shape.chordRatio.length >> 1;
  const pitch = matched.pitchOffset - shape.pitchOffset;
  const drag = matched.dragScale / shape.dragScale;
  const chord = (matched.chordRatio[middle] ?? 1) / (shape.chordRatio[middle] ?? 1);
  const deviations = Math.max(
    Math.abs(pitch) / pitchSpread,
    Math.abs(Math.log(drag)) / dragSpread,
    Math.abs(Math.log(chord)) / LIFT_SPREAD,
  );
  return { pitch, drag, chord, deviations };
}
