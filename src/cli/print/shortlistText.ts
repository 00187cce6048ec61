import type { Fold } from '../../choose/foldAlike.ts';
import { foldScored } from '../../choose/shortlist/foldScored.ts';
import { flipsBetween, reasonsBetween } from '../../choose/shortlist/reasons.ts';
import type { Scored } from '../../choose/shortlist/types.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import type { ShortlistReport } from '../shortlistReport.ts';
import type { Paint } from './paint.ts';
import { flipLines, sayWanted, wantLines } from './sayWanted.ts';
import { printTable } from './table.ts';

interface Look {
  readonly paint: Paint;
  readonly currency: string;
}

/** A shortlist for people: the list, why the first leads, what would flip it, what was left out. */
export function shortlistText(report: ShortlistReport, look: Look): string {
  const [first, second] = report.top;
  const lines: string[] = [];
  if (first === undefined) lines.push('Nothing on the shelf passes every limit and rule.');
  else lines.push(...listOf(report, look));
  lines.push(...fullOf(report, look));
  if (first !== undefined && second !== undefined) lines.push('', ...whyOf(report, first, second, look));
  if (report.front.length > 0) lines.push('', ...frontOf(report, look));
  lines.push('', ...leftOut(report, look));
  return `${lines.join('\n')}\n`;
}

function listOf({ top, wants, assessments, stability }: ShortlistReport, look: Look): readonly string[] {
  const rows = top.map((scored, index) => [
    String(index + 1),
    (100 * scored.standing).toFixed(1),
    stability?.places[index] === undefined
      ? '-'
      : `${Math.round(100 * (stability.places[index]?.[0] ?? 0))} %`,
    ...wants.map(({ measure }) => {
      const band = assessments[index]?.measures.find(({ id }) => id === measure)?.band;
      return say(measure, scored.values[measure], look, band);
    }),
    String(scored.risks),
  ]);
  const folds = foldScored(top, wants);
  return [
    printTable(
      ['', 'standing', 'first in', ...wants.map(({ measure }) => measure.replaceAll('-', ' ')), 'risks'],
      rows,
      ['right', 'right', 'right', ...wants.map(() => 'right' as const), 'right'],
    ),
    '',
    ...top.map(
      (scored, index) => `${String(index + 1).padStart(2)}  ${partsOf(scored)}${likeOf(folds, index)}`,
    ),
    ...(stability === undefined
      ? []
      : [
          look.paint.faint(
            `first in: share of ${stability.draws} draws of every unsure input, +-${Math.round(100 * stability.error)} %`,
          ),
        ]),
  ];
}

/** A row that no want tells from one before it says so. */
function likeOf(folds: readonly Fold[], index: number): string {
  const like = folds.find(({ alike }) => alike.includes(index));
  return like === undefined ? '' : ` (like ${like.kept + 1}: no want tells them apart by a hundredth)`;
}

/** Shown of the full tier: what decides among survivors and the search itself does not look at. */
const FULL = [
  'top-speed',
  'wind-held',
  'flying-camera-covered',
  'first-upright-mode',
  'hover-gyro-rate',
  'breaking-speed-end-on',
  'knocks-money',
] as const;

/** The survivors in the full tier, where it was asked for. */
function fullOf({ assessments }: ShortlistReport, { currency }: Look): readonly string[] {
  const shown = FULL.flatMap((id) => {
    const label = assessments.flatMap(({ measures }) => measures).find((each) => each.id === id)?.label;
    return label === undefined ? [] : [{ id, label }];
  });
  // The quick tier has modes and the picture already: the repairs tell the full one.
  if (!shown.some(({ id }) => id === 'knocks-money')) return [];
  const rows = shown.map(({ id, label }) => [
    label,
    ...assessments.map(({ measures }) => {
      const found = measures.find((each) => each.id === id);
      return found === undefined
        ? '-'
        : formatQuantity(found.value, found.quantity, { currency, band: found.band });
    }),
  ]);
  const numbers = assessments.map((_, index) => String(index + 1));
  return [
    '',
    'Of these, level flight, wind, picture, shake, hits and repairs (they do not enter the order):',
    printTable(['', ...numbers], rows, ['left', ...numbers.map(() => 'right' as const)]),
  ];
}

