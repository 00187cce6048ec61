import { useMemo } from 'react';
import { quantityOf } from '../../choose/searchMeasures.ts';
import type { Flip, WantReason } from '../../choose/shortlist/reasons.ts';
import { type Manner, sayBand, sayFigure, sayInWords } from '../../report/sayFigure.ts';
import { tornadoDrawing } from '../../report/tornadoDrawing.ts';
import { shownIn } from '../../units/shownUnits.ts';
import { sayFlippedValue } from '../choice/sayFlip.ts';
import { ChartView } from '../parts/ChartView.tsx';
import { DrawingView } from '../parts/DrawingView.tsx';
import { useSize } from '../parts/useSize.ts';
import { localCount, localNumber, localText } from '../state/decimalMark.ts';
import { addBuild } from '../state/desk.ts';
import { useWords } from '../state/manner.ts';
import { turnTo } from '../state/place.ts';
import type { ListedBuild, SearchReport } from '../worker/searchProtocol.ts';
import { frontChart } from './frontChart.ts';
import { WiderLimits } from './WiderLimits.tsx';

interface Props {
  readonly report: SearchReport;
  readonly manner: Manner;
  readonly label: (measure: string) => string;
}

const WIDEST = 560;
/** Less of the standing is not worth a line. */
const TELLING = 5e-4;
const MOST_FLIPS = 5;

/** What a search found: the list, why in this order, what would turn it, what was left out. */
export function Found({ report, manner, label }: Props) {
  const [ref, { width }] = useSize<HTMLDivElement>();
  const figure = Math.min(Math.max(width, 240), WIDEST);
  const chart = useMemo(() => frontChart(report, manner), [report, manner]);
  const leanings = useMemo(() => leaningsDrawing(report, manner, figure), [report, manner, figure]);
  const [first] = report.list;
  return (
    <div className="found" ref={ref} aria-live="polite">
      <p className="found-sum">{sumWords(report)}</p>
      {first === undefined ? (
        <p className="found-none">
          Nothing on the shelf passes every limit and rule. What took most out stands below.
        </p>
      ) : (
        <ol className="found-list">
          {report.list.map((listed, index) => (
            <Entry key={listed.parts.join('|')} listed={listed} place={index + 1} {...{ manner, label }} />
          ))}
        </ol>
      )}
      {first !== undefined && report.draws > 0 && (
        <p className="found-note">
          First in: share of {report.draws} draws of every unsure input, give or take{' '}
          {Math.round(100 * report.error)} %.
        </p>
      )}
      <div className="found-figures">
        {chart !== undefined && width > 0 && (
          <figure>
            <figcaption>The front: nothing else is better in one without being worse in another</figcaption>
            <ChartView chart={chart} width={figure} />
          </figure>
        )}
        {leanings !== undefined && width > 0 && (
          <figure>
            <figcaption>What the minutes of the first lean on, each input alone low and high</figcaption>
            <DrawingView drawing={leanings} pen={1} className="chart" />
          </figure>
        )}
      </div>
      <WiderLimits wider={report.wider} label={label} />
      <LeftOut report={report} />
    </div>
  );
}

interface EntryProps extends Omit<Props, 'report'> {
  readonly listed: ListedBuild;
  readonly place: number;
}

