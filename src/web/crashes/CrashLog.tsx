import { useMemo } from 'react';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { CrashNotes } from '../../build/schema/crashLogFile.ts';
import type { Surprise } from '../../knocks/crashLog.ts';
import { drawChart } from '../../report/chart.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { DrawingView } from '../parts/DrawingView.tsx';
import { ScrollTable } from '../parts/ScrollTable.tsx';
import { useSize } from '../parts/useSize.ts';
import { localNumber } from '../state/decimalMark.ts';
import { useDesk } from '../state/desk.ts';
import type { CrashLogView } from '../worker/crashLogProtocol.ts';
import { crashChart, moneyChart } from './crashCharts.ts';
import { LogEntry } from './LogEntry.tsx';
import { useJudged } from './useJudged.ts';

export interface CrashLogProps {
  readonly id: string;
  readonly build: Build;
  readonly brief: Brief;
  readonly manner: Manner;
  /** Of the forecast. */
  readonly parts: readonly string[];
}

/** The pilot's own log of this build, held against the forecast of as many flights. */
export default function CrashLog({ id, build, brief, manner, parts }: CrashLogProps) {
  const notes = useDesk(({ logs }) => logs[id]);
  const view = useJudged(build, brief, notes);
  return (
    <section className="figure wide crash-log" aria-label="your own crash log">
      <h3>Your own crash log</h3>
      <p className="figure-says">
        What really happened to this build, held against the forecast of as many flights. It stays in this
        browser, and counts with undo.
      </p>
      <LogEntry id={id} notes={notes} parts={parts} currency={manner.currency} />
      <p role="status" className="search-words">
        {notes && view === undefined && 'Being held against the forecast.'}
        {view?.ok === false && `It can not be held against the forecast: ${view.reason}.`}
        {view?.ok === true && 'Held against the forecast.'}
      </p>
      {notes && view?.ok === true && <Judged notes={notes} view={view} manner={manner} />}
    </section>
  );
}

/** Two charts stand side by side from this width on, and are no wider than this [px]. */
const PAIR = 640;
const WIDEST = 560;

interface JudgedProps {
  readonly notes: CrashNotes;
  readonly view: Extract<CrashLogView, { ok: true }>;
  readonly manner: Manner;
}

function Judged({ notes, view, manner }: JudgedProps) {
  const [ref, { width }] = useSize<HTMLDivElement>();
  const each = Math.min(WIDEST, width >= PAIR ? Math.floor((width - 34) / 2) : width);
  const drawings = useMemo(() => {
    if (each < 120) return [];
    const height = Math.max(180, Math.round(each * 0.6));
    const say = (value: number) => sayInWords(value, 'money', manner);
    return [
      drawChart(crashChart(view, notes), each, height),
      drawChart(moneyChart(view, notes.flights, manner.currency, say), each, height),
    ];
  }, [view, notes, manner, each]);
  const { pilotFactor } = view.against;
  const tenths = (value: number) => localNumber(value, 1);
  return (
    <div ref={ref}>
      <div className="log-charts">
        {drawings.map((drawing, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the charts keep their order
          <DrawingView key={i} drawing={drawing} pen={1} className="chart" />
        ))}
      </div>
      <LogTable view={view} manner={manner} />
      <p className="figure-says">
        By this log you crash {tenths(pilotFactor.mean)} times as often as the forecast's pilot (10th to 90th{' '}
        {tenths(pilotFactor.p10)} to {tenths(pilotFactor.p90)}).
        {view.unpriced && " The log's money is left out: the brief has no rate for its currency."}
      </p>
      <p className="own-note">
        Crashes by their exact law, pilots differing; money and parts by their rank among{' '}
        {localNumber(view.histories, 0)} histories (docs/method/knocks.md). How pilots learn and how parts
        break is inferred by us: where the two columns differ, believe your log.
      </p>
    </div>
  );
}

function LogTable({ view, manner }: Omit<JudgedProps, 'notes'>) {
  const { against, crashes, money, parts } = view;
  const end = crashes.at(-1);
  const count: Say = (value, band) => localNumber(value, band === undefined ? 0 : 1);
  const inMoney: Say = (value, band) =>
    formatQuantity(value, 'money', { ...manner, ...(band ? { band } : {}) });
  const rows: readonly Row[] = [
    { what: 'crashes', ...against.crashes, ...(end ? { band: [end.p10, end.p90] } : {}), say: count },
    ...(against.money === undefined
      ? []
      : [
          {
            what: 'repairs',
            ...against.money,
            band: [money.spread.p10, money.spread.p90] as const,
            say: inMoney,
          },
        ]),
    ...against.broken.map((each): Row => {
      const spread = parts[each.id];
      return {
        what: `${each.id}, broken`,
        ...each,
        ...(spread ? { band: [spread.p10, spread.p90] } : {}),
        say: count,
      };
    }),
  ];
  return (
    <ScrollTable label="log against forecast">
      <table className="hit-table">
        <thead>
          <tr>
            <th scope="col">what</th>
            <th scope="col">by the log</th>
            <th scope="col">by the forecast</th>
            <th scope="col">chance of as many</th>
            <th scope="col">or as few</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ what, found, forecast, band, atLeast, atMost, say }) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>{say(found)}</td>
              <td>
                {say(forecast, band ?? [forecast, forecast])}
                {band && (
                  <small>
                    {say(band[0], band)} to {say(band[1], band)}
                  </small>
                )}
              </td>
              <td>{share(atLeast)}</td>
              <td>{share(atMost)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollTable>
  );
}

/** @param band that the value is told no finer than; exact without */
type Say = (value: number, band?: readonly [number, number]) => string;

interface Row extends Surprise {
  readonly what: string;
  /** 10th to 90th. */
  readonly band?: readonly [number, number];
  readonly say: Say;
}

const share = (value: number): string =>
  value < 0.001 ? 'under 0.1 %' : `${localNumber(100 * value, value < 0.1 ? 1 : 0)} %`;
