import { useEffect, useMemo } from 'react';
import type { Build } from '../../build/schema/build.ts';
import { planDrawing, planExtent } from '../../report/planDrawing.ts';
import { DrawingView } from '../parts/DrawingView.tsx';
import { spacingOf } from '../schedule/layouts.ts';
import { slotsOf } from '../schedule/slots.ts';
import { useAnswers } from '../state/answers.ts';
import { addBuild, useDesk } from '../state/desk.ts';
import { useManner } from '../state/manner.ts';
import { DifferenceList } from '../trial/DifferenceList.tsx';
import { differencesOf } from '../trial/differences.ts';
import type { BuildView } from '../worker/protocol.ts';
import { CauseTable } from './CauseTable.tsx';
import { singleChanges, stepsBetween } from './lesson.ts';
import { closeLesson, type SeenStep, useLesson, workOut } from './lessonState.ts';
import { CAUSE_WORDS, WHY } from './why.ts';

/** Width of one picture [px]. */
const PICTURE = 250;

export function LessonView() {
  const { from, against, steps, of, at } = useLesson();
  const builds = useDesk((desk) => desk.builds);
  const came = useDesk((desk) => desk.came);
  const view = useAnswers((answers) => answers.quick[from]);
  const otherView = useAnswers((answers) => answers.quick[against]);
  const manner = useManner();
  const base = builds[from];
  const singles = useMemo(() => {
    if (base === undefined || view?.ok !== true) return [];
    const mass = view.assessment.measures.find(({ id }) => id === 'all-up-mass')?.value;
    return mass === undefined ? [] : singleChanges(base, mass, spacingOf(view.picture));
  }, [base, view]);
  const [first, aim] = [came[from], builds[against]];
  const changed = base !== first;

  useEffect(() => {
    const single = singles.find(({ id }) => id === against);
    if (single) void workOut([single.step]);
    else if (base !== undefined && view?.ok) {
      const [other, seen] = against === 'came' ? [first, view] : [aim, otherView];
      if (other && seen?.ok) {
        const layouts = [view.layout, other.frame.layout ?? seen.layout] as const;
        void workOut(stepsBetween(base, other, layouts));
      }
    }
  }, [against, base, first, aim, otherView, singles, view]);

  const step = steps[at];
  const others = Object.entries(builds).filter(([id]) => id !== from);
  return (
    <div className="lesson">
      <div className="lesson-pick">
        <label>
          from
          <select
            className="text-field"
            value={from}
            onChange={(event) => {
              const next = event.target.value;
              useLesson.setState({ from: next, ...(against === next ? { against: from } : {}) });
            }}
          >
            {Object.entries(builds).map(([id, { name }]) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          to
          <select
            className="text-field"
            value={against}
            onChange={(event) => useLesson.setState({ against: event.target.value })}
          >
            <optgroup label="another build">
              {changed && <option value="came">the same as it came</option>}
              {others.map(([id, { name }]) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </optgroup>
            <optgroup label="one change">
              {singles.map(({ id, says }) => (
                <option key={id} value={id}>
                  {says}
                </option>
              ))}
            </optgroup>
          </select>
        </label>
      </div>
      {steps.length < of && (
        <p className="try-stage" role="status">
          working out {steps.length + 1} of {of}{' '}
          <button type="button" className="plain-button small" onClick={closeLesson}>
            stop
          </button>
        </p>
      )}
      {of === 0 && <p className="own-note">These two do not differ in anything that is flown.</p>}
      {of > 0 && (
        <ol className="lesson-steps">
          {steps.map(({ cause, build }, i) => (
            <li key={cause}>
              <button
                type="button"
                className="sort"
                aria-pressed={i === at}
                onClick={() => useLesson.setState({ at: i })}
              >
                {CAUSE_WORDS[cause]}
                <small>{partsWords(i === 0 ? base : steps[i - 1]?.build, build)}</small>
              </button>
            </li>
          ))}
        </ol>
      )}
      {step && <OneStep step={step} number={at + 1} of={of} />}
      {step && (
        <div className="try-buttons">
          <button
            type="button"
            className="try-button"
            disabled={at === 0}
            onClick={() => useLesson.setState({ at: at - 1 })}
          >
            the cause before
          </button>
          <button
            type="button"
            className="try-button"
            disabled={at >= steps.length - 1}
            onClick={() => useLesson.setState({ at: at + 1 })}
          >
            the next cause
          </button>
          <button
            type="button"
            className="plain-button"
            onClick={() => {
              addBuild({
                ...step.build,
                name: `${base?.name ?? ''}, ${CAUSE_WORDS[step.cause]}`.slice(0, 200),
              });
              closeLesson();
            }}
          >
            lay this step on the desk
          </button>
        </div>
      )}
      {steps.length > 1 && steps.length === of && <CauseTable steps={steps} manner={manner} />}
    </div>
  );
}

/** Before and after one change, at one scale, with what it moves and why. */
function OneStep({
  step,
  number,
  of,
}: {
  readonly step: SeenStep;
  readonly number: number;
  readonly of: number;
}) {
  const manner = useManner();
  const { cause, before, after } = step;
  const pen = penOf([before, after]);
  return (
    <section className="lesson-step" aria-label={`cause ${number} of ${of}: ${CAUSE_WORDS[cause]}`}>
      <Picture view={before} pen={pen} says="before" />
      <Picture view={after} pen={pen} says={`after: ${CAUSE_WORDS[cause]}`} />
      <div className="try-shown">
        <p className="try-title">
          Cause {number} of {of}: {CAUSE_WORDS[cause]}
        </p>
        <p>{WHY[cause]}</p>
        {before.ok && after.ok ? (
          <DifferenceList differences={differencesOf(before.assessment, after.assessment)} manner={manner} />
        ) : (
          <p>
            This step does not go together by itself:{' '}
            {[before, after].flatMap((each) => (each.ok ? [] : each.reasons))[0]}
          </p>
        )}
      </div>
    </section>
  );
}

function Picture({
  view,
  pen,
  says,
}: {
  readonly view: BuildView;
  readonly pen: number;
  readonly says: string;
}) {
  const drawing = useMemo(
    () => (view.ok && pen > 0 ? planDrawing(view.picture, { pen, detail: 'small' }) : undefined),
    [view, pen],
  );
  return (
    <figure className="lesson-picture">
      {drawing && <DrawingView drawing={drawing} pen={pen} />}
      <figcaption>{says}</figcaption>
    </figure>
  );
}

const penOf = (views: readonly BuildView[]): number =>
  Math.max(0, ...views.map((view) => (view.ok ? planExtent(view.picture).width / PICTURE : 0)));

/** Which part gives way to which. */
function partsWords(before: Build | undefined, after: Build): string {
  if (before === undefined) return '';
  const { shelf } = useAnswers.getState();
  const name = (id: string | undefined) => shelf.find((row) => row.id === id)?.name ?? id ?? 'none';
  const was = slotsOf(before);
  const pairs = slotsOf(after).flatMap(({ key, part }) => {
    const old = was.find((slot) => slot.key === key)?.part;
    return old === part ? [] : [`${name(old)} to ${name(part)}`];
  });
  return pairs.slice(0, 2).join('; ');
}
