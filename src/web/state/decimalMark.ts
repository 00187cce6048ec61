/** What stands before decimals where the page is read, by the browser's language: figures and fields follow it. */
export const decimalMark: ',' | '.' =
  new Intl.NumberFormat(typeof navigator === 'undefined' ? 'en' : navigator.language)
    .formatToParts(1.5)
    .find(({ type }) => type === 'decimal')?.value === ','
    ? ','
    : '.';

/** A number with so many decimals as it is read here. */
export const localNumber = (value: number, decimals: number): string =>
  value.toFixed(decimals).replace('.', decimalMark);

/** A whole number with its thousands parted as they are read here. */
export const localCount = (count: number): string =>
  count.toLocaleString(typeof navigator === 'undefined' ? 'en' : navigator.language);

// A number in a sentence: not `M1.4`, not a version, not the printed size of a propeller (`5.1 x 3.6`).
const DECIMALS = /(?<![\w.])(\d+)\.(\d+)(?![\w.])(?! x )/g;
const WORDS = new Set(['says', 'remedy', 'how', 'why', 'title', 'source', 'text']);

export const localText = (text: string): string =>
  decimalMark === '.' ? text : text.replace(DECIMALS, '$1,$2');

/** An answer of the worker with its sentences as they are read here; its numbers stay numbers. */
export function localWords<T>(answer: T, inWords = false): T {
  if (decimalMark === '.') return answer;
  if (typeof answer === 'string') return (inWords ? localText(answer) : answer) as T;
  if (Array.isArray(answer)) return answer.map((each) => localWords(each, inWords)) as T;
  if (typeof answer !== 'object' || answer === null || ArrayBuffer.isView(answer)) return answer;
  return Object.fromEntries(
    Object.entries(answer).map(([key, value]) => [key, localWords(value, WORDS.has(key))]),
  ) as T;
}
