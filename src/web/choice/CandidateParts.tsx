import { useMemo } from 'react';
import type { Finding } from '../../assess/types.ts';
import { planDrawing } from '../../report/planDrawing.ts';
import { DrawingView } from '../parts/DrawingView.tsx';
import { SeverityMark } from '../parts/SeverityMark.tsx';
import { openBuild } from '../state/desk.ts';
import { useWords } from '../state/manner.ts';
import { turnTo } from '../state/place.ts';
import { type Candidate, GRAVITY } from './candidates.ts';

/** A candidate's letter, name and place in the order; opens its sheets. */
export function Name({ candidate: { id, letter, name, rank } }: { readonly candidate: Candidate }) {
  return (
    <>
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
      <span className="rank">{rank === undefined ? '' : rank === 1 ? 'leads' : `place ${rank}`}</span>
    </>
  );
}

export function Plan({
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
  return drawing ? <DrawingView drawing={drawing} pen={pen} /> : <p className="no-drawing">being drawn</p>;
}

/** Best of its row: a full diamond when the bands are clear of the next, an open one when they are not. */
export function BestMark({ clear }: { readonly clear: boolean }) {
  return (
    <span className={clear ? 'best clear' : 'best'}>
      <svg viewBox="0 0 10 10" width="9" height="9" aria-hidden="true">
        <path d="M5 0.8 9.2 5 5 9.2 0.8 5Z" />
      </svg>
      best
      <span className="unseen">{clear ? ', clear of the bands' : ', inside the bands'}</span>
    </span>
  );
}

/** Counts by severity, and the gravest said in full. */
export function Gravest({ findings }: { readonly findings: readonly Finding[] }) {
  const words = useWords();
  const gravest = findings.find((finding) => finding.severity !== 'note');
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
      {gravest && <p>{words(gravest.says)}</p>}
    </div>
  );
}
