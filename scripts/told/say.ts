import type { Outcome } from '../../src/numerics/outcome.ts';

/** A number as pages write it: `digits` behind the point, a unit after it. */
export const say = (value: number, unit = '', digits = 0): string => {
  if (!Number.isFinite(value)) throw new RangeError(`value must be finite; found ${value}`);
  return `${value.toFixed(digits)}${unit === '' ? '' : ` ${unit}`}`;
};

/** A share as per cent. */
export const percent = (share: number, digits = 0): string => say(100 * share, '%', digits);

/** A table of Markdown. */
export const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');

export function known<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
}
