import { useMemo } from 'react';
import type { Finding } from '../../assess/types.ts';
import { useAnswers } from '../state/answers.ts';
import { useDesk } from '../state/desk.ts';
import { useManner, useWords } from '../state/manner.ts';
import { DifferenceList } from './DifferenceList.tsx';
import { differencesOf } from './differences.ts';
import { remediesOf } from './remedies.ts';
import { dropTrial, keepTrial, tryRemedy, useTrial } from './trial.ts';

/** Below a finding: remedies to try, and what the one being tried would change. */
export function TryIt({ finding }: { readonly finding: Finding }) {
  const words = useWords();
  const open = useDesk((desk) => desk.open);
  const build = useDesk((desk) => desk.builds[desk.open]);
  const view = useAnswers((answers) => answers.views[open]);
  const shelf = useAnswers((answers) => answers.shelf);
  const trial = useTrial((state) => state.trial);
  const remedies = useMemo(
    () => (build && view?.ok ? remediesOf(finding, build, view, shelf) : []),
    [finding, build, view, shelf],
  );
  if (remedies.length === 0) return null;
  const mine = trial?.finding === finding.id && trial.base === build ? trial : undefined;
  return (
    <div className="try">
      <div className="try-buttons">
        {remedies.slice(0, 5).map((remedy) => (
          <button
            key={remedy.says}
            type="button"
            className="try-button"
            aria-pressed={mine?.says === remedy.says}
            onClick={() => void tryRemedy(finding.id, remedy)}
          >
            <span className="unseen">try it: </span>
            {words(remedy.says)}
          </button>
        ))}
      </div>
      <div aria-live="polite">
        {mine?.stage.at === 'searching' && (
          <p className="try-stage">
            {mine.stage.of > 1 ? `trying ${mine.stage.tried} of ${mine.stage.of}` : 'trying it'}{' '}
            <button type="button" className="plain-button small" onClick={dropTrial}>
              stop
            </button>
          </p>
        )}
        {mine?.stage.at === 'nothing' && <p className="try-stage">{words(mine.stage.says)}</p>}
        {mine?.stage.at === 'shown' && <Shown />}
      </div>
    </div>
  );
}

function Shown() {
  const words = useWords();
  const open = useDesk((desk) => desk.open);
  const now = useAnswers((answers) => answers.quick[open]);
  const stage = useTrial((state) => state.trial?.stage);
  const says = useTrial((state) => state.trial?.says);
  const manner = useManner();
  const swap = useSwap();
  if (stage?.at !== 'shown' || now?.ok !== true) return null;
  if (!stage.view.ok)
    return <p className="try-stage">It does not go together: {words(stage.view.reasons[0] ?? '')}</p>;
  return (
    <div className="try-shown">
      <p className="try-title">{words(swap ?? says ?? '')}: what it would change</p>
      <DifferenceList differences={differencesOf(now.assessment, stage.view.assessment)} manner={manner} />
      <div className="try-buttons">
        <button type="button" className="try-button keep" onClick={keepTrial}>
          keep it
        </button>
        <button type="button" className="plain-button" onClick={dropTrial}>
          leave it
        </button>
      </div>
    </div>
  );
}

/** Of a search: which part it would put in. */
function useSwap(): string | undefined {
  const trial = useTrial((state) => state.trial);
  const shelf = useAnswers((answers) => answers.shelf);
  if (trial?.stage.at !== 'shown') return undefined;
  const { base, stage } = trial;
  const ids = (build: object): string => JSON.stringify(build);
  const [was, will] = [ids(base), ids(stage.build)];
  const fresh = shelf.find(({ id }) => will.includes(`"${id}"`) && !was.includes(`"${id}"`));
  return fresh?.name;
}
