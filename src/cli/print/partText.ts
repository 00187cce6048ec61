import type { Finding, Measure } from '../../assess/types.ts';
import { formatBand, formatQuantity } from '../../units/formatQuantity.ts';
import { findingLines } from './answerText.ts';
import { leaningText } from './leansOnText.ts';
import { narrowTable } from './narrow.ts';

/**
 * Measures of one part as a table, each with its band and what it leans on most.
 *
 * @param how adds below how each is computed, and its source
 */
export function measuresText(measures: readonly Measure[], how = false): string {
  const inputs = [
    ...new Set(measures.flatMap(({ leansOn: [first] }) => (first ? [leaningText(first)] : []))),
  ];
  const rows = measures.map(({ label, value, band, quantity, leansOn, open, words }) => {
    const exact = band[0] === band[1];
    const first = leansOn[0];
    return [
      label,
      words === undefined
        ? formatQuantity(value, quantity, exact ? {} : { band })
        : isLong(words)
          ? ''
          : words,
      words !== undefined
        ? isLong(words)
          ? words
          : ''
        : exact
          ? 'exact'
          : `${formatBand(value, band, quantity)}${open === undefined ? '' : `, or ${open}`}`,
      first === undefined ? '' : letter(inputs.indexOf(leaningText(first))),
    ];
  });
  const named = inputs.map((input, i) => `${letter(i)} ${input}`).join('; ');
  const rests = named === '' ? '' : ` What each leans on most, by its letter: ${named}.`;
  const table = `${narrowTable(['', 'value', 'band', ''], rows, ['left', 'right', 'left', 'left'])}\n\nBands are 10th to 90th percentile.${rests}`;
  if (!how) return table;
  const told = measures.map((measure) => `  ${measure.label}: ${measure.how} [${measure.source}]`);
  return `${table}\n\n${told.join('\n')}`;
}

/** Words that would push the column of numbers wide stand with the bands. */
const isLong = (words: string): boolean => words.length > 16;

/** Inputs are few: a letter each. */
const letter = (i: number): string => String.fromCharCode(97 + i);

/** Blocks with an empty line between, then the findings. */
export function withFindings(blocks: readonly string[], findings: readonly Finding[]): string {
  const text = blocks.filter((block) => block !== '').join('\n\n');
  return `${[text, ...findingLines(findings)].join('\n').trimStart()}\n`;
}
