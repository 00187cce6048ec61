import { useLayoutEffect, useMemo } from 'react';
import type { Finding, Measure, Severity } from '../../assess/types.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { planDrawing, planExtent } from '../../report/planDrawing.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { DrawingView } from '../parts/DrawingView.tsx';
import { FigureCell, windowWords } from '../parts/FigureRows.tsx';
import { How } from '../parts/How.tsx';
import { SeverityMark } from '../parts/SeverityMark.tsx';
import { useSize } from '../parts/useSize.ts';
import { spanOf, WindowRule } from '../parts/WindowRule.tsx';
import { useAnswers } from '../state/answers.ts';
import { openBuild, useDesk } from '../state/desk.ts';
import { turnTo } from '../state/place.ts';
import { QUESTIONS } from './questions.ts';

interface Props {
  readonly manner: Manner;
  readonly onScale: (pen: number) => void;
}

/** A candidate as the choice sheet shows it; `letter` ties its column to the words above. */
interface Candidate {
  readonly id: string;
  readonly letter: string;
  readonly name: string;
  readonly aircraft?: AircraftPicture;
  readonly measures: readonly Measure[];
  readonly findings: readonly Finding[];
  readonly reasons: readonly string[];
}

const NARROW = 900;
const LABELS = 150;

/** Every candidate side by side at one scale, under the five questions a newcomer asks. */
export function ChoiceSheet({ manner, onScale }: Props) {
  const [ref, size] = useSize<HTMLDivElement>();
  const builds = useDesk((desk) => desk.builds);
  const views = useAnswers((answers) => answers.views);
  const candidates = useMemo(
    () =>
      Object.entries(builds).map(([id, build], i): Candidate => {
        const view = views[id];
        const letter = String.fromCharCode(65 + i);
        const bare = { id, letter, name: build.name, measures: [], findings: [], reasons: [] };
        if (view === undefined) return bare;
        if (!view.ok) return { ...bare, reasons: view.reasons };
        const { measures, findings } = view.assessment;
        return { ...bare, aircraft: view.picture, measures, findings };
      }),
    [builds, views],
  );
  const narrow = size.width < NARROW;
  const column = narrow
    ? Math.min(size.width * 0.5, 260)
    : (size.width - LABELS) / Math.max(candidates.length, 1);
  const pen = penFor(candidates, column - 24);
  useLayoutEffect(() => onScale(pen), [pen, onScale]);
  return (
    <div ref={ref} className="choice">
      <h2 className="choice-title">Which one first?</h2>
      {size.width > 0 &&
        (narrow ? (
          <ChoiceList candidates={candidates} pen={pen} manner={manner} />
        ) : (
          <ChoiceTable candidates={candidates} pen={pen} manner={manner} />
        ))}
    </div>
  );
}

interface Laid {
  readonly candidates: readonly Candidate[];
  readonly pen: number;
  readonly manner: Manner;
}

