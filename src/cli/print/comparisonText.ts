import type { ComparedMeasure } from '../../choose/compare.ts';
import { RISK_COST } from '../../choose/standing.ts';
import { toldDifference } from '../../units/difference.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import type { ComparisonReport } from '../comparisonReport.ts';
import type { Paint } from './paint.ts';
import { flipLines, wantLines } from './sayWanted.ts';
import { printTable } from './table.ts';

/** The rows a newcomer asks for; `--all` shows every measure. */
const FIRST_ROWS = [
  'all-up-mass',
  'thrust-to-weight',
  'hover-throttle',
  'flown-time',
  'full-throttle-time-to-limit',
  'hardest-motor-load',
  'least-tip-gap',
  'aircraft-cost',
  'missing-cost',
  'first-flight-cost',
  // Of the full tier, where it was asked for.
  'top-speed',
  'wind-held',
  'hover-gyro-rate',
  'knocks-money',
];

/** Builds side by side for people, the order with its reasons below. */
export function comparisonText(
  report: ComparisonReport,
  options: { readonly paint: Paint; readonly all: boolean; readonly currency: string },
): string {
  const { comparison, stability } = report;
  const { paint, currency } = options;
  const letter = (column: number) => String.fromCharCode(65 + column);
  const rows = comparison.rows.filter((row) => options.all || FIRST_ROWS.includes(row.id));
  const lines = comparison.columns.map((column, index) => `${paint.strong(letter(index))}  ${column.name}`);
  lines.push(
    '',
    printTable(
      ['', ...comparison.columns.map((_, index) => letter(index))],
      [
        ...rows.map((row) => [
          shortLabel(row.label),
          ...row.cells.map((cell, column) => {
            const text = cellText(row, column, currency);
            if (cell === undefined) return text;
            return row.best === column ? `${text} ${row.difference === 'clear' ? '**' : '*'}` : text;
          }),
        ]),
        ['stops, risks', ...comparison.columns.map(({ stops, risks }) => `${stops}, ${risks}`)],
        [
          'standing, 0 to 100',
          ...comparison.columns.map(({ standing }) =>
            standing === undefined ? '-' : (100 * standing).toFixed(0),
          ),
        ],
        ['first in', ...stability.places.map(([first = 0]) => `${Math.round(100 * first)} %`)],
      ],
      ['left', ...comparison.columns.map(() => 'right' as const)],
    ),
    paint.faint('** best, and its band clear of the next; * best, bands overlap'),
    paint.faint(
      `first in: share of ${stability.draws} draws of every unsure input, +-${Math.round(100 * stability.error)} %`,
    ),
    '',
    ...verdict(report, paint, currency, letter),
    ...stops(report, paint, letter),
    '',
    `Standing, less ${100 * RISK_COST} points a risk of fit; no scale hangs on the other builds:`,
    ...wantLines(comparison.wants, currency),
  );
  if (!comparison.rows.some(({ id }) => id === 'knocks-money')) {
    lines.push(
      paint.faint(
        'Level flight, wind, shake and repairs, and the risks they bring, come with --full, as on the page.',
      ),
    );
  }
  return `${lines.join('\n')}\n`;
}

/** One build's number; words where a number says nothing, `never` where a motor never gets too hot. */
function cellText({ id, quantity, cells }: ComparedMeasure, column: number, currency: string): string {
  const cell = cells[column];
  if (cell === undefined) return id.endsWith('time-to-limit') ? 'never' : '-';
  const exact = cell.band[0] === cell.band[1];
  return (
    cell.words ?? formatQuantity(cell.value, quantity, exact ? { currency } : { band: cell.band, currency })
  );
}

function verdict(
  { comparison, causes }: ComparisonReport,
  paint: Paint,
  currency: string,
  letter: (column: number) => string,
): readonly string[] {
  const [leader, second] = comparison.order;
  if (leader === undefined || second === undefined) return [];
  const lead = comparison.columns[leader];
  const next = comparison.columns[second];
  if (lead === undefined || next === undefined) return [];
  const say = (side: 'leader' | 'runner-up') =>
    comparison.reasons
      .filter((reason) => reason.speaksFor === side)
      .slice(0, 3)
      .map((reason) => {
        const row = comparison.rows.find((each) => each.id === reason.measure);
        const show = (column: number) => (row === undefined ? '-' : cellText(row, column, currency));
        const open = reason.difference === 'open' ? ', bands overlap' : '';
        return `${shortLabel(reason.label)} ${show(leader)} against ${show(second)} (${(100 * reason.weight).toFixed(1)} points${open})`;
      });
  const riskLine = (one: typeof lead, other: typeof lead) =>
    one.fitRisks < other.fitRisks
      ? [
          `risks of fit ${one.fitRisks} against ${other.fitRisks} (${(100 * RISK_COST * (other.fitRisks - one.fitRisks)).toFixed(0)} points)`,
        ]
      : [];
  const lines = [
    `${paint.strong(`${letter(leader)} leads`)}, ${lead.name}; next is ${letter(second)}, ${next.name}.`,
    ...[...riskLine(lead, next), ...say('leader')].map((text) => `  for it: ${text}`),
    ...[...riskLine(next, lead), ...say('runner-up')].map((text) => `  for ${letter(second)}: ${text}`),
    ...(lead.stops < next.stops
      ? [`  ${letter(second)} has ${next.stops} to mend first: no weight turns that.`]
      : []),
  ];
  const flips = flipLines(comparison.flips, currency, letter(leader));
  if (flips.length > 0) lines.push('Any one of these puts them level:', ...flips);
  const shown = ['first-flight-cost', 'flown-time', 'all-up-mass'];
  const told = causes.flatMap((cause) => {
    const parts = shown.flatMap((id) => {
      const row = comparison.rows.find((each) => each.id === id);
      const effect = cause.effects[id];
      if (row === undefined || effect === undefined) return [];
      const half = Math.max(...row.cells.map((cell) => (cell ? (cell.band[1] - cell.band[0]) / 2 : 0)));
      const told = toldDifference(Math.abs(effect), half);
      if (told === undefined) return [];
      const size = formatQuantity(told.value, row.quantity, { band: told.band, currency });
      return [`${effect > 0 ? '+' : '-'}${size} ${shortLabel(row.label)}`];
    });
    return parts.length === 0 ? [] : [`  ${cause.seat}: ${parts.join(', ')}`];
  });
  if (told.length > 0) lines.push(`What makes ${letter(second)} differ from ${letter(leader)}:`, ...told);
  return lines;
}

function stops(
  { assessments, comparison }: ComparisonReport,
  paint: Paint,
  letter: (column: number) => string,
): readonly string[] {
  const found = assessments.flatMap((assessment, index) =>
    assessment.findings
      .filter((finding) => finding.severity === 'stop')
      .map(
        (finding) =>
          `${paint.severity('stop', 'STOP')}  ${letter(index)}: ${finding.says} -> ${finding.remedy}`,
      ),
  );
  return found.length === 0 || comparison.columns.length === 0 ? [] : ['', ...found];
}

/** A column of labels must stay narrow. */
const shortLabel = (label: string) => label.replace(' until a motor is too hot', ' until hot');
