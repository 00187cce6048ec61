import { type ReactNode, useLayoutEffect, useMemo } from 'react';
import type { Finding } from '../../assess/types.ts';
import { drawChart } from '../../report/chart.ts';
import type { Drawing } from '../../report/shapes.ts';
import { exportSvg } from '../desk/pictures.ts';
import { DrawingView } from '../parts/DrawingView.tsx';
import { useSize } from '../parts/useSize.ts';
import { MarginNotes } from '../stage/MarginNotes.tsx';
import { useWords } from '../state/manner.ts';
import type { Figure } from './figure.ts';

interface Props {
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
  readonly none: string;
  /** Before the figures, across the board. */
  readonly first?: ReactNode;
  /** Under the figures, across the board. */
  readonly under?: ReactNode;
  readonly margin: ReactNode;
  /** Below everything, from side to side. */
  readonly across?: ReactNode;
  /** Older than the build: being worked out anew. */
  readonly stale: boolean;
  readonly onScale: (pen: number) => void;
}

/** Two figures stand side by side from this width on [px]. */
const PAIR = 640;
const GAP = 34;
const WIDEST = 620;

/** The sheet of a subject that is seen in figures rather than on the plan. */
export function FigureBoard({
  figures,
  findings,
  none,
  first,
  under,
  margin,
  across,
  stale,
  onScale,
}: Props) {
  // Figures of several scales have none to tell.
  useLayoutEffect(() => onScale(0), [onScale]);
  const [ref, { width }] = useSize<HTMLDivElement>();
  const column = width >= PAIR ? Math.floor((width - GAP) / 2) : width;
  const notes = findings.map((finding, i) => ({ key: `${finding.id} ${i}`, finding }));
  return (
    <div className="stage">
      <div className={stale ? 'figure-board stale' : 'figure-board'} ref={ref}>
        {first}
        {width > 0 &&
          figures.map((figure) => (
            <FigureView
              key={figure.key}
              figure={figure}
              width={Math.min(
                figure.wide === true ? width : column,
                figure.wide === true ? 2 * WIDEST : WIDEST,
              )}
            />
          ))}
        {figures.length === 0 && (
          <p className="no-notes">{stale ? 'Being worked out.' : 'Nothing to draw here.'}</p>
        )}
        {under}
      </div>
      <aside className="margin" aria-label="Notes">
        <MarginNotes notes={notes} none={none} />
        {margin}
      </aside>
      {across}
    </div>
  );
}

function FigureView({ figure, width }: { readonly figure: Figure; readonly width: number }) {
  const words = useWords();
  const { drawing, pen } = useMemo(() => drawn(figure, width), [figure, width]);
  return (
    <section className={figure.wide === true ? 'figure wide' : 'figure'}>
      <h3>
        {figure.title}
        <button type="button" className="plain-button small" onClick={() => exportSvg(drawing, figure.title)}>
          save SVG<span className="unseen"> of {figure.title}</span>
        </button>
      </h3>
      <DrawingView drawing={drawing} pen={pen} className="chart" />
      {figure.says && <p className="figure-says">{words(figure.says)}</p>}
    </section>
  );
}

function drawn({ draw, wide }: Figure, width: number): { readonly drawing: Drawing; readonly pen: number } {
  if (draw.kind === 'drawing') return draw.of(width);
  const across = draw.square === true ? Math.min(width, 400) : width;
  const height = draw.square === true ? across : Math.round(across * (wide === true ? 0.42 : 0.6));
  return { drawing: drawChart(draw.chart, Math.max(across, 120), Math.max(height, 180)), pen: 1 };
}
