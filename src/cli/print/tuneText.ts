import { quantityOf } from '../../choose/searchMeasures.ts';
import { KNOBS, type Knob } from '../../choose/tune.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import type { TuneReport } from '../tuneReport.ts';
import { printTable } from './table.ts';

/** At most so many lines of the trace; the first and the last always. */
const LINES = 12;

/** What was turned, what it brought and the way there, for people. */
export function tuneText(report: TuneReport, currency: string): string {
  const { build, knobs, before, after, trace, evaluations, settled, written } = report;
  if (after === null) {
    return `${build}: ${report.stoppedBy ?? 'a limit or a rule'} stops it wherever these are turned (${evaluations} settings tried). \`quadwright assess\` says more.\n`;
  }
  const say = (measure: string, value: number | undefined) => sayMeasure(measure, value, currency);
  const measures = [...new Set([...Object.keys(report.valuesAfter), ...Object.keys(report.valuesBefore)])];
  const steps = trace.filter(
    ({ standing }, index) =>
      index === 0 ||
      points(standing) !== points(trace[index - 1]?.standing ?? 0) ||
      index === trace.length - 1,
  );
  const every = Math.ceil(steps.length / LINES);
  const shown = steps.filter((_, index) => index % every === 0 || index === steps.length - 1);
  return [
    `${build}: standing ${points(before)} -> ${points(after)}${better(before, after) ? '' : ', no better setting found: it stays as it is'}`,
    '',
    printTable(
      ['turned', 'was', 'is', 'between'],
      knobs.map(({ knob, before: was, after: is, low, high }) => [
        KNOBS[knob].label,
        sayKnob(knob, was),
        sayKnob(knob, is),
        `${sayKnob(knob, low)} .. ${sayKnob(knob, high)}`,
      ]),
      ['left', 'right', 'right'],
    ),
    '',
    printTable(
      ['wanted or limited', 'was', 'is'],
      measures.map((id) => [
        id.replaceAll('-', ' '),
        say(id, report.valuesBefore[id]),
        say(id, report.valuesAfter[id]),
      ]),
      ['left', 'right', 'right'],
    ),
    '',
    `The way there, by the improvements that show, of ${evaluations} settings tried${settled ? '' : '; not settled, --most lets it go on'}:`,
    printTable(
      ['tried', 'standing', ...knobs.map(({ knob }) => knob)],
      shown.map(({ evaluations: at, standing, settings }) => [
        String(at),
        points(standing),
        ...knobs.map(({ knob }, index) => sayKnob(knob, settings[index] ?? 0)),
      ]),
      ['right', 'right', ...knobs.map(() => 'right' as const)],
    ),
    '',
    ...(knobs.some(({ knob }) => knob.startsWith('layout') || knob.startsWith('arm'))
      ? [
          'The frame keeps its mass as told: take a changed layout or thickness as the way to look for a frame.',
        ]
      : []),
    'Local: the best near the build as it is, by the most likely values; not exact.',
    written === undefined ? '--write FILE writes the build.' : `Written to ${written}.`,
    '',
  ].join('\n');
}

const points = (standing: number | null) => (standing === null ? 'stopped' : (100 * standing).toFixed(1));
const better = (before: number | null, after: number) => before === null || after > before;

function sayKnob(knob: Knob, value: number): string {
  switch (KNOBS[knob].quantity) {
    case 'length':
      return `${(1000 * value).toFixed(1)} mm`;
    case 'angle':
      return `${((180 * value) / Math.PI).toFixed(1)} deg`;
    case 'ratio':
      return value.toFixed(3);
  }
}

function sayMeasure(measure: string, value: number | undefined, currency: string): string {
  if (value === undefined || Number.isNaN(value)) return 'stopped';
  if (value === Number.POSITIVE_INFINITY) return 'never';
  return formatQuantity(value, quantityOf(measure), { currency });
}
