import type { Measure, Quantity } from './types.ts';

/**
 * What a number has no band for, in words, when an uncertain input a step beyond the likely leaves it without a value:
 * a temperature then runs away, a time to a limit never ends, anything else cannot be flown.
 */
export function openEnd(id: string, quantity: Quantity | undefined): string {
  if (quantity === 'temperature') return 'never settles';
  return quantity === 'time' && /limit/i.test(id) ? 'never too hot' : 'cannot be flown';
}

/**
 * The words that go with it into a measure.
 *
 * @param lost the inputs that leave it without a value
 */
export function openMeasure(
  { id, quantity, how }: Pick<Measure, 'id' | 'quantity' | 'how'>,
  lost: readonly string[] = [],
): Pick<Measure, 'open' | 'how'> {
  const open = openEnd(id, quantity);
  const by = lost[0] === undefined ? 'an input' : `“${lost[0]}”`;
  return {
    open,
    how: `${how} With ${by} a step beyond the likely it ${VERBS[open] ?? open}: the band is a guess.`,
  };
}

const VERBS: Readonly<Record<string, string>> = {
  'never settles': 'heats itself faster than it is cooled and never settles',
  'never too hot': 'is never too hot',
};
