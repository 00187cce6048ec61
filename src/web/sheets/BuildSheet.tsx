import { useMemo } from 'react';
import type { Manner } from '../../report/sayFigure.ts';
import { CrashLog } from '../crashes/LaterCrashLog.tsx';
import { FlyIt } from '../flown/LaterFlyIt.tsx';
import { FigureRows } from '../parts/FigureRows.tsx';
import { Schedule } from '../schedule/Schedule.tsx';
import { AirframeRound, HitRound, ModeRound } from '../solid/LaterRound.tsx';
import { MarginNotes } from '../stage/MarginNotes.tsx';
import { Stage } from '../stage/Stage.tsx';
import { useAnswers } from '../state/answers.ts';
import { useDesk } from '../state/desk.ts';
import { useWords } from '../state/manner.ts';
import type { BuildSheetName } from '../state/place.ts';
import { FigureBoard } from '../subjects/FigureBoard.tsx';
import { figuresOf } from '../subjects/figuresOf.ts';
import { HitTable } from '../subjects/HitTable.tsx';
import { useTrial } from '../trial/trial.ts';
import type { BuildView } from '../worker/protocol.ts';
import { Bill } from './Bill.tsx';
import { Checked } from './Checked.tsx';
import { chartOf } from './charts.ts';
import { labelled } from './motorLabels.ts';

interface Props {
  readonly sheet: BuildSheetName;
  readonly manner: Manner;
  readonly onScale: (pen: number) => void;
}

const NONE: Record<Props['sheet'], string> = {
  airframe: 'Nothing to note on gaps and layout. Balance is among the rules on the fit sheet.',
  lift: 'Nothing to note on lift.',
  heat: 'Nothing to note on heat: no winding or lead gets too hot. Ratings are on the fit sheet.',
  flight: 'Nothing to note on flying time and speed.',
  wind: 'Nothing to note on wind: it holds what the brief expects.',
  picture: 'Nothing to note on the picture: nothing of the aircraft is in the way.',
  shake: 'Nothing to note on shake: no mode is met where it is flown.',
  knocks: 'Nothing to note on knocks.',
  money: 'Nothing to note on money: it stays inside the budget.',
  fit: 'Nothing to note: the parts fit together by every rule looked at.',
};

/** More figures than this would run on far below the drawings: they stand in columns under them. */
const MARGIN_HOLDS = 14;

/** One subject of one build: the drawing, what is to be noted of it, its figures, and the parts to change. */
export function BuildSheet(props: Props) {
  const open = useDesk((desk) => desk.open);
  const build = useDesk((desk) => desk.builds[desk.open]);
  const view = useAnswers((answers) => answers.views[open]);
  if (build === undefined || view === undefined) return <p className="waiting">Laying out the sheet.</p>;
  return (
    <>
      <h2 className="unseen">
        {build.name}: {props.sheet}
      </h2>
      {view.ok ? <Subject {...props} view={view} /> : <Unanswered reasons={view.reasons} />}
      <Schedule build={build} aircraft={view.ok ? view.picture : undefined} />
    </>
  );
}

