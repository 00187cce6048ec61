import type { Brief } from '../../build/schema/brief.ts';
import type { CostGroup, CostLine } from '../../knocks/types.ts';
import type { MoneyReport } from '../assessment.ts';
import { bandOf } from '../propagate.ts';
import type { Finding, Measure } from '../types.ts';
import type { CostList } from './costLines.ts';

/** One standard deviation of a listed price between shops and weeks, relative (common practice, no source). */
const PRICE_SPREAD = 0.08;

export function moneyReport(list: CostList, brief: Brief): MoneyReport {
  return {
    currency: brief.currency,
    lines: list.lines.map((line) => ({ ...line, owned: list.owned.has(line.id) })),
    unpriced: list.unpriced,
    ...(list.exchanged.length === 0 ? {} : { rates: ratesInWords(list.exchanged, brief) }),
  };
}

function ratesInWords(currencies: readonly string[], { exchange, exchangeAsOf }: Brief): string {
  const told = currencies.map((code) => `${code} at ${exchange[code]?.amount} ${exchange[code]?.currency}`);
  return `${told.join(', ')}, ${exchangeAsOf === undefined ? 'of a day that the brief does not tell' : `as of ${exchangeAsOf}`}`;
}

/** What the aircraft and the first flight cost, in the brief's currency. */
export function moneyMeasures(report: MoneyReport): readonly Measure[] {
  const toBuy = report.lines.filter((line) => !line.owned);
  const changed = report.rates === undefined ? '' : ` Prices changed: ${report.rates}.`;
  const measure = (id: string, label: string, lines: readonly CostLine[], how: string) =>
    moneyMeasure(id, label, lines, `${how}${changed}`);
  const of = (...groups: CostGroup[]) => toBuy.filter((line) => groups.includes(line.group));
  return [
    measure(
      'first-flight-cost',
      'to the first flight',
      toBuy,
      'Everything not at hand already: aircraft, what its boxes lack, kit, packs of a session, spares.',
    ),
    measure('aircraft-cost', 'the aircraft alone', of('aircraft'), 'The parts on board with one pack.'),
    measure(
      'missing-cost',
      'missing from the boxes',
      of('missing from the box'),
      'Mounts, straps, screws and the like that no box brings.',
    ),
    measure(
      'kit-cost',
      'kit round it',
      of('kit'),
      'Goggles, transmitter, charger, the other packs and the bench, less what is at hand.',
    ),
    measure('spares-cost', 'spares for a start', of('spares'), 'Five sets of propellers and an arm.'),
    ...(report.lines.some((line) => line.group === 'shipping')
      ? [
          measure(
            'shipping-cost',
            'sending it',
            of('shipping'),
            'Price of an order times orders: one for each time to arrive.',
          ),
        ]
      : []),
  ];
}

export function moneyFindings(
  report: MoneyReport,
  measures: readonly Measure[],
  brief: Brief,
): readonly Finding[] {
  const findings: Finding[] = [];
  const cost = measures.find((measure) => measure.id === 'first-flight-cost');
  const say = (amount: number) => `${amount.toFixed(0)} ${report.currency}`;
  const budget = brief.budget;
  if (cost !== undefined && budget !== undefined && budget.currency === report.currency) {
    if (cost.value > budget.amount) {
      findings.push({
        id: 'over-budget',
        sheet: 'money',
        severity: cost.band[0] > budget.amount ? 'stop' : 'risk',
        says: `${say(cost.value)} to the first flight; the budget is ${say(budget.amount)}.`,
        number: { value: cost.value, limit: budget.amount, quantity: 'money' },
        remedy: dearest(report),
        source: 'addition of listed prices',
        parts: [],
      });
    }
  } else if (budget !== undefined && budget.currency !== report.currency) {
    findings.push({
      id: 'budget-currency',
      sheet: 'money',
      severity: 'note',
      says: `The budget is in ${budget.currency}, the prices are shown in ${report.currency}: it is not held against them.`,
      remedy: `Give the budget in ${report.currency}.`,
      source: 'the brief',
      parts: [],
    });
  }
  if (report.unpriced.length > 0) {
    findings.push({
      id: 'unpriced',
      sheet: 'money',
      severity: 'risk',
      says: `Not in the sum, for want of a price: ${report.unpriced.join('; ')}.`,
      number: { value: report.unpriced.length, limit: 0, quantity: 'count' },
      remedy: 'Give a price, an exchange rate in the brief, or a part on your own shelf.',
      source: 'the shelf',
      parts: [],
    });
  }
  return findings;
}

function moneyMeasure(id: string, label: string, lines: readonly CostLine[], how: string): Measure {
  const value = lines.reduce((sum, line) => sum + line.count * line.unitPrice, 0);
  const deviation = Math.sqrt(
    lines.reduce((sum, line) => sum + (PRICE_SPREAD * line.count * line.unitPrice) ** 2, 0),
  );
  return {
    id,
    label,
    sheet: 'money',
    quantity: 'money',
    value,
    band: bandOf(value, deviation),
    better: 'less',
    how,
    source: 'listed prices; spread between shops: common practice, no source',
    leansOn: [...lines]
      .sort((a, b) => b.count * b.unitPrice - a.count * a.unitPrice)
      .slice(0, 3)
      .map((line) => ({
        input: `price of ${line.what}`,
        trust: 'maker' as const,
        share: ((PRICE_SPREAD * line.count * line.unitPrice) / Math.max(deviation, 1e-9)) ** 2,
      })),
  };
}

function dearest(report: MoneyReport): string {
  const line = [...report.lines]
    .filter((each) => !each.owned)
    .sort((a, b) => b.count * b.unitPrice - a.count * a.unitPrice)[0];
  return line === undefined
    ? 'Raise the budget.'
    : `The dearest line is ${line.what}: borrow it, or take a cheaper one.`;
}
