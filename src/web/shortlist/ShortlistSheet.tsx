import { useEffect } from 'react';
import type { Manner } from '../../report/sayFigure.ts';
import { measureName } from '../choice/measureName.ts';
import { useAnswers } from '../state/answers.ts';
import { useDesk } from '../state/desk.ts';
import { findUnfinished, startSearch, useSearch } from '../state/search.ts';
import { AskForm } from './AskForm.tsx';
import { useAsk } from './ask.ts';
import { Found } from './Found.tsx';
import { SearchBar } from './SearchBar.tsx';
import { TuneIt } from './TuneIt.tsx';

/** From a brief to a shortlist that can be defended: the shelf searched, exactly, and the answer explained. */
export default function ShortlistSheet({ manner }: { readonly manner: Manner }) {
  const brief = useDesk((desk) => desk.brief);
  const builds = useDesk((desk) => desk.builds);
  const open = useDesk((desk) => desk.open);
  const wants = useDesk((desk) => desk.wants);
  const view = useAnswers((answers) => answers.views[open]);
  const { is, report, trouble } = useSearch();
  const ask = useAsk();
  useEffect(() => void findUnfinished(), []);
  if (brief === undefined) return <p className="waiting">Laying out the sheet.</p>;
  const measures = view?.ok ? view.assessment.measures : [];
  const label = (measure: string) => measures.find(({ id }) => id === measure)?.label ?? measureName(measure);
  const template = (ask.template === undefined ? undefined : builds[ask.template]) ?? builds[open];
  const running = is === 'running' || is === 'stopping';
  const ready = template !== undefined && ask.seats.length > 0 && wants.some(({ weight }) => weight > 0);
  return (
    <div className="shortlist-sheet">
      <h2>Which of all that the shelf can make?</h2>
      <AskForm brief={brief} manner={manner} label={label} disabled={running} />
      <SearchBar
        ready={ready}
        onStart={() => {
          if (template === undefined) return;
          void startSearch({
            template,
            brief,
            wants,
            seats: ask.seats,
            limits: ask.limits,
            front: ask.front,
            relax: ask.relax,
          });
        }}
      />
      {!ready && <p className="fault">Tick at least one seat, and give something a weight.</p>}
      {trouble !== undefined && (
        <p className="trouble" role="alert">
          The search could not be done: {trouble}.
        </p>
      )}
      {report !== undefined && <Found report={report} manner={manner} label={label} />}
      {template !== undefined && <TuneIt build={template} brief={brief} />}
    </div>
  );
}
