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

/** Makes the numbers of a sentence read as here; what is called by one of the names stays (`Tiller 2.4`). */
export function localText(text: string, names: readonly string[] = []): string {
  if (decimalMark === '.' || !text.includes('.')) return text;
  const name = names.find((each) => text.includes(each));
  return name === undefined
    ? text.replace(DECIMALS, '$1,$2')
    : text
        .split(name)
        .map((piece) => localText(piece, names))
        .join(name);
}

/** Those that a sentence could be misread by: with a point between figures. */
export const namesWithNumbers = (parts: readonly { readonly name: string }[]): readonly string[] =>
  (decimalMark === '.' ? [] : parts)
    .flatMap(({ name }) => (/\d\.\d/.test(name) ? [name] : []))
    .toSorted((a, b) => b.length - a.length);
