import { type ReactNode, useLayoutEffect, useMemo, useRef } from 'react';
import type { Finding } from '../../assess/types.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import type { Chart } from '../../report/chart.ts';
import { planDrawing } from '../../report/planDrawing.ts';
import { sideDrawing } from '../../report/sideDrawing.ts';
import { ChartView } from '../parts/ChartView.tsx';
import { DrawingView } from '../parts/DrawingView.tsx';
import { useSize } from '../parts/useSize.ts';
import { boardPen, CHART, LEVEL } from './boardPen.ts';
import { Leaders } from './Leaders.tsx';
import { MarginNotes } from './MarginNotes.tsx';
import { useTies } from './useTies.ts';

interface Props {
  readonly aircraft: AircraftPicture;
  readonly findings: readonly Finding[];
  /** Said where there is nothing to note. */
  readonly none: string;
  /** The subject's own picture beside the plan; the side view stands there when there is none. */
  readonly chart?: Chart;
  /** Under the notes in the margin. */
  readonly margin: ReactNode;
  readonly onScale: (pen: number) => void;
}

/** The drawing in the middle and its notes in the margin, tied by leaders that don't cross. */
export function Stage({ aircraft, findings, none, chart, margin, onScale }: Props) {
  const [boardRef, { width }] = useSize<HTMLDivElement>();
  const stageRef = useRef<HTMLDivElement>(null);
  const level = width >= LEVEL;
  const beside = !level ? 'none' : chart ? 'chart' : 'side';

  const pen = useMemo(() => boardPen(aircraft, width, window.innerHeight, beside), [aircraft, width, beside]);
  const drawing = useMemo(
    () => (pen > 0 ? planDrawing(aircraft, { pen, detail: 'full' }) : undefined),
    [aircraft, pen],
  );
  const side = useMemo(() => {
    if (drawing === undefined || chart !== undefined) return undefined;
    const drawn = sideDrawing(aircraft, { pen, nose: level ? 'up' : 'right' });
    const { top, height } = drawing.frame;
    return level ? { ...drawn, frame: { ...drawn.frame, top, height } } : drawn;
  }, [aircraft, chart, drawing, level, pen]);
  const { notes, ties, rings } = useTies(stageRef, aircraft, drawing, pen, findings);
  useLayoutEffect(() => onScale(pen), [pen, onScale]);

  return (
    <div className="stage" ref={stageRef}>
      <div className={level ? 'board level' : 'board'} ref={boardRef}>
        {drawing && <DrawingView drawing={drawing} pen={pen} className="stage-drawing" />}
        {side && <DrawingView drawing={side} pen={pen} />}
        {chart && width > 0 && <ChartView chart={chart} width={level ? CHART : Math.min(width, 460)} />}
      </div>
      <aside className="margin" aria-label="Notes">
        <MarginNotes notes={notes} none={none} />
        {margin}
      </aside>
      <Leaders ties={ties} rings={rings} />
    </div>
  );
}