function Entry({ listed, place, manner, label }: EntryProps) {
  const words = useWords();
  const { build, parts, standing, risks, measures, first, alike, reasons, flips } = listed;
  const say = (measure: string, value: number) => sayValue(measure, value, manner);
  const line = ({ measure, difference, values }: WantReason) => (
    <li key={measure}>
      {measure === 'risks' ? 'risks to mend or accept' : label(measure)}: {say(measure, values[1])} against{' '}
      {say(measure, values[0])} <small>{points(-difference)}</small>
    </li>
  );
  const [behind, ahead] = [
    reasons.filter(({ difference }) => difference >= TELLING),
    reasons.filter(({ difference }) => difference <= -TELLING),
  ];
  return (
    <li className="found-entry">
      <div className="found-head">
        <span className="balloon" aria-hidden="true">
          {place}
        </span>
        <h3>{build.name}</h3>
        <span className="found-standing">
          <b className="figure">{localNumber(100 * standing, 1)}</b> of 100
          {first !== undefined && `, first in ${Math.round(100 * first)} %`}
          {risks > 0 && `, ${risks} ${risks === 1 ? 'risk' : 'risks'}`}
          {alike > 0 && `, ${alike} more much alike`}
        </span>
        <button
          type="button"
          className="plain-button small"
          onClick={() => {
            addBuild(build);
            turnTo('airframe');
          }}
        >
          open as a build<span className="unseen">: {build.name}</span>
        </button>
      </div>
      <p className="found-parts">{parts.join(', ')}</p>
      <dl className="found-measures">
        {measures.map((measure) => {
          const { text, unit } = sayFigure(measure, manner);
          const band = sayBand(measure, manner);
          return (
            <div key={measure.id}>
              <dt>{words(measure.label)}</dt>
              <dd>
                <span className="figure">{text}</span> {unit} {band && <small>{band}</small>}
              </dd>
            </div>
          );
        })}
      </dl>
      {place > 1 && (
        <details>
          <summary>
            why it stands behind the first{flips.length > 0 && ', and what would put it level'}
          </summary>
          <div className="verdict-columns">
            {behind.length > 0 && (
              <div>
                <h4>Against it</h4>
                <ul>{behind.map(line)}</ul>
              </div>
            )}
            {ahead.length > 0 && (
              <div>
                <h4>For it</h4>
                <ul>{ahead.map(line)}</ul>
              </div>
            )}
            {flips.length > 0 && (
              <div>
                <h4>Any one of these puts it level</h4>
                <ul>
                  {flips.slice(0, MOST_FLIPS).map((flip) => (
                    <li key={`${flip.kind} ${flip.measure}`}>{flipWords(flip, manner, label)}</li>
                  ))}
                </ul>
              </div>
            )}
          </div>
        </details>
      )}
    </li>
  );
}

const points = (difference: number) =>
  `${difference > 0 ? '+' : '−'}${localNumber(Math.abs(100 * difference), 1)} points`;

function sayValue(measure: string, value: number, manner: Manner): string {
  if (measure === 'risks') return String(value);
  if (value === Number.POSITIVE_INFINITY) return 'never';
  return Number.isFinite(value) ? sayInWords(value, quantityOf(measure), manner) : 'not known';
}

function flipWords(flip: Flip, manner: Manner, label: (measure: string) => string): string {
  if (flip.kind === 'weight') {
    return `${label(flip.measure)} weighs ${localText(flip.to.toPrecision(2))} instead of ${flip.from}`;
  }
  return `the first has ${sayFlippedValue(flip, manner)}: ${label(flip.measure)}`;
}

function sumWords({ size, counts, finished }: SearchReport): string {
  const sum = `${localCount(size)} combinations: ${localCount(counts.evaluated)} worked out, ${localCount(counts.bounded)} left out because the best they could be is not good enough, the rest stopped by rules and limits.`;
  return finished
    ? `${sum} Exact: the same list as working out every one.`
    : `${sum} Stopped before the end: what is not listed may still be better.`;
}

function LeftOut({ report: { counts } }: { readonly report: SearchReport }) {
  const rows = Object.entries(counts.excluded)
    .filter(([, count]) => count > 0)
    .sort((a, b) => b[1] - a[1])
    .slice(0, 10);
  if (rows.length === 0) return null;
  return (
    <section className="found-out">
      <h3>Taken out for sure, by the first reason met</h3>
      <table>
        <tbody>
          {rows.map(([name, count]) => (
            <tr key={name}>
              <th scope="row">{name.replaceAll('-', ' ')}</th>
              <td className="figure">{localCount(count)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function leaningsDrawing({ leanings }: SearchReport, manner: Manner, width: number) {
  if (leanings === undefined || leanings.bars.length === 0) return undefined;
  const { text, convert } = shownIn(leanings.quantity, leanings.nominal, manner);
  const rows = leanings.bars.slice(0, 8).map(({ label, trust, low, high }) => ({
    name: `${label} (${trust})`,
    ...(low === undefined ? {} : { low: convert(low) }),
    ...(high === undefined ? {} : { high: convert(high) }),
  }));
  const says = `${leanings.label} of the first with each input alone at its 10th and 90th percentile`;
  return tornadoDrawing(rows, convert(leanings.nominal), `${leanings.label}, ${text}`, width, says);
}
