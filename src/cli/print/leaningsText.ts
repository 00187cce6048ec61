import { formatBand, formatQuantity } from '../../units/formatQuantity.ts';
import { wholePercent } from '../../units/wholePercent.ts';
import type { LeaningsReport } from '../leaningsReport.ts';
import { printTable } from './table.ts';

const HALF = 16;

/** What a figure leans on, for people: bars to both sides of its nominal value, and shares of its variance. */
export function leaningsText(report: LeaningsReport): string {
  const { build, label, quantity, nominal, band, tornado, sobol, rows, seed } = report;
  const say = (value: number | undefined) =>
    value === undefined ? 'no hover' : formatQuantity(value, quantity, { band });
  const widest = Math.max(
    ...tornado.flatMap(({ low, high }) => [low, high].map((end) => Math.abs((end ?? nominal) - nominal))),
    Number.MIN_VALUE,
  );
  const bars = tornado.map(({ label: name, trust, low, high }) => [
    name,
    trust,
    say(low),
    barOf(low, high, nominal, widest),
    say(high),
  ]);
  const shares = sobol
    .filter(({ total }) => total >= 0.005)
    .map((each) => [
      each.label,
      each.trust,
      percent(each.first),
      percent(each.total),
      `+-${percent(each.totalError)}`,
    ]);
  return [
    `${build}: ${label} ${say(nominal)}, ${formatBand(nominal, band, quantity)}`,
    '',
    'Each input alone, low and high (10th and 90th percentile); o marks the low end, # the high one:',
    printTable(['input', 'trust', 'low', '', 'high'], bars, ['left', 'left', 'right', 'left', 'right']),
    '',
    `Shares of the variance (Sobol indices, ${rows} rows, seed ${seed}); alone, and with all it does together with others:`,
    printTable(['input', 'trust', 'alone', 'in all', 'sure to'], shares, [
      'left',
      'left',
      'right',
      'right',
      'right',
    ]),
    '',
  ].join('\n');
}

/** `ooooooo|####`, the nominal in the middle. */
function barOf(low: number | undefined, high: number | undefined, nominal: number, widest: number): string {
  const cells = Array.from({ length: 2 * HALF + 1 }, () => ' ');
  const lay = (end: number | undefined, letter: string) => {
    const length = Math.round((HALF * ((end ?? nominal) - nominal)) / widest);
    for (let step = 1; step <= Math.abs(length); step++) cells[HALF + Math.sign(length) * step] = letter;
  };
  lay(low, 'o');
  lay(high, '#');
  cells[HALF] = '|';
  return cells.join('');
}

const percent = (share: number) => wholePercent(Math.max(share, 0));
