import { knockFindings, knockMeasures } from '../../assess/parts/knocks/knockMeasures.ts';
import { forecastOf } from '../../assess/parts/knocks/knocksPart.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { BadInput, type Io } from '../io.ts';
import { wholeOption } from '../options.ts';
import { type AskPartOptions, loadPartContext } from '../partContext.ts';
import { findingLines, partJson } from '../print/answerText.ts';
import { printTable } from '../print/table.ts';

export interface AskKnocksOptions extends AskPartOptions {
  readonly flights?: string;
  readonly seed?: string;
}

/** `ask knocks`: what a pilot's flights break and cost. */
export function askKnocks(file: string, options: AskKnocksOptions, io: Io): void {
  const context = loadPartContext(file, options, io, false);
  const { craft } = context;
  const flights =
    options.flights === undefined ? undefined : wholeOption('--flights', options.flights, 1, 1000);
  const brief = flights === undefined ? context.brief : { ...context.brief, flightsPlanned: flights };
  const seed = options.seed === undefined ? undefined : wholeOption('--seed', options.seed, 0, 2 ** 32 - 1);
  const found = forecastOf(craft, brief, seed);
  if (!found.ok) throw new BadInput(`${file}: ${found.reason}.`);
  const { forecast, report } = found.value;
  const measures = knockMeasures(craft, forecast, report);
  const findings = knockFindings(craft, brief, forecast, report);
  if (options.json) {
    io.writeOut(partJson({ measures, findings }, report));
    return;
  }
  const money = (value: number) => formatQuantity(value, 'money', { currency: brief.currency });
  const { otherCut } = report;
  const lines = [
    printTable(
      ['over the flights', 'mean', '10th', '90th'],
      measures.map(({ label, value, band, quantity }) => [
        label,
        ...[value, ...band].map((each) =>
          quantity === 'count'
            ? each.toFixed(1)
            : formatQuantity(each, quantity, { currency: brief.currency }),
        ),
      ]),
      ['left', 'right', 'right', 'right'],
    ),
    '',
    printTable(
      ['part', 'price', 'broken, mean', '90th', 'money'],
      report.parts.map((part) => [
        part.id,
        money(part.price),
        part.broken.toFixed(2),
        part.p90.toFixed(0),
        money(part.money),
      ]),
      ['left', 'right', 'right', 'right', 'right'],
    ),
    '',
    `The same crashes with ${otherCut.construction === 'one-piece plate' ? 'a one-piece plate' : otherCut.construction} at ${money(otherCut.price)}${otherCut.priceInferred ? ' (our guess)' : ''}: ${money(otherCut.money)} instead of ${money(otherCut.moneyAsIs)}.`,
    ...findingLines(findings),
  ];
  io.writeOut(`${lines.join('\n')}\n`);
}
