import type { Measure, Quantity } from './types.ts';

/**
 * Why a number has no honest band, in words: an uncertain input, a step beyond the likely, leaves it without a value. A
 * temperature then runs away, a time to a limit never ends.
 *
 * @param flown false where it could not be flown at all then
 */
export function openEnd(quantity: Quantity | undefined, flown: boolean): string {
  if (flown && quantity === 'temperature') return 'never settles';
  return flown && quantity === 'time' ? 'never too hot' : 'cannot be flown';
}

/** The same for a measure, and what its `how` says of it. */
export function openMeasure(
  { quantity, how }: Pick<Measure, 'quantity' | 'how'>,
  lost: { readonly input: string } | undefined,
  flown: boolean,
): Pick<Measure, 'open' | 'how'> {
  const open = openEnd(quantity, flown);
  const by = lost === undefined ? 'an input' : `“${lost.input}”`;
  return {
    open,
    how: `${how} With ${by} a step beyond the likely it ${VERBS[open] ?? open}: the band is a guess.`,
  };
}

const VERBS: Readonly<Record<string, string>> = {
  'never settles': 'heats itself faster than it is cooled and never settles',
  'never too hot': 'is never too hot',
};
