import type { Assessment } from '../../assess/assessment.ts';
import { type Finding, type Measure, SHEETS } from '../../assess/types.ts';
import { formatBand, formatQuantity } from '../../units/formatQuantity.ts';
import type { Paint } from './paint.ts';
import { printTable } from './table.ts';

/** An assessment for people: findings first, then the measures sheet by sheet, each with its band. */
export function assessmentText(
  assessment: Assessment,
  options: { readonly paint: Paint; readonly how: boolean; readonly notes: boolean },
): string {
  const { paint } = options;
  const { currency } = assessment.money;
  const lines = [paint.strong(assessment.build), paint.faint(`under the brief: ${assessment.brief}`), ''];
  lines.push(...findingLines(assessment.findings, options));
  for (const sheet of SHEETS) {
    const measures = assessment.measures.filter((measure) => measure.sheet === sheet);
    if (measures.length === 0) continue;
    lines.push('', paint.strong(sheet), measureTable(measures, currency, paint, options.how));
  }
  const passed = assessment.fit.filter((line) => line.passes).length;
  lines.push('', `${passed} of ${assessment.fit.length} fit checks pass.`);
  if (assessment.inferred.length > 0) {
    lines.push(paint.faint(`Inferred by us, not told by a maker: ${assessment.inferred.join('; ')}.`));
  }
  lines.push(
    ...(assessment.data === undefined
      ? [paint.faint('Level flight, wind, control in reserve, mission, shake, hits and crashes: add --full.')]
      : []),
    paint.faint(
      'Bands are 10th to 90th percentile. Local rules and licensed practice come first; props off on the bench.',
    ),
  );
  return `${lines.join('\n')}\n`;
}

function measureTable(measures: readonly Measure[], currency: string, paint: Paint, how: boolean): string {
  const rows = measures.map((measure) => {
    const { value, band, quantity, window, open, words } = measure;
    const exact = band[0] === band[1];
    const shown = { band, currency };
    return [
      `  ${measure.label}`,
      words ?? formatQuantity(value, quantity, exact ? { currency } : shown),
      words !== undefined
        ? ''
        : exact
          ? 'exact'
          : `${formatBand(value, band, quantity, { currency })}${open === undefined ? '' : `, or ${open}`}`,
      window === undefined
        ? ''
        : `${formatQuantity(window.low, quantity)} to ${formatQuantity(window.high, quantity)}`,
      how ? paint.faint(`${measure.how} [${measure.source}]`) : leaning(measure),
    ];
  });
  return printTable(['', 'value', 'band', 'window', how ? 'how' : 'leans on'], rows, [
    'left',
    'right',
    'left',
    'left',
    'left',
  ]);
}

function leaning(measure: Measure): string {
  const first = measure.leansOn[0];
  return first === undefined ? '' : `${first.input} (${first.trust})`;
}

function findingLines(
  findings: readonly Finding[],
  { paint, notes }: { readonly paint: Paint; readonly notes: boolean },
): readonly string[] {
  const shown = findings.filter((finding) => notes || finding.severity !== 'note');
  const hidden = findings.length - shown.length;
  const lines = shown.flatMap((finding) => [
    `${paint.severity(finding.severity, finding.severity.toUpperCase().padEnd(4))}  ${finding.says}`,
    `      ${paint.faint(`-> ${finding.remedy}`)}`,
  ]);
  if (shown.length === 0) lines.push('No stops and no risks found.');
  if (hidden > 0) lines.push(paint.faint(`${hidden} notes more: --notes shows them.`));
  return lines;
}
