import { memo } from 'react';
import { FigureCell } from '../parts/FigureRows.tsx';
import { How } from '../parts/How.tsx';
import { useWords } from '../state/manner.ts';
import { Gravest, Name, Plan } from './CandidateParts.tsx';
import type { Laid } from './ChoiceTable.tsx';
import { QUESTIONS } from './questions.ts';

/** The same on a narrow sheet: one candidate under the other, the leader first, the first measure of each question. */
export const ChoiceList = memo(function ChoiceList({ candidates, pen, manner }: Laid) {
  const words = useWords();
  const ranked = candidates.toSorted((a, b) => (a.rank ?? 0) - (b.rank ?? 0));
  return (
    <div className="choice-list">
      {ranked.map((candidate) => (
        <article key={candidate.id} className="choice-entry">
          <h3>
            <Name candidate={candidate} />
          </h3>
          <Plan candidate={candidate} pen={pen} />
          <ul className="choice-figures">
            {QUESTIONS.flatMap(({ brief }) => brief).map((id) => {
              const measure = candidate.measures.find((each) => each.id === id);
              if (measure === undefined) return null;
              return (
                <li key={id}>
                  <How measure={measure} manner={manner} className="choice-line">
                    <span>{words(measure.label)}</span>
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
});
