import type { ListedPart } from '../../build/lists/listedPart.ts';
import type { SameChoice } from '../../build/lists/ontoShelf.ts';
import { factsOfPart } from '../../report/partFacts.ts';
import { errorsText } from '../files.ts';
import type { ShelveReport } from '../shelveReport.ts';
import { printTable } from './table.ts';

/** A list of parts before it is kept, for people: what its columns are, what its rows make, what is wrong. */
export function shelveText(report: ShelveReport, choice: SameChoice | undefined): string {
  const { table, parts, settled, written, onto } = report;
  const blocks = [columnsText(report), partsText(parts, choice)];
  if (settled.bad.length > 0) {
    blocks.push(
      `${settled.bad.length} of ${parts.length} rows can not be read:\n${errorsText(settled.bad.flatMap(({ errors }) => errors))}`,
    );
  }
  if (settled.open.length > 0) {
    blocks.push(
      `${settled.open.length} known already: say what to do with them by --same old, --same new or --same both.`,
    );
  }
  const kept = `${settled.taken.length} parts${settled.left.length > 0 ? `, ${settled.left.length} left as they are` : ''}`;
  blocks.push(
    written.length > 0
      ? `Laid ${kept} onto ${onto}. The columns are remembered in ${written.at(-1)}.`
      : `Nothing is written yet. --keep lays ${kept} onto ${onto}${settled.bad.length > 0 ? '; with rows that can not be read only together with --good-rows' : ''}.`,
  );
  return `${table.file}: ${parts.length} rows\n\n${blocks.join('\n\n')}\n`;
}

const BY = {
  told: 'as you told',
  remembered: 'as remembered from last time',
  guessed: 'guessed by their names',
};

function columnsText({ table, columns, by, decimals }: ShelveReport): string {
  const rows = table.columns.map((name) => {
    const use = columns.columns[name];
    return [name, use === undefined ? '(left out)' : typeof use === 'string' ? use : use.as];
  });
  return `Columns, ${BY[by]}; decimals after a ${decimals}:\n${printTable(['column', 'is'], rows)}`;
}

function partsText(parts: readonly ListedPart[], choice: SameChoice | undefined): string {
  const rows = parts.map((each) => [
    String(each.line),
    each.id,
    each.part?.kind ?? '-',
    each.part === undefined ? '-' : `${each.part.price.amount.toFixed(2)} ${each.part.price.currency}`,
    each.part === undefined ? '-' : `${+(each.part.mass.value * 1000).toPrecision(4)} g`,
    each.part === undefined ? '' : factsOfPart(each.part),
    becomes(each, choice),
  ]);
  return printTable(['line', 'id', 'kind', 'price', 'mass', 'facts', ''], rows, [
    'right',
    'left',
    'left',
    'right',
    'right',
  ]);
}

const CHOSEN = { old: 'the old one stays', new: 'takes its place', both: 'both stay' };

function becomes({ part, same }: ListedPart, choice: SameChoice | undefined): string {
  if (part === undefined) return 'can not be read';
  if (same === undefined) return 'new';
  if (same.unchanged) return 'there already, unchanged';
  const where =
    same.where === 'list'
      ? `in line ${same.line}`
      : `on the ${same.where === 'own shelf' ? 'shelf' : 'shipped shelf'} as ${same.id}`;
  return `known ${where}${choice === undefined ? '' : `: ${CHOSEN[choice]}`}`;
}
