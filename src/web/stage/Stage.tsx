import { type ReactNode, useCallback, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Finding } from '../../assess/types.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import type { Chart } from '../../report/chart.ts';
import { orderNotes } from '../../report/leaders.ts';
import { planDrawing, planExtent } from '../../report/planDrawing.ts';
import type { Point } from '../../report/shapes.ts';
import { sideDrawing, sideExtent } from '../../report/sideDrawing.ts';
import { ChartView } from '../parts/ChartView.tsx';
import { DrawingView } from '../parts/DrawingView.tsx';
import { MarginNotes } from '../parts/MarginNotes.tsx';
import { useSize } from '../parts/useSize.ts';
import { anchorOf } from './anchorOf.ts';
import { type Balloon, balloonsOf } from './balloons.ts';

interface Props {
  readonly aircraft: AircraftPicture;
  readonly findings: readonly Finding[];
  readonly none: string;
  /** The subject's own picture beside the plan; the side view stands there when there is none. */
  readonly chart?: Chart;
  /** Under the notes in the margin. */
  readonly margin?: ReactNode;
  readonly onScale?: (pen: number) => void;
}

interface Tie {
  readonly id: string;
  readonly severity: Finding['severity'];
  readonly from: Point;
  /** Where the line bends towards its note; absent when notes lie under the drawing. */
  readonly bend?: Point;
  readonly to: Point;
  readonly number: number;
}

interface Ring extends Balloon {
  /** On the stage [px]: what it points at, and its own middle. */
  readonly spot: Point;
  readonly middle: Point;
}

/** The drawing in the middle and its notes in the margin, tied by leaders that don't cross. */
export function Stage({ aircraft, findings, none, chart, margin, onScale }: Props) {
  const [boardRef, board] = useSize<HTMLDivElement>();
  const stageRef = useRef<HTMLDivElement>(null);
  const listRef = useRef<HTMLOListElement>(null);
  const [order, setOrder] = useState<readonly string[]>([]);
  const [rings, setRings] = useState<readonly Ring[]>([]);
  const [ties, setTies] = useState<readonly Tie[]>([]);

  const level = board.width >= LEVEL;
  const pen = useMemo(
    () => penFor(aircraft, board.width, level ? (chart ? 'chart' : 'side') : 'none'),
    [aircraft, board.width, level, chart],
  );
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
  useLayoutEffect(() => onScale?.(pen), [pen, onScale]);

  const sorted = useMemo(() => {
    const rank = (finding: Finding): number => {
      const known = order.indexOf(finding.id);
      return known === -1 ? order.length : known;
    };
    return findings.toSorted((a, b) => rank(a) - rank(b));
  }, [findings, order]);

  const tie = useCallback(() => {
    const stage = stageRef.current;
    const svg = stage?.querySelector('.stage-drawing');
    if (drawing === undefined || !stage || !svg) return;
    const origin = stage.getBoundingClientRect();
    const paper = svg.getBoundingClientRect();
    const onStage = (place: Point): Point => ({
      x: paper.left - origin.left + (place.x - drawing.frame.left) / pen,
      y: paper.top - origin.top + (place.y - drawing.frame.top) / pen,
    });
    const notes = [...(listRef.current?.children ?? [])].map((note) => note.getBoundingClientRect());
    const margin = stage.querySelector('.margin')?.getBoundingClientRect();
    const beside = (margin?.left ?? 0) > paper.right - 20;
    const placed = sorted.flatMap((finding, i) => {
      const place = anchorOf(finding, aircraft);
      const box = notes[i];
      if (place === undefined || box === undefined) return [];
      const to = { x: box.left - origin.left - 8, y: box.top - origin.top + 12 };
      return [{ finding, from: onStage(place), to, number: i + 1 }];
    });
    if (beside) {
      const slots = placed.map(({ to }) => ({ x: to.x - 18, y: to.y }));
      const best = orderNotes(
        placed.map(({ from }) => from),
        slots,
      );
      if (best.some((place, slot) => place !== slot)) {
        const tied = best.flatMap((place) => placed[place]?.finding.id ?? []);
        const loose = sorted.map(({ id }) => id).filter((id) => !tied.includes(id));
        setOrder([...tied, ...loose]);
        return;
      }
    }
    setRings(beside ? balloonsOf(aircraft).map((each) => ringOn(each, onStage)) : []);
    setTies(
      (beside ? placed : fanned(placed)).map(({ finding: { id, severity }, from, to, number }) => ({
        id,
        severity,
        from,
        to,
        number,
        ...(beside ? { bend: { x: to.x - 18, y: to.y } } : {}),
      })),
    );
  }, [aircraft, drawing, pen, sorted]);

  useLayoutEffect(tie, [tie]);

  return (
    <div className="stage" ref={stageRef}>
      <div className={level ? 'board level' : 'board'} ref={boardRef}>
        {drawing && <DrawingView drawing={drawing} pen={pen} className="stage-drawing" />}
        {side && <DrawingView drawing={side} pen={pen} />}
        {chart && board.width > 0 && (
          <ChartView chart={chart} width={level ? CHART : Math.min(board.width, 460)} />
        )}
      </div>
      <aside className="margin" aria-label="Notes">
        <MarginNotes findings={sorted} listRef={listRef} none={none} />
        {margin}
      </aside>
      <svg className="leaders" aria-hidden="true">
        {rings.map((ring) => (
          <RingMark key={ring.number} ring={ring} />
        ))}
        {ties.map((each) => (
          <TieLine key={each.id} tie={each} />
        ))}
      </svg>
    </div>
  );
}

