import { memo } from 'react';
import type { Assessment } from '../../assess/assessment.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { useWords } from '../state/manner.ts';
import { fiveAnswers } from './fiveAnswers.ts';

interface Props {
  readonly assessment: Assessment;
  readonly brief: Brief;
  readonly manner: Manner;
}

/** What a newcomer asks first, answered in words for one build. */
export const FiveAnswers = memo(function FiveAnswers({ assessment, brief, manner }: Props) {
  const words = useWords();
  return (
    <ol className="five" aria-label={`A newcomer's questions, answered for ${assessment.build}`}>
      {fiveAnswers(assessment, brief, manner).map(({ asks, short, says, tone }) => (
        <li key={asks} className={`answer ${tone}`}>
          <h3>{asks}</h3>
          <p className="answer-short">{short}</p>
          {says.map((line) => (
            <p key={line}>{words(line)}</p>
          ))}
        </li>
      ))}
    </ol>
  );
});