function Subject({
  sheet,
  manner,
  onScale,
  view,
}: Props & { readonly view: Extract<BuildView, { ok: true }> }) {
  const brief = useDesk((desk) => desk.brief);
  const { assessment, curves } = view;
  const open = useDesk((desk) => desk.open);
  const build = useDesk((desk) => desk.builds[desk.open]);
  const behind = useAnswers((answers) => (answers.behind[open]?.length ?? 0) > 0);
  const trial = useTrial((state) => state.trial);
  // What is being tried is drawn, so that it is seen before it is kept.
  const tried =
    trial?.stage.at === 'shown' && trial.base === build && trial.stage.view.ok ? trial.stage.view : view;
  const shownBuild = trial?.stage.at === 'shown' ? trial.stage.build : undefined;
  const { picture } = tried;
  const aircraft = useMemo(
    () => labelled(picture, tried.assessment.stations, tried.assessment.measures, sheet, manner),
    [picture, tried, sheet, manner],
  );
  const findings = useMemo(
    () => assessment.findings.filter((finding) => finding.sheet === sheet),
    [assessment, sheet],
  );
  const chart = useMemo(
    () => curves && brief && chartOf(sheet, curves, assessment.measures, brief),
    [sheet, curves, assessment, brief],
  );
  const here = assessment.measures.filter((measure) => measure.sheet === sheet);
  const figures = <FigureRows measures={here} manner={manner} />;
  const many = here.length > MARGIN_HOLDS;
  const across = many && <div className="many">{figures}</div>;
  const drawings = useMemo(
    () => brief && figuresOf(sheet, { assessment, picture, brief, manner, ...(curves ? { curves } : {}) }),
    [sheet, assessment, picture, brief, manner, curves],
  );
  const movable = useMemo(
    () =>
      build && tried === view ? { build, layout: view.layout, stations: assessment.stations } : undefined,
    [build, tried, view, assessment],
  );
  const log = build && brief && (sheet === 'knocks' || sheet === 'money') && (
    <CrashLog
      key={open}
      id={open}
      build={build}
      brief={brief}
      manner={manner}
      parts={assessment.data?.knocks?.parts.map(({ id }) => id) ?? []}
    />
  );
  if (drawings !== undefined) {
    const hits = sheet === 'knocks' ? assessment.data?.hits : undefined;
    const modes = assessment.data?.shake?.modes;
    return (
      <FigureBoard
        figures={drawings}
        findings={findings}
        none={NONE[sheet]}
        margin={many ? null : figures}
        first={
          build && sheet === 'shake' && modes ? (
            <ModeRound build={build} modes={modes} />
          ) : build && hits ? (
            <HitRound build={build} hits={hits} manner={manner} />
          ) : undefined
        }
        stale={behind}
        onScale={onScale}
        under={
          build && brief && (sheet === 'flight' || sheet === 'wind') ? (
            <FlyIt build={build} brief={brief} sheet={sheet} manner={manner} />
          ) : (
            <>
              {hits && <HitTable hits={hits} manner={manner} />}
              {log}
            </>
          )
        }
        across={across}
      />
    );
  }
  if (sheet === 'money') {
    return (
      <div className="stage">
        <div className="bill-and-log">
          <Bill money={assessment.money} manner={manner} />
          {log}
        </div>
        <aside className="margin" aria-label="Notes">
          <MarginNotes
            notes={findings.map((finding, i) => ({ key: `${finding.id} ${i}`, finding }))}
            none={NONE.money}
          />
          {figures}
        </aside>
      </div>
    );
  }
  return (
    <Stage
      aircraft={aircraft}
      findings={findings}
      none={NONE[sheet]}
      onScale={onScale}
      margin={many ? null : figures}
      across={across}
      {...(sheet === 'airframe' && build
        ? {
            round: (width: number, height: number) => (
              <AirframeRound
                build={tried === view ? build : (shownBuild ?? build)}
                manner={manner}
                width={width}
                height={height}
                onScale={onScale}
                {...(assessment.data?.hits ? { hits: assessment.data.hits } : {})}
              />
            ),
          }
        : {})}
      under={sheet === 'fit' ? <Checked fit={assessment.fit} /> : undefined}
      {...(movable ? { movable } : {})}
      {...(chart ? { chart } : {})}
    />
  );
}

/** Said in the drawing's place when a build as changed can't be computed; undo and the schedule stay at hand. */
function Unanswered({ reasons }: { readonly reasons: readonly string[] }) {
  const words = useWords();
  return (
    <div className="unanswered" role="alert">
      <p>This build can't be worked out as it stands:</p>
      <ul>
        {reasons.map((reason) => (
          <li key={reason}>{words(reason)}</li>
        ))}
      </ul>
      <p>Change a part below, or undo.</p>
    </div>
  );
}
