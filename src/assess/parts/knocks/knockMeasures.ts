import type { Craft } from '../../../build/craft.ts';
import type { Brief } from '../../../build/schema/brief.ts';
import type { KnockForecast, Spread } from '../../../knocks/types.ts';
import { formatQuantity } from '../../../units/formatQuantity.ts';
import type { Finding, Leaning, Measure, Quantity } from '../../types.ts';
import type { KnocksReport } from '../airframeData.ts';

const SOURCE = 'Monte Carlo, docs/method/knocks.md; habits of pilots and crashes: common practice, no source';
const DAY = 86400;
const BAND = 'Band: chance and differences between pilots, not doubt about how pilots crash.';

/** The forecast as measures. */
export function knockMeasures(
  craft: Craft,
  forecast: KnockForecast,
  report: KnocksReport,
): readonly Measure[] {
  const { flights } = forecast;
  const structure = forecast.parts[0];
  const leansOn = (...inputs: readonly string[]): readonly Leaning[] =>
    inputs.map((input) => ({ input, trust: 'inferred', share: 1 / inputs.length }));
  const of = (
    id: string,
    label: string,
    quantity: Quantity,
    spread: Spread,
    how: string,
    leaning: readonly Leaning[],
    unit = 1,
  ): Measure => ({
    id,
    label,
    sheet: 'knocks',
    quantity,
    value: spread.mean * unit,
    // Rare things have a mean outside their own percentiles.
    band: [Math.min(spread.p10, spread.mean) * unit, Math.max(spread.p90, spread.mean) * unit],
    better: 'less',
    how: `${how} ${BAND}`,
    source: SOURCE,
    leansOn: leaning,
  });
  return [
    of(
      'knocks-money',
      `repairs over ${flights} flights`,
      'money',
      forecast.money,
      `Mean of ${report.histories} histories: parts at their prices, and shipping an order.`,
      leansOn('how often the pilot crashes', 'how squarely things are hit', 'where crashes end'),
    ),
    of(
      'knocks-crashes',
      `crashes in ${flights} flights`,
      'count',
      forecast.crashes,
      'A hazard that falls with flights flown, pilots differing.',
      leansOn('how often the pilot crashes'),
    ),
    ...(structure === undefined
      ? []
      : [
          of(
            'knocks-structure',
            `${structure.id}s broken`,
            'count',
            structure.broken,
            craft.frame.construction === 'one-piece plate'
              ? 'Any broken arm takes the whole plate.'
              : 'Broken where the hit is faster than the arm bears, by the airframe’s own hits.',
            leansOn('strength of the arms', 'how squarely things are hit'),
          ),
        ]),
    of(
      'knocks-waiting',
      'waiting for parts',
      'time',
      forecast.daysWaiting,
      'An order each time a part is missing; orders are taken one after the other.',
      leansOn('days an order takes', 'spares at the start'),
      DAY,
    ),
    of(
      'knocks-bench',
      'time on the bench',
      'time',
      forecast.benchTime,
      'Minutes to change each part, added up.',
      leansOn('minutes each change takes'),
    ),
  ];
}

/** What the forecast advises. */
export function knockFindings(
  craft: Craft,
  brief: Brief,
  forecast: KnockForecast,
  report: KnocksReport,
): readonly Finding[] {
  return [...plateFinding(craft, brief, report), ...waiting(forecast), ...noPrice(report)];
}

function plateFinding({ frame }: Craft, brief: Brief, report: KnocksReport): readonly Finding[] {
  const own = report.parts[0];
  if (frame.construction !== 'one-piece plate' || own === undefined || own.broken < 0.1) return [];
  const money = (value: number) => formatQuantity(value, 'money', { currency: brief.currency });
  const asIs = report.otherCut.moneyAsIs;
  const saved = asIs - report.otherCut.money;
  return [
    {
      id: 'one-piece-plate',
      sheet: 'knocks',
      severity: saved > 0.15 * asIs ? 'risk' : 'note',
      says: `Any broken arm costs the whole plate, ${money(own.price)} and an evening: ${own.broken.toFixed(1)} in ${report.flights} flights. With separate arms at ${money(report.otherCut.price)}${report.otherCut.priceInferred ? ' (a guess)' : ''} the same crashes would cost ${money(report.otherCut.money)} instead of ${money(asIs)}.`,
      number: { value: own.broken, limit: 0.1, quantity: 'count' },
      remedy: 'Separate arms while learning, or a spare plate on the shelf.',
      source: 'docs/method/knocks.md',
      parts: ['frame'],
    },
  ];
}

function waiting(forecast: KnockForecast): readonly Finding[] {
  const lost = forecast.flightsLost.mean;
  if (lost < 0.25 * forecast.flights) return [];
  const causes = [...forecast.parts].sort((a, b) => b.money - a.money)[0]?.id ?? 'parts';
  return [
    {
      id: 'waiting-for-parts',
      sheet: 'knocks',
      severity: 'note',
      says: `About ${Math.round(forecast.daysWaiting.mean)} days pass waiting for parts: some ${Math.round(lost)} flights not flown.`,
      number: { value: lost, limit: 0.25 * forecast.flights, quantity: 'count' },
      remedy: `Keep more spares; most of the money goes into the ${causes}.`,
      source: 'docs/method/knocks.md',
      parts: ['frame', 'propellers', 'motors'],
    },
  ];
}

function noPrice({ unpriced }: KnocksReport): readonly Finding[] {
  if (unpriced.length === 0) return [];
  return [
    {
      id: 'knocks-unpriced',
      sheet: 'knocks',
      severity: 'note',
      says: `Counted as free, for want of a price in the brief's currency: ${unpriced.join('; ')}.`,
      number: { value: unpriced.length, limit: 0, quantity: 'count' },
      remedy: 'Give an exchange rate in the brief.',
      source: 'the shelf',
      parts: [],
    },
  ];
}
