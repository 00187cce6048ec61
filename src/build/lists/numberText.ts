/** What stands before the decimals of a list's numbers. */
export type Decimals = 'point' | 'comma';

const POINT = /^[+-]?(?:\d+|\d{1,3}(?:[,' \u00A0\u202F]\d{3})+)(?:\.\d*)?$/;
const COMMA = /^[+-]?(?:\d+|\d{1,3}(?:[.' \u00A0\u202F]\d{3})+)(?:,\d*)?$/;

/**
 * A number as a list writes it to the same with a point and without marks between thousands: `1.234,5` is `1234.5`
 * with decimal commas. Undefined when it does not read so; then nothing is guessed.
 */
export function plainNumber(text: string, decimals: Decimals): string | undefined {
  if (text.length > 40) return undefined;
  if (decimals === 'point') return POINT.test(text) ? text.replace(/[,' \u00A0\u202F]/g, '') : undefined;
  return COMMA.test(text) ? text.replace(/[.' \u00A0\u202F]/g, '').replace(',', '.') : undefined;
}

/**
 * Which of the two a list uses, by its numbers; `unclear` when `1,234` could be either or both are seen,
 * undefined when there are only whole numbers, which read alike both ways.
 */
export function decimalsOf(cells: readonly string[]): Decimals | 'unclear' | undefined {
  let [points, commas, either] = [0, 0, 0];
  for (const cell of cells) {
    const number = /^[+-]?[\d.,' \u00A0\u202F]*\d/.exec(cell.trim())?.[0] ?? '';
    const marks = [...number.matchAll(/[.,]/g)].map(([mark]) => mark);
    const last = marks.at(-1);
    if (last === undefined) continue;
    const repeated = marks.filter((mark) => mark === last).length > 1;
    const thousands = /[.,]\d{3}$/.test(number) && !/^[+-]?0?[.,]/.test(number);
    const other = last === '.' ? 'comma' : 'point';
    const own = last === '.' ? 'point' : 'comma';
    const told = repeated ? other : marks.length > 1 || !thousands ? own : undefined;
    if (told === 'point') points++;
    else if (told === 'comma') commas++;
    else either++;
  }
  if (points > 0 && commas > 0) return 'unclear';
  if (points > 0) return 'point';
  if (commas > 0) return 'comma';
  return either > 0 ? 'unclear' : undefined;
}
