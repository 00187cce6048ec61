import { memo } from 'react';
import type { Comparison } from '../../choose/compare.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { FigureCell, windowWords } from '../parts/FigureRows.tsx';
import { How } from '../parts/How.tsx';
import { spanOf, WindowRule } from '../parts/WindowRule.tsx';
import { useWords } from '../state/manner.ts';
import { BestMark, Gravest, Name, Plan } from './CandidateParts.tsx';
import type { Candidate } from './candidates.ts';
import { QUESTIONS } from './questions.ts';

export interface Laid {
  readonly candidates: readonly Candidate[];
  readonly comparison: Comparison | undefined;
  readonly pen: number;
  readonly manner: Manner;
}

/**
 * Candidates in columns, measures in rows, every row on a scale of its own that all columns share. It stands still while
 * parts of full assessments come in one by one.
 */
export const ChoiceTable = memo(function ChoiceTable({ candidates, comparison, pen, manner }: Laid) {
  const across = candidates.length + 1;
  return (
    <table className="choice-table">
      <thead>
        <tr className="choice-drawings">
          <td className="choice-scale">
            all to one scale, nose up
            <br />
            <BestMark clear={true} /> clear of the bands
            <br />
            <BestMark clear={false} /> inside the bands
          </td>
          {candidates.map((candidate) => (
            <td key={candidate.id} className={columnClass(candidate)}>
              <Plan candidate={candidate} pen={pen} />
            </td>
          ))}
        </tr>
        <tr>
          <td />
          {candidates.map((candidate) => (
            <th key={candidate.id} scope="col" className={columnClass(candidate)}>
              <Name candidate={candidate} />
            </th>
          ))}
        </tr>
      </thead>
      {QUESTIONS.map(({ asks, ids }) => (
        <tbody key={asks}>
          <Question asks={asks} across={across} />
          {ids.map((id) => (
            <MeasureRow key={id} id={id} candidates={candidates} comparison={comparison} manner={manner} />
          ))}
        </tbody>
      ))}
      <tbody>
        <Question asks="What is to be noted?" across={across} />
        <tr>
          <th scope="row">gravest first</th>
          {candidates.map((candidate) => (
            <td key={candidate.id} className={columnClass(candidate)}>
              <Gravest findings={candidate.findings} />
            </td>
          ))}
        </tr>
      </tbody>
    </table>
  );
});

const columnClass = ({ rank }: Candidate): string => (rank === 1 ? 'leads' : '');

function Question({ asks, across }: { readonly asks: string; readonly across: number }) {
  return (
    <tr className="question">
      <th scope="rowgroup" colSpan={across}>
        {asks}
      </th>
    </tr>
  );
}

/** Being inside a window is plain from the rule; being outside is said. */
function WindowWords({ words }: { readonly words: string }) {
  return <small className={words.startsWith('inside') ? 'unseen' : 'outside'}>{words}</small>;
}

function MeasureRow({ id, candidates, comparison, manner }: { readonly id: string } & Omit<Laid, 'pen'>) {
  const words = useWords();
  const found = candidates.map(({ measures }) => measures.find((measure) => measure.id === id));
  const known = found.filter((measure) => measure !== undefined);
  const label = known[0]?.label;
  if (label === undefined) return null;
  const span = spanOf(known.filter((measure) => measure.words === undefined));
  const row = comparison?.rows.find((each) => each.id === id);
  return (
    <tr>
      <th scope="row">{words(label)}</th>
      {candidates.map((candidate, i) => {
        const measure = found[i];
        return (
          <td key={candidate.id} className={columnClass(candidate)}>
            {measure && (
              <How measure={measure} manner={manner} className="choice-figure">
                <FigureCell
                  measure={measure}
                  manner={manner}
                  mark={row?.best === i ? <BestMark clear={row.difference === 'clear'} /> : undefined}
                />
                {measure.words === undefined && <WindowRule measure={measure} span={span} width={100} />}
                <WindowWords words={windowWords(measure, manner)} />
              </How>
            )}
          </td>
        );
      })}
    </tr>
  );
}
