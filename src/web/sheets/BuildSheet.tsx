import { useMemo } from 'react';
import type { Sheet } from '../../assess/types.ts';
import type { Manner } from '../../report/sayFigure.ts';
import { FigureRows } from '../parts/FigureRows.tsx';
import { Schedule } from '../schedule/Schedule.tsx';
import { Stage } from '../stage/Stage.tsx';
import { useAnswers } from '../state/answers.ts';
import { useDesk } from '../state/desk.ts';
import type { SheetName } from '../state/place.ts';

interface Props {
  readonly sheet: Exclude<SheetName, 'choice'>;
  readonly manner: Manner;
  readonly onScale: (pen: number) => void;
}

const NONE: Record<Props['sheet'], string> = {
  airframe: 'Nothing to note on the airframe: gaps, balance and layout are as the trade expects.',
  lift: 'Nothing to note on lift.',
  heat: 'Nothing to note on currents and heat.',
  flight: 'Nothing to note on flying time.',
  money: 'Nothing to note on money.',
  fit: 'Nothing to note: the parts fit together by every rule looked at.',
};

/** One subject of one build: the drawing, what is to be noted of it, its figures, and the parts to change. */
export function BuildSheet({ sheet, manner, onScale }: Props) {
  const open = useDesk((desk) => desk.open);
  const build = useDesk((desk) => desk.builds[desk.open]);
  const view = useAnswers((answers) => answers.views[open]);
  const about = <T extends { readonly sheet: Sheet }>(all: readonly T[]) =>
    all.filter((each) => each.sheet === sheet);
  const findings = useMemo(
    () => (view?.ok === true ? view.findings.filter((finding) => finding.sheet === sheet) : []),
    [view, sheet],
  );
  if (build === undefined || view === undefined) return <p className="waiting">Laying out the sheet.</p>;
  return (
    <>
      <h2 className="unseen">
        {build.name}: {sheet}
      </h2>
      {view.ok ? (
        <Stage
          aircraft={view.picture}
          findings={findings}
          none={NONE[sheet]}
          onScale={onScale}
          margin={<FigureRows measures={about(view.measures)} manner={manner} />}
        />
      ) : (
        <Unanswered reasons={view.reasons} />
      )}
      <Schedule build={build} aircraft={view.ok ? view.picture : undefined} />
    </>
  );
}

/** Said in the drawing's place when a build as changed can't be computed; undo and the schedule stay at hand. */
function Unanswered({ reasons }: { readonly reasons: readonly string[] }) {
  return (
    <div className="unanswered" role="alert">
      <p>This build can't be worked out as it stands:</p>
      <ul>
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      <p>Change a part below, or undo.</p>
    </div>
  );
}
