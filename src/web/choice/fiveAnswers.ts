import type { Assessment } from '../../assess/assessment.ts';
import type { Finding, Measure } from '../../assess/types.ts';
import type { Brief } from '../../build/schema/brief.ts';
import { type Manner, sayBand, sayFigure } from '../../report/sayFigure.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';

/** One of the five questions with its answer in words. */
export interface Answer {
  readonly asks: string;
  /** The short of it. */
  readonly short: string;
  readonly says: readonly string[];
  readonly tone: 'yes' | 'but' | 'no';
}

/** Findings that speak of the pilot, the place and the law rather than of the parts. */
const PERSON: readonly string[] = [
  'simulator-first',
  'novice-wind',
  'mass-limit',
  'mass-class',
  'mass-threshold-near',
  'guards-no-permission',
  'observer',
  'beyond-sight',
  'video-power-legal',
  'command-power-legal',
  'wind-not-held',
  'no-wind-held',
];
const MONEY: readonly string[] = ['over-budget', 'budget-currency', 'unpriced'];

/** The first four questions of a newcomer for one build; which one and why is `Verdict`'s to tell. */
export function fiveAnswers(assessment: Assessment, brief: Brief, manner: Manner): readonly Answer[] {
  return [
    rightForMe(assessment, brief),
    partsFit(assessment),
    spending(assessment, brief, manner),
    minutes(assessment, manner),
  ];
}

function rightForMe({ findings, fit }: Assessment, brief: Brief): Answer {
  const own = findings.filter(({ id }) => PERSON.includes(id));
  const grave = own.filter(({ severity }) => severity !== 'note');
  const law = fit.find(({ id }) => id === 'mass-class');
  const { flightsFlown, simulatorHours } = brief.pilot;
  const stops = grave.filter(({ severity }) => severity === 'stop').length;
  return {
    asks: 'Is it the right first aircraft for me, my place and the law?',
    short: stops > 0 ? 'No' : grave.length > 0 ? 'Yes, with care' : 'Yes',
    tone: stops > 0 ? 'no' : grave.length > 0 ? 'but' : 'yes',
    says: [
      `For ${brief.purpose}, after ${flightsFlown} flights and ${simulatorHours} h on the simulator.`,
      ...grave.map(({ says }) => says),
      ...(law ? [law.says] : []),
    ],
  };
}

function partsFit({ findings, fit, flies }: Assessment): Answer {
  const own = findings.filter(({ id }) => !PERSON.includes(id) && !MONEY.includes(id));
  const count = (severity: Finding['severity']) =>
    own.filter((finding) => finding.severity === severity).length;
  const [stops, risks] = [count('stop'), count('risk')];
  const gravest = own.filter(({ severity }) => severity !== 'note').slice(0, 2);
  const passing = fit.filter(({ passes }) => passes).length;
  return {
    asks: 'Do the parts fit and stay inside their ratings?',
    short: !flies
      ? 'It does not fly'
      : stops > 0
        ? 'Not as it stands'
        : risks > 0
          ? `Yes, ${times(risks)} to mend`
          : 'Yes',
    tone: !flies || stops > 0 ? 'no' : risks > 0 ? 'but' : 'yes',
    says: [
      ...gravest.map(({ says, remedy }) => `${says} ${remedy}`),
      `${passing} of ${fit.length} rules found nothing wrong.`,
    ],
  };
}

function spending({ measures, findings, money }: Assessment, brief: Brief, manner: Manner): Answer {
  const first = measures.find(({ id }) => id === 'first-flight-cost');
  const later = measures.find(
    ({ sheet, quantity, id }) =>
      sheet === 'knocks' && quantity === 'money' && /cost|spend|spent|money/.test(id),
  );
  const over = findings.some(({ id }) => id === 'over-budget');
  const left = first && brief.budget ? brief.budget.amount - first.value : undefined;
  // As far as the sum itself is known: the difference of two rounded numbers must not look surer.
  const spread = first && ([first.band[0] - first.value, first.band[1] - first.value] as const);
  const rest = (value: number) =>
    formatQuantity(value, 'money', {
      ...manner,
      ...(spread ? { band: [value + spread[0], value + spread[1]] } : {}),
    });
  const owned = money.lines.filter((line) => line.owned).length;
  return {
    asks: `What do I spend before the first flight, and over ${brief.flightsPlanned}?`,
    short: first ? said(first, manner) : 'Not known',
    tone: over ? 'but' : 'yes',
    says: [
      ...(left === undefined
        ? []
        : [left >= 0 ? `${rest(left)} of the budget are left.` : `${rest(-left)} over the budget.`]),
      ...(later ? [`${upper(later.label)}: ${withBand(later, manner)}.`] : []),
      ...(first && later ? [`Together: ${withBand(together(first, later), manner)}.`] : []),
      ...(owned > 0 ? [`${owned} things are at hand already.`] : []),
      'Goggles, transmitter, charger, packs and tools are in it.',
    ],
  };
}

/** Both sums, their half bands as those of independent doubts (JCGM 100). */
function together(first: Measure, later: Measure): Measure {
  const value = first.value + later.value;
  const half = (end: 0 | 1) => Math.hypot(first.band[end] - first.value, later.band[end] - later.value);
  return { ...first, value, band: [value - half(0), value + half(1)] };
}

function minutes({ measures }: Assessment, manner: Manner): Answer {
  const find = (id: string) => measures.find((measure) => measure.id === id);
  const ids = ['flown-time', 'wind-held', 'thrust-to-weight', 'top-speed', 'wind-throttle'];
  const [flown, held, lift, top, throttle] = ids.map(find);
  const line = (measure: Measure | undefined) =>
    measure ? [`${upper(measure.label)}: ${withBand(measure, manner)}.`] : [];
  const outside = [lift, held].some(
    (each) => each?.window && (each.value < each.window.low || each.value > each.window.high),
  );
  return {
    asks: 'How many minutes, in how much wind, with what margin, flown my way?',
    short: flown ? said(flown, manner) : 'It does not fly',
    tone: flown ? (outside ? 'but' : 'yes') : 'no',
    says: [
      ...(flown ? [`${sayBand(flown, manner)} min four times in five, flown to the reserve.`] : []),
      ...line(throttle),
      ...line(held),
      ...line(lift),
      ...line(top),
    ],
  };
}

const times = (count: number): string => (count === 1 ? 'one thing' : `${count} things`);
const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function said(measure: Measure, manner: Manner): string {
  const { text, unit } = sayFigure(measure, manner);
  return unit === '' ? text : `${text} ${unit}`;
}

function withBand(measure: Measure, manner: Manner): string {
  const band = sayBand(measure, manner);
  return band === '' ? said(measure, manner) : `${said(measure, manner)} (${band})`;
}
