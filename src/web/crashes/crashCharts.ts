import type { CrashNotes } from '../../build/schema/crashLogFile.ts';
import type { Chart, Mark } from '../../report/chart.ts';
import type { Point } from '../../report/shapes.ts';
import { roof } from '../subjects/figure.ts';
import type { CrashLogView } from '../worker/crashLogProtocol.ts';

type Judged = Extract<CrashLogView, { ok: true }>;

/** A value by the end of each flight, from nothing before the first. */
const over = (values: readonly number[]): readonly Point[] => [
  { x: 0, y: 0 },
  ...values.map((y, i) => ({ x: i + 1, y })),
];

const forecast = (low: readonly number[], high: readonly number[], mean: readonly number[]): Mark[] => [
  { kind: 'band', lower: over(low), upper: over(high) },
  { kind: 'curve', points: over(mean), name: 'forecast', dashed: true },
];

/** The pilot's crashes, counted up flight by flight, over the forecast's mean and four in five of its pilots. */
export function crashChart({ crashes }: Judged, { flights, crashedOn }: CrashNotes): Chart {
  const steps = crashedOn.flatMap((flight, i): readonly Point[] => [
    { x: flight, y: i },
    { x: flight, y: i + 1 },
  ]);
  const found = crashedOn.length;
  const last = crashes.at(-1);
  return {
    description: `Crashes over ${flights} flights: ${found} by the log, ${last?.mean.toFixed(1)} by the forecast (10th to 90th ${last?.p10} to ${last?.p90}).`,
    across: { label: 'flights', low: 0, high: flights },
    upright: {
      label: 'crashes',
      low: 0,
      high: roof([found, 1, ...crashes.map(({ p90 }) => p90)]),
    },
    marks: [
      ...forecast(
        crashes.map(({ p10 }) => p10),
        crashes.map(({ p90 }) => p90),
        crashes.map(({ mean }) => mean),
      ),
      { kind: 'curve', points: [{ x: 0, y: 0 }, ...steps, { x: flights, y: found }], name: 'yours' },
    ],
  };
}

/** Money for repairs over the same flights; the log tells its end only. */
export function moneyChart(
  { money, against }: Judged,
  flights: number,
  currency: string,
  say: (value: number) => string,
): Chart {
  const spent = against.money?.found;
  const { mean, p10, p90 } = money.spread;
  return {
    description: `Repairs over ${flights} flights: ${spent === undefined ? 'not noted in the log' : `${say(spent)} by the log`}, ${say(mean)} by the forecast (10th to 90th ${say(p10)} to ${say(p90)}).`,
    across: { label: 'flights', low: 0, high: flights },
    upright: { label: currency, low: 0, high: roof([...money.p90, spent ?? 0, 1]) },
    marks: [
      ...forecast(money.p10, money.p90, money.mean),
      ...(spent === undefined
        ? []
        : [
            {
              kind: 'spot' as const,
              at: { x: flights, y: spent },
              name: 'yours',
              side: spent > mean ? ('over' as const) : ('under' as const),
            },
          ]),
    ],
  };
}
