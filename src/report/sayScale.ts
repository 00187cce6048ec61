import { quantityOf } from '../choose/searchMeasures.ts';
import type { Scale, SoftWant } from '../choose/shortlist/softWants.ts';
import { type Manner, sayInWords } from './sayFigure.ts';

/** How a want is scored, in words: where a value counts in full, and from where it counts nothing. */
export function sayScale({ measure, scale }: Pick<SoftWant, 'measure' | 'scale'>, manner: Manner): string {
  const say = (value: number) => sayInWords(value, quantityOf(measure), manner);
  switch (scale.kind) {
    case 'ramp':
      return `in full from ${say(scale.best)}, nothing at ${say(scale.worst)}`;
    case 'window': {
      const [low, high] = nothingBeyond(scale);
      return `in full from ${say(scale.low)} to ${say(scale.high)}, nothing ${low > 0 ? `under ${say(low)} or ` : ''}over ${say(high)}`;
    }
    case 'target':
      return `in full at ${say(scale.target)}, nothing ${say(scale.tolerance)} off it`;
  }
}

/** Half a window outside on each side, as `utility` has it. */
function nothingBeyond({
  low,
  high,
}: Extract<Scale, { readonly kind: 'window' }>): readonly [number, number] {
  const half = 0.5 * (high - low);
  return [low - half, high + half];
}
