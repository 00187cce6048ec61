import type { Lost } from './propagate.ts';
import type { Measure, Quantity } from './types.ts';

/**
 * What becomes of a number where an uncertain input leaves it without a value, in words. A temperature then runs away, a
 * time to a limit never ends.
 *
 * @param flown false where it could not be flown at all then
 * @param grounded what it cannot do then
 */
export function openEnd(
  quantity: Quantity | undefined,
  flown: boolean,
  grounded = 'cannot be flown',
): string {
  if (flown && quantity === 'temperature') return 'never settles';
  return flown && quantity === 'time' ? 'never too hot' : grounded;
}

/** A measure's open end where there is room for few words: without the count, which its `how` tells. */
export function openBriefly({ open, lost }: Pick<Measure, 'open' | 'lost'>): string | undefined {
  const counted = lost && openInWords('', lost);
  return counted !== undefined && open?.endsWith(counted) ? open.slice(0, -counted.length) : open;
}

/** An open end with how many states of doubt it is: `never settles in 2 of 13 states of doubt`. */
export const openInWords = (open: string, { states, of }: Pick<Lost, 'states' | 'of'>): string =>
  `${open} in ${states.length} of ${of} states of doubt`;

/** As many inputs as a reader takes in. */
const NAMED = 3;

/** The states of doubt by their inputs: `drag of the body a step up, motor cooling a step down and 2 more`. */
export function namedStates({ states }: Pick<Lost, 'states'>): string {
  // How an input is known stands with what a number leans on.
  const named = states.slice(0, NAMED).map((state) => state.replace(/ \(.*\)/, ''));
  const rest = states.length - named.length;
  return `${named.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}

/** The open end of a measure, and what its `how` says of it. */
export function openMeasure(
  { quantity, how }: Pick<Measure, 'quantity' | 'how'>,
  lost: Lost,
  flown: boolean,
  grounded?: string,
): Pick<Measure, 'open' | 'how' | 'lost'> {
  const open = openEnd(quantity, flown, grounded);
  const { states, of } = lost;
  return {
    open: openInWords(open, lost),
    lost: { states, of },
    how: `${how} In ${states.length} of ${of} states of doubt (one input a step, a standard deviation, off: ${namedStates(lost)}) it ${VERBS[open] ?? open}; the band is that of the others.`,
  };
}

const VERBS: Readonly<Record<string, string>> = {
  'never settles': 'heats itself faster than it is cooled and never settles',
  'never too hot': 'is never too hot',
};