function ChoiceTable({ candidates, pen, manner }: Laid) {
  return (
    <table className="choice-table">
      <thead>
        <tr className="choice-drawings">
          <td className="choice-scale">all to one scale, nose up</td>
          {candidates.map((candidate) => (
            <td key={candidate.id}>
              <Plan candidate={candidate} pen={pen} />
            </td>
          ))}
        </tr>
        <tr>
          <td />
          {candidates.map((candidate) => (
            <th key={candidate.id} scope="col">
              <Name candidate={candidate} />
            </th>
          ))}
        </tr>
      </thead>
      {QUESTIONS.map(({ asks, ids }) => (
        <tbody key={asks}>
          <tr className="question">
            <th scope="rowgroup" colSpan={candidates.length + 1}>
              {asks}
            </th>
          </tr>
          {ids.map((id) => (
            <MeasureRow key={id} id={id} candidates={candidates} manner={manner} />
          ))}
        </tbody>
      ))}
      <tbody>
        <tr className="question">
          <th scope="rowgroup" colSpan={candidates.length + 1}>
            What is to be noted?
          </th>
        </tr>
        <tr className="choice-findings">
          <th scope="row">gravest first</th>
          {candidates.map(({ id, findings }) => (
            <td key={id}>
              <Gravest findings={findings} />
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  );
}

function MeasureRow({ id, candidates, manner }: { readonly id: string } & Omit<Laid, 'pen'>) {
  const found = candidates.map(({ measures }) => measures.find((measure) => measure.id === id));
  const known = found.filter((measure) => measure !== undefined);
  const label = known[0]?.label;
  if (label === undefined) return null;
  const span = spanOf(known);
  return (
    <tr>
      <th scope="row">{label}</th>
      {candidates.map((candidate, i) => {
        const measure = found[i];
        return (
          <td key={candidate.id}>
            {measure && (
              <How measure={measure} manner={manner} className="choice-figure">
                <FigureCell measure={measure} manner={manner} />
                <WindowRule measure={measure} span={span} width={92} />
                <small className="unseen">{windowWords(measure, manner)}</small>
              </How>
            )}
          </td>
        );
      })}
    </tr>
  );
}

function ChoiceList({ candidates, pen, manner }: Laid) {
  return (
    <div className="choice-list">
      {candidates.map((candidate) => (
        <article key={candidate.id} className="choice-entry">
          <h3>
            <Name candidate={candidate} />
          </h3>
          <Plan candidate={candidate} pen={pen} />
          <ul className="choice-figures">
            {QUESTIONS.flatMap(({ ids }) => ids.slice(0, 2)).map((id) => {
              const measure = candidate.measures.find((each) => each.id === id);
              if (measure === undefined) return null;
              return (
                <li key={id}>
                  <How measure={measure} manner={manner} className="choice-figure">
                    <span className="figure-label">{measure.label}</span>
                    <FigureCell measure={measure} manner={manner} />
                  </How>
                </li>
              );
            })}
          </ul>
          <Gravest findings={candidate.findings} />
        </article>
      ))}
    </div>
  );
}

function Name({ candidate: { id, letter, name } }: { readonly candidate: Candidate }) {
  return (
    <button
      type="button"
      className="candidate-name"
      onClick={() => {
        openBuild(id);
        turnTo('airframe');
      }}
    >
      <span className="balloon" aria-hidden="true">
        {letter}
      </span>
      <span>{name}</span>
    </button>
  );
}

function Plan({
  candidate: { aircraft, reasons },
  pen,
}: {
  readonly candidate: Candidate;
  readonly pen: number;
}) {
  const drawing = useMemo(
    () => (aircraft && pen > 0 ? planDrawing(aircraft, { pen, detail: 'small' }) : undefined),
    [aircraft, pen],
  );
  if (reasons.length > 0) return <p className="no-drawing">{reasons[0]}</p>;
  return drawing ? <DrawingView drawing={drawing} pen={pen} /> : <p className="no-drawing">drawing</p>;
}

const GRAVITY: readonly Severity[] = ['stop', 'risk', 'note'];

/** Counts by severity, and the gravest said in full. */
function Gravest({ findings }: { readonly findings: readonly Finding[] }) {
  const gravest = GRAVITY.flatMap((severity) => findings.filter((finding) => finding.severity === severity));
  return (
    <div className="gravest">
      <p className="tally">
        {GRAVITY.map((severity) => {
          const count = findings.filter((finding) => finding.severity === severity).length;
          return count > 0 ? (
            <span key={severity}>
              {count} <SeverityMark severity={severity} />
            </span>
          ) : null;
        })}
      </p>
      {gravest[0] && gravest[0].severity !== 'note' && <p>{gravest[0].says}</p>}
    </div>
  );
}

/** One scale for all: the largest machine fills its column. */
function penFor(candidates: readonly Candidate[], column: number): number {
  const widths = candidates.flatMap(({ aircraft }) => (aircraft ? [planExtent(aircraft).width] : []));
  return widths.length === 0 || column <= 0 ? 0 : Math.max(...widths) / (column - 8);
}
