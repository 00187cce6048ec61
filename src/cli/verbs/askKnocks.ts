import { inBriefCurrency } from '../../assess/money/price.ts';
import { knockFindings, knockMeasures } from '../../assess/parts/knocks/knockMeasures.ts';
import { forecastOf } from '../../assess/parts/knocks/knocksPart.ts';
import { readCrashLog } from '../../build/read/readCrashLog.ts';
import type { Brief } from '../../build/schema/brief.ts';
import { judgeCrashLog, type LogAgainstForecast } from '../../knocks/crashLog.ts';
import type { CrashLog, KnockForecast, Learning } from '../../knocks/types.ts';
import { formatQuantity, withUnit } from '../../units/formatQuantity.ts';
import type { Money } from '../../units/parseMoney.ts';
import { mustRead } from '../files.ts';
import { BadInput, type Io } from '../io.ts';
import { wholeOption } from '../options.ts';
import { type AskPartOptions, loadPartContext } from '../partContext.ts';
import { findingLines, partJson } from '../print/answerText.ts';
import { crashLogLines } from '../print/crashLogText.ts';
import { narrowTable } from '../print/narrow.ts';

export interface AskKnocksOptions extends AskPartOptions {
  readonly flights?: string;
  readonly seed?: string;
  readonly log?: string;
}

/** `ask knocks`: what a pilot's flights break and cost. */
export function askKnocks(file: string, options: AskKnocksOptions, io: Io): void {
  const context = loadPartContext(file, options, io, false);
  const { craft } = context;
  const flights =
    options.flights === undefined ? undefined : wholeOption('--flights', options.flights, 1, 1000);
  const log = options.log === undefined ? undefined : loadLog(options.log, context.brief, io);
  // A log is judged against a forecast of as many flights.
  const planned = log?.flights ?? flights ?? context.brief.flightsPlanned;
  const brief = { ...context.brief, flightsPlanned: planned };
  const seed = options.seed === undefined ? undefined : wholeOption('--seed', options.seed, 0, 2 ** 32 - 1);
  const found = forecastOf(craft, brief, seed);
  if (!found.ok) throw new BadInput(`${file}: ${found.reason}.`);
  const { plan, forecast, report } = found.value;
  const measures = knockMeasures(craft, forecast, report);
  const findings = knockFindings(craft, brief, forecast, report);
  const judged = log === undefined ? undefined : judge(options.log ?? '', plan.learning, log, forecast);
  if (options.json) {
    io.writeOut(partJson({ measures, findings }, judged === undefined ? report : { ...report, log: judged }));
    return;
  }
  const money = (value: number) => formatQuantity(value, 'money', { currency: brief.currency });
  // Of a mean that pilots differ about by half and more, pence say nothing.
  const whole = (value: number) => withUnit(value.toFixed(0), brief.currency);
  const { otherCut } = report;
  const lines = [
    narrowTable(
      ['over the flights', 'mean', '10th', '90th'],
      measures.map(({ label, value, band, quantity }) => [
        label,
        formatQuantity(value, quantity, { currency: brief.currency, band }),
        ...band.map((end) => {
          if (quantity === 'count') return end.toFixed(0);
          const text = formatQuantity(end, quantity, { currency: brief.currency, band });
          return quantity === 'time' && /^0\s/.test(text) ? 'none' : text;
        }),
      ]),
      ['left', 'right', 'right', 'right'],
    ),
    '',
    narrowTable(
      ['part', 'price', 'broken, mean', '90th', 'money, mean'],
      [
        ...report.parts.map((part) => [
          part.id,
          money(part.price),
          part.broken.toFixed(1),
          part.p90.toFixed(0),
          whole(part.money),
        ]),
        ['all, and shipping', '', '', '', whole(otherCut.moneyAsIs)],
      ],
      ['left', 'right', 'right', 'right', 'right'],
    ),
    '',
    `Means of ${report.histories} histories, seed ${report.seed}; the percentiles are chance and differences between pilots, how pilots crash being common practice without a source. The mean of all repairs is rounded above to what its percentiles allow.`,
    '',
    `The same crashes with ${otherCut.construction === 'one-piece plate' ? 'a one-piece plate' : otherCut.construction} at ${money(otherCut.price)}${otherCut.priceInferred ? ' (our guess)' : ''}: ${whole(otherCut.money)} instead of ${whole(otherCut.moneyAsIs)}.`,
    ...(judged === undefined ? [] : crashLogLines(judged, money)),
    ...findingLines(findings),
  ];
  io.writeOut(`${lines.join('\n')}\n`);
}

function loadLog(path: string, brief: Brief, io: Io): CrashLog {
  const inCurrency = (money: Money) => inBriefCurrency(money, brief);
  return mustRead(readCrashLog(io.readText(path), path, inCurrency));
}

/** A log whose flights do not go together is bad input. */
function judge(path: string, learning: Learning, log: CrashLog, forecast: KnockForecast): LogAgainstForecast {
  try {
    return judgeCrashLog(learning, log, forecast);
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(`${path}: ${error.message}.`);
    throw error;
  }
}
