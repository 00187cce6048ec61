import { useCallback, useEffect, useLayoutEffect, useMemo } from 'react';
import { compare } from '../../choose/compare.ts';
import { rankStability } from '../../choose/rankStability.ts';
import { usualSoftWants } from '../../choose/shortlist/usualScales.ts';
import { candidateOf } from '../../choose/standing.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { openLesson } from '../lessons/lessonState.ts';
import { useSize } from '../parts/useSize.ts';
import { useAnswers } from '../state/answers.ts';
import { MOST_COMPARED, useDesk } from '../state/desk.ts';
import { askDraws, drawnOf, useDrawing } from '../state/drawing.ts';
import { turnTo } from '../state/place.ts';
import { startTour } from '../tour/tour.ts';
import { ChoiceList } from './ChoiceList.tsx';
import { ChoiceTable } from './ChoiceTable.tsx';
import { candidatesOf, penFor } from './candidates.ts';
import { FiveAnswers } from './FiveAnswers.tsx';
import { flips } from './flips.ts';
import { measureName } from './measureName.ts';
import { Verdict } from './Verdict.tsx';
import { Weights } from './Weights.tsx';

interface Props {
  readonly manner: Manner;
  readonly onScale: (pen: number) => void;
}

/** As in `index.html`, which shows them before the script is there. */
const FIRST_WORDS =
  'Settle a small multirotor before money is spent. Every candidate on the desk is being worked out in your browser: what it lifts, how long and in how much wind it flies, what fits, what shakes, what breaks and what it costs. Nothing is sent anywhere.';

const NARROW = 900;
const LABELS = 150;
/** What a column loses to padding and the drawing's own margin [px]. */
const LOST = 26;

/** Every candidate side by side at one scale, under the five questions a newcomer asks. */
export function ChoiceSheet({ manner, onScale }: Props) {
  const [ref, { width }] = useSize<HTMLDivElement>();
  const all = useDesk((desk) => desk.builds);
  const aside = useDesk((desk) => desk.aside);
  const wants = useDesk((desk) => desk.wants);
  const brief = useDesk((desk) => desk.brief);
  const open = useDesk((desk) => desk.open);
  const full = useAnswers((answers) => answers.views);
  const quick = useAnswers((answers) => answers.quick);
  const parts = useAnswers((answers) => answers.parts);
  const partCount = useAnswers((answers) => answers.partCount);
  const builds = useMemo(
    () =>
      Object.fromEntries(
        Object.entries(all)
          .filter(([id]) => !aside.includes(id))
          .slice(0, MOST_COMPARED),
      ),
    [all, aside],
  );

  // An order of builds of which some are told more than others would be none: the quick answers stand until
  // every build has had its full assessment once.
  const worked = workedShare(Object.keys(builds), parts, partCount);
  const complete = worked === 1;
  const views = complete ? full : quick;

  const assessments = useMemo(() => {
    const answered = Object.keys(builds).flatMap((id) => {
      const view = views[id];
      return view?.ok === true ? [view.assessment] : [];
    });
    // Until every one is worked out there is no order to speak of.
    return answered.length > 0 && answered.length === Object.keys(builds).length ? answered : undefined;
  }, [builds, views]);
  const several = assessments !== undefined && assessments.length >= 2 ? assessments : undefined;
  const scaled = useMemo(() => (brief ? usualSoftWants(brief, wants) : []), [brief, wants]);
  const comparison = useMemo(() => several && compare(several, scaled), [several, scaled]);
  const turning = useMemo(() => (several ? flips(several.map(candidateOf), scaled) : []), [several, scaled]);
  // Drawn once the full answers are there: the workers have other things to do before.
  const compared = useMemo(() => Object.values(builds), [builds]);
  const drawable = complete && several !== undefined && brief !== undefined;
  useEffect(() => {
    if (drawable) askDraws({ builds: compared, brief });
  }, [drawable, compared, brief]);
  const drawing = useDrawing();
  const drawn = drawable ? drawnOf(drawing, { builds: compared, brief }) : undefined;
  const stability = useMemo(() => drawn && rankStability(drawn, scaled), [drawn, scaled]);
  const candidates = useMemo(() => candidatesOf(builds, views, comparison), [builds, views, comparison]);
  const only = full[open];
  const first = comparison?.order[0];
  // The one that leads is worked out first: what it is asked needs not wait for the others.
  const leader = first === undefined ? undefined : Object.keys(builds)[first];
  const whole =
    leader !== undefined && workedShare([leader], parts, partCount) === 1 ? full[leader] : undefined;
  const leading = comparison
    ? whole?.ok
      ? whole.assessment
      : assessments?.[first ?? 0]
    : only?.ok
      ? only.assessment
      : undefined;

  const narrow = width < NARROW;
  const column = narrow ? Math.min(width * 0.44, 250) : (width - LABELS) / Math.max(candidates.length, 1);
  const pen = penFor(candidates, column - LOST);
  useLayoutEffect(() => {
    if (pen > 0) onScale(pen);
  }, [pen, onScale]);
  const label = useCallback(
    (measure: string) => comparison?.rows.find((row) => row.id === measure)?.label ?? measureName(measure),
    [comparison],
  );
  const laid = { candidates, comparison, pen, manner };
  return (
    <>
      <div className="choice">
        <div className="choice-head">
          <h2 className="choice-title">Which one first?</h2>
          <button type="button" className="plain-button small" onClick={startTour}>
            new here? show me round
          </button>
          <button type="button" className="plain-button small" onClick={() => openLesson()}>
            why do they differ? one cause at a time
          </button>
          <button type="button" className="plain-button small" onClick={() => turnTo('brief')}>
            these answers are for {brief?.name ?? 'the demo'}: ask for yourself
          </button>
        </div>
        {comparison ? (
          <Verdict
            candidates={candidates}
            comparison={comparison}
            turning={turning}
            stability={stability}
            worked={worked}
            share={drawing.is === 'drawing' ? drawing.share : undefined}
            manner={manner}
          />
        ) : (
          <p className={assessments === undefined ? 'first-words' : 'verdict-waiting'}>
            {assessments === undefined
              ? FIRST_WORDS
              : 'With two or more builds compared, this says which leads and why. Copy one or add one at the desk.'}
          </p>
        )}
        {leading && brief && <FiveAnswers assessment={leading} brief={brief} manner={manner} />}
        {/* Measured apart from the sheet's padding, so that columns and drawings agree. */}
        <div ref={ref}>{width > 0 && (narrow ? <ChoiceList {...laid} /> : <ChoiceTable {...laid} />)}</div>
      </div>
      <h3 className="weights-title">What counts, and how much</h3>
      <Weights wants={scaled} label={label} manner={manner} />
    </>
  );
}

/** How much of the full assessments of some builds is in, 0 to 1. */
function workedShare(
  ids: readonly string[],
  parts: Readonly<Record<string, Readonly<Record<string, unknown>>>>,
  partCount: number,
): number {
  const all = ids.length * partCount;
  const done = ids.reduce((sum, id) => sum + Object.keys(parts[id] ?? {}).length, 0);
  return all === 0 ? 0 : done / all;
}