const partsOf = ({ choice }: Scored) =>
  [
    choice.frame,
    choice.motor,
    choice.propeller,
    choice.pack,
    choice.electronics.controllers,
    choice.electronics.flightController,
    choice.camera,
  ]
    .filter((each) => each !== undefined)
    .join(', ');

function whyOf(report: ShortlistReport, first: Scored, second: Scored, look: Look): readonly string[] {
  const reasons = reasonsBetween(report, first, second);
  const tell = (sign: 1 | -1) =>
    reasons
      .filter(({ difference }) => sign * difference > 0)
      .map(
        ({ measure, difference, values }) =>
          `${measure.replaceAll('-', ' ')} ${say(measure, values[0], look)} against ${say(measure, values[1], look)} (${(100 * difference).toFixed(1)})`,
      );
  const flips = flipLines(flipsBetween(report, first, second), look.currency, 'the first');
  return [
    look.paint.strong('Why the first leads the second (points of standing):'),
    ...tell(1).map((text) => `  for the first: ${text}`),
    ...tell(-1).map((text) => `  for the second: ${text}`),
    ...(flips.length === 0 ? [] : ['Any one of these puts them level:', ...flips]),
  ];
}

function frontOf({ front }: ShortlistReport, look: Look): readonly string[] {
  return [
    look.paint.strong(
      `Pareto front, ${front.length}: nothing else is better in one without being worse in another`,
    ),
    ...front.map(
      (scored) =>
        `  ${Object.entries(scored.values)
          .filter(([id]) => ['first-flight-cost', 'all-up-mass', 'flown-time'].includes(id))
          .map(([id, value]) => say(id, value, look))
          .join(', ')}: ${partsOf(scored)}`,
    ),
  ];
}

function leftOut(
  { size, counts, relaxed, finished, wants, riskCost }: ShortlistReport,
  look: Look,
): readonly string[] {
  const many = (count: number) => count.toLocaleString('en-GB');
  const excluded = Object.entries(counts.excluded).sort((a, b) => b[1] - a[1]);
  const failed = Object.entries(counts.failed).sort((a, b) => b[1] - a[1]);
  return [
    `${many(size)} combinations; ${many(counts.evaluated)} evaluated, ${many(counts.bounded)} left out by bounds.`,
    ...(finished ? [] : ['Stopped before the end: what is not listed may still be better.']),
    'Taken out for sure, by the first reason met:',
    ...excluded.slice(0, 8).map(([name, count]) => `  ${name}: ${many(count)}`),
    ...(failed.length === 0
      ? []
      : [`Of those evaluated: ${failed.map(([name, count]) => `${name} ${many(count)}`).join(', ')}`]),
    ...(relaxed.length === 0 ? [] : ['Each limit a tenth wider, by itself:']),
    ...relaxed.map(({ limit, gain, entersList, best }) =>
      best === undefined
        ? `  ${limit}: still nothing`
        : `  ${limit}: ${entersList} new on the list, the best ${gain > 0 ? `${(100 * gain).toFixed(1)} points higher (${partsOf(best)})` : 'stays'}`,
    ),
    `Standing, less ${Math.round(100 * riskCost)} points a risk of fit:`,
    ...wantLines(wants, look.currency),
    look.paint.faint(
      'Exact: the same list as assessing every combination by the quick tier, each aircraft with its best board and',
    ),
    look.paint.faint(
      'camera; level flight, modes and hits are not searched: `--full` tells them of what is listed. docs/method/choose.md',
    ),
  ];
}

const say = (
  measure: string,
  value: number | undefined,
  { currency }: Look,
  band?: readonly [number, number],
) => sayWanted(measure, value, currency, band);
