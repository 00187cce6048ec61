import { useLayoutEffect, useMemo } from 'react';
import { compare } from '../../choose/compare.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { useSize } from '../parts/useSize.ts';
import { useAnswers } from '../state/answers.ts';
import { useDesk } from '../state/desk.ts';
import { ChoiceList } from './ChoiceList.tsx';
import { ChoiceTable } from './ChoiceTable.tsx';
import { candidatesOf, penFor } from './candidates.ts';
import { flips } from './flips.ts';
import { Verdict } from './Verdict.tsx';
import { Weights } from './Weights.tsx';

interface Props {
  readonly manner: Manner;
  readonly onScale: (pen: number) => void;
}

const NARROW = 900;
const LABELS = 150;
/** What a column loses to padding and the drawing's own margin [px]. */
const LOST = 26;

/** Every candidate side by side at one scale, under the five questions a newcomer asks. */
export function ChoiceSheet({ manner, onScale }: Props) {
  const [ref, { width }] = useSize<HTMLDivElement>();
  const builds = useDesk((desk) => desk.builds);
  const wants = useDesk((desk) => desk.wants);
  const views = useAnswers((answers) => answers.views);

  const assessments = useMemo(() => {
    const all = Object.keys(builds).flatMap((id) => {
      const view = views[id];
      return view?.ok === true ? [view.assessment] : [];
    });
    // Until every one is worked out there is no order to speak of.
    return all.length === Object.keys(builds).length && all.length >= 2 ? all : undefined;
  }, [builds, views]);
  const comparison = useMemo(() => assessments && compare(assessments, wants), [assessments, wants]);
  const turning = useMemo(() => (assessments ? flips(assessments, wants) : []), [assessments, wants]);
  const candidates = useMemo(() => candidatesOf(builds, views, comparison), [builds, views, comparison]);

  const narrow = width < NARROW;
  const column = narrow ? Math.min(width * 0.44, 250) : (width - LABELS) / Math.max(candidates.length, 1);
  const pen = penFor(candidates, column - LOST);
  useLayoutEffect(() => onScale(pen), [pen, onScale]);
  const label = (measure: string) => comparison?.rows.find((row) => row.id === measure)?.label ?? measure;
  const laid = { candidates, comparison, pen, manner };
  return (
    <>
      <div className="choice">
        <h2 className="choice-title">Which one first?</h2>
        {comparison ? (
          <Verdict
            candidates={candidates}
            comparison={comparison}
            turning={turning}
            wants={wants}
            manner={manner}
          />
        ) : (
          <p className="verdict-waiting">Working the candidates out.</p>
        )}
        {/* Measured apart from the sheet's padding, so that columns and drawings agree. */}
        <div ref={ref}>{width > 0 && (narrow ? <ChoiceList {...laid} /> : <ChoiceTable {...laid} />)}</div>
      </div>
      <h3 className="weights-title">What counts, and how much</h3>
      <Weights wants={wants} label={label} />
    </>
  );
}