/** Flags of several notes on one spot stand side by side instead of hiding each other. */
function fanned<T extends { readonly from: Point }>(placed: readonly T[]): T[] {
  const near = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y) < FLAG;
  return placed.map((each) => {
    const together = placed.filter((other) => near(each.from, other.from));
    const shift = (together.indexOf(each) - (together.length - 1) / 2) * FLAG;
    return { ...each, from: { x: each.from.x + shift, y: each.from.y } };
  });
}

/** A flag with its edge [px]. */
const FLAG = 19;

function TieLine({ tie: { severity, from, bend, to, number } }: { readonly tie: Tie }) {
  if (bend !== undefined) {
    return (
      <g className={severity}>
        <path d={`M${from.x} ${from.y}L${bend.x} ${bend.y}H${to.x}`} />
        <circle cx={from.x} cy={from.y} r={3} />
      </g>
    );
  }
  return (
    <g className={`${severity} flag`}>
      <circle cx={from.x} cy={from.y} r={8.5} />
      <text x={from.x} y={from.y + 3.8} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

function ringOn(balloon: Balloon, onStage: (place: Point) => Point): Ring {
  const from = onStage(balloon.ring);
  return {
    ...balloon,
    spot: onStage(balloon.at),
    middle: { x: from.x + balloon.shift.x, y: from.y + balloon.shift.y },
  };
}

/** A click on a ring goes to the part's line in the schedule; the keyboard is there without it. */
function RingMark({ ring: { number, entry, spot, middle } }: { readonly ring: Ring }) {
  const out = { x: middle.x - spot.x, y: middle.y - spot.y };
  const short = 1 - 10 / Math.max(Math.hypot(out.x, out.y), 10);
  return (
    <g
      className="ring"
      onPointerDown={(event) => {
        event.preventDefault();
        document.querySelector<HTMLElement>(`[data-entry="${entry}"] .picker`)?.focus();
      }}
    >
      <path d={`M${spot.x} ${spot.y}L${spot.x + out.x * short} ${spot.y + out.y * short}`} />
      <circle className="ring-spot" cx={spot.x} cy={spot.y} r={1.8} />
      <circle className="ring-edge" cx={middle.x} cy={middle.y} r={10} />
      <text x={middle.x} y={middle.y + 4} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

// Beside the plan there is room for the side view or a chart from this width on [px].
const LEVEL = 640;
const CHART = 360;
// The margins that the drawings add round the machine, both sides together [px].
const ROUND = { width: 116, height: 112, side: 50, gap: 12 };
// Head, schedule, title block and gaps of a whole sheet [px].
const AROUND_STAGE = 322;

/** The pen that lets plan and what stands beside it fill the board, on a sheet as high as the window. */
function penFor(aircraft: AircraftPicture, width: number, beside: 'side' | 'chart' | 'none'): number {
  if (width === 0) return 0;
  const extent = planExtent(aircraft);
  const height = Math.max(window.innerHeight - AROUND_STAGE, 360) - ROUND.height;
  const wide = extent.width + (beside === 'side' ? sideExtent(aircraft, 'up').width : 0);
  const taken =
    ROUND.width + (beside === 'side' ? ROUND.side + ROUND.gap : beside === 'chart' ? CHART + ROUND.gap : 0);
  const lettersNeed = extent.width / 620;
  return Math.max(wide / Math.max(width - taken, 120), extent.height / height, lettersNeed);
}
