import { type ReactNode, useCallback, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Finding } from '../../assess/types.ts';
import type { Build } from '../../build/schema/build.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import type { Chart } from '../../report/chart.ts';
import { PLAN_OVERLAYS, type PlanOverlay, planDrawing } from '../../report/planDrawing.ts';
import type { Drawing } from '../../report/shapes.ts';
import { sideDrawing } from '../../report/sideDrawing.ts';
import { ChartView } from '../parts/ChartView.tsx';
import { DrawingView } from '../parts/DrawingView.tsx';
import { useSize } from '../parts/useSize.ts';
import { useWindowHeight } from '../parts/useWindowHeight.ts';
import { RoundSwitch, roundHeight, useManner3d } from '../solid/RoundSwitch.tsx';
import { useUnits } from '../state/manner.ts';
import { usePicked } from '../state/picked.ts';
import { boardPen, CHART, LEVEL } from './boardPen.ts';
import { Handles } from './Handles.tsx';
import { Leaders } from './Leaders.tsx';
import { MarginNotes } from './MarginNotes.tsx';
import type { Movable } from './moves.ts';
import { drawnAs, pickIn } from './pickIn.ts';
import { StageTools } from './StageTools.tsx';
import { useTies } from './useTies.ts';

interface Props {
  readonly aircraft: AircraftPicture;
  readonly findings: readonly Finding[];
  /** Said where there is nothing to note. */
  readonly none: string;
  /** The subject's own picture beside the plan; the side view stands there when there is none. */
  readonly chart?: Chart;
  /** Under the drawings. */
  readonly under?: ReactNode;
  /** Under the notes in the margin. */
  readonly margin: ReactNode;
  /** Below everything, from side to side. */
  readonly across?: ReactNode;
  /** The build that is dragged about; absent while something is tried on it. */
  readonly movable?: Movable & { readonly build: Build };
  /** The same aircraft in the round, in a window of that size [px]; absent where only the plan speaks. */
  readonly round?: (width: number, height: number) => ReactNode;
  readonly onScale: (pen: number) => void;
}

/** The frames of the drawings in words. */
const told = (...drawings: readonly (Drawing | undefined)[]): string =>
  drawings.map((drawing) => Object.values(drawing?.frame ?? {}).join(' ')).join(', ');

/** The drawing in the middle and its notes in the margin, tied by leaders that don't cross. */
export function Stage({
  aircraft,
  findings,
  none,
  chart,
  under,
  margin,
  across,
  movable,
  round,
  onScale,
}: Props) {
  const [boardRef, { width }] = useSize<HTMLDivElement>();
  const stageRef = useRef<HTMLDivElement>(null);
  const windowHeight = useWindowHeight();
  const system = useUnits((units) => units.system);
  const [overlays, setOverlays] = useState<readonly PlanOverlay[]>(PLAN_OVERLAYS);
  const [leaders, setLeaders] = useState(true);
  const [held, setHeld] = useState<number>();
  const level = width >= LEVEL;
  const picked = usePicked(({ part }) => drawnAs(part, aircraft));
  const solid = useManner3d(({ round: on }) => on) && round !== undefined;
  const beside = !level ? 'none' : chart ? 'chart' : 'side';

  const fitted = useMemo(
    () => boardPen(aircraft, width, windowHeight, beside),
    [aircraft, width, windowHeight, beside],
  );
  // While a part is dragged the scale stands still under the hand.
  const pen = held ?? fitted;
  const drawing = useMemo(
    () => (pen > 0 ? planDrawing(aircraft, { pen, detail: 'full', overlays, system }) : undefined),
    [aircraft, pen, overlays, system],
  );
  const side = useMemo(() => {
    if (drawing === undefined || chart !== undefined) return undefined;
    const drawn = sideDrawing(aircraft, { pen, nose: level ? 'up' : 'right' });
    const { top, height } = drawing.frame;
    return level ? { ...drawn, frame: { ...drawn.frame, top, height } } : drawn;
  }, [aircraft, chart, drawing, level, pen]);
  const hold = useCallback((now: boolean) => setHeld(now ? pen : undefined), [pen]);
  // What lies where is measured anew only when something may have moved: not by a part under the hand.
  const still = held === undefined ? undefined : told(drawing, side);
  const { notes, ties, rings } = useTies(
    stageRef,
    aircraft,
    solid ? undefined : drawing,
    pen,
    findings,
    still,
  );
  const keys = leaders && !solid ? ties.map(({ key }) => key).join('\n') : '';
  const tied = useMemo(() => new Set(keys.split('\n')), [keys]);
  useLayoutEffect(() => {
    if (!solid && pen > 0) onScale(pen);
  }, [pen, onScale, solid]);

  return (
    <div className="stage" ref={stageRef}>
      <div className="board-column" ref={boardRef}>
        {round && <RoundSwitch />}
        {solid && round(width, roundHeight(width, windowHeight))}
        <div className={level ? 'board level' : 'board'} hidden={solid} data-picked={picked}>
          {drawing && (
            <div className="plan" onPointerDownCapture={(event) => pickIn(event.target, aircraft)}>
              <DrawingView drawing={drawing} pen={pen} className="stage-drawing" />
              {movable && (
                <Handles
                  aircraft={aircraft}
                  frame={drawing.frame}
                  pen={pen}
                  movable={movable}
                  onHold={hold}
                />
              )}
            </div>
          )}
          {side && <DrawingView drawing={side} pen={pen} />}
          {chart && width > 0 && <ChartView chart={chart} width={level ? CHART : Math.min(width, 460)} />}
        </div>
        {drawing && !solid && (
          <StageTools
            overlays={overlays}
            onOverlays={setOverlays}
            leaders={leaders}
            onLeaders={setLeaders}
            plan={drawing}
            name={aircraft.name}
            {...(movable ? { movable } : {})}
          />
        )}
        {under}
      </div>
      <aside className="margin" aria-label="Notes">
        <MarginNotes notes={notes} none={none} tied={tied} />
        {margin}
      </aside>
      {across}
      {leaders && !solid && <Leaders ties={ties} rings={rings} />}
    </div>
  );
}
