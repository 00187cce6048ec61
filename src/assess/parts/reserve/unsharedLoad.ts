import { roundedText } from '../../../units/significance.ts';
import type { Measure } from '../../types.ts';

const SHARED = 'whether the controller shares the load anew';

/**
 * Failures that cost full control, told honestly: what the attainable moments earn back is had only from a flight controller that
 * shares the load anew, and common ones do not. So where anything is earned the band reaches up to losing control every time,
 * and nothing at all lost is told in words. What is nothing for sure after a lost motor is `none`.
 */
export function withUnsharedLoad(measures: readonly Measure[]): readonly Measure[] {
  const all = measures.find(({ id }) => id === 'motor-failures');
  return measures.map((measure): Measure => {
    if (measure.id === 'left-after-motor-out') {
      return measure.value === 0 && measure.band[1] === 0 ? { ...measure, words: 'none' } : measure;
    }
    if (measure.id !== 'failures-without-control' || all === undefined || measure.value >= all.value) {
      return measure;
    }
    const [low, high] = measure.band;
    const most = Math.max(high, all.band[1]);
    const share = 1 - ((high - low) / (most - low)) ** 2;
    const leansOn = [
      { input: SHARED, trust: 'inferred' as const, share },
      ...measure.leansOn.map((leaning) => ({ ...leaning, share: (1 - share) * leaning.share })),
    ];
    return {
      ...measure,
      band: [low, most],
      leansOn: leansOn.sort((a, b) => b.share - a.share),
      how: `${measure.how} The band reaches up to all of them: a controller that does not share the load anew, as common ones do not, may lose control every time.`,
      ...(measure.value === 0
        ? { words: `none if the load is shared anew, else up to ${roundedText(most, most < 10 ? 0 : -1)}` }
        : {}),
    };
  });
}
