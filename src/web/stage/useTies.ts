import { type RefObject, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Finding } from '../../assess/types.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { orderNotes } from '../../report/leaders.ts';
import type { Drawing, Point } from '../../report/shapes.ts';
import { anchorOf } from './anchorOf.ts';
import { type Balloon, balloonsOf } from './balloons.ts';
import type { Ring, Tie } from './Leaders.tsx';

/** A finding with a name of its own on this sheet: a rule may speak of several places. */
export interface Note {
  readonly key: string;
  readonly finding: Finding;
}

interface Tied {
  /** In the order in which their leaders don't cross. */
  readonly notes: readonly Note[];
  readonly ties: readonly Tie[];
  readonly rings: readonly Ring[];
}

/** From the note to the bend of its leader [px]. */
const BEND = 18;
/** A flag with its edge [px]. */
const FLAG = 19;
/** Notes differ in height, so a new order moves the slots; after so many tries the last one stands. */
const TRIES = 6;

/**
 * Measures where drawing and notes came to lie, orders the notes by it and tells how to tie them.
 *
 * @param still what the layout hangs on while a part is dragged: as long as it and the notes are the same, all lies
 *   where it lay; absent where it is measured every time
 */
export function useTies(
  stage: RefObject<HTMLDivElement | null>,
  aircraft: AircraftPicture,
  drawing: Drawing | undefined,
  pen: number,
  findings: readonly Finding[],
  still?: string,
): Tied {
  const [order, setOrder] = useState<readonly string[]>([]);
  const [marks, setMarks] = useState<Omit<Tied, 'notes'>>({ ties: [], rings: [] });
  const tries = useRef({ drawing, findings, left: TRIES });

  const notes = useMemo(() => {
    const place = ({ key }: Note): number => (order.includes(key) ? order.indexOf(key) : order.length);
    return findings
      .map((finding, i): Note => ({ key: `${finding.id} ${i}`, finding }))
      .toSorted((a, b) => place(a) - place(b));
  }, [findings, order]);

  const looked = useRef<{ readonly still: string; readonly notes: string; readonly laid: Laid }>(undefined);
  useLayoutEffect(() => {
    if (!stage.current || !drawing) return;
    const texts = notes.map(({ finding }) => `${finding.says} ${finding.remedy}`).join('\n');
    const known = looked.current?.still === still && looked.current?.notes === texts && looked.current.laid;
    const laid = known || lookAt(stage.current, drawing, pen);
    looked.current = still === undefined || laid === undefined ? undefined : { still, notes: texts, laid };
    if (!laid) return;
    if (tries.current.drawing !== drawing || tries.current.findings !== findings)
      tries.current = { drawing, findings, left: TRIES };
    const placed = notes.flatMap(({ key, finding }, i) => {
      const place = anchorOf(finding, aircraft);
      const to = laid.notes[i];
      return place && to
        ? [{ key, severity: finding.severity, from: laid.onStage(place), to, number: i + 1 }]
        : [];
    });
    if (!laid.beside) {
      setMarks({ ties: fanned(placed), rings: [] });
      return;
    }
    const bends = placed.map(({ to }) => ({ x: to.x - BEND, y: to.y }));
    const best = orderNotes(
      placed.map(({ from }) => from),
      bends,
    );
    if (tries.current.left > 0 && best.some((place, slot) => place !== slot)) {
      tries.current.left -= 1;
      setOrder(best.flatMap((place) => placed[place]?.key ?? []));
      return;
    }
    setMarks({
      ties: placed.map((tie) => ({ ...tie, bend: { x: tie.to.x - BEND, y: tie.to.y } })),
      rings: balloonsOf(aircraft).map((balloon) => ringOn(balloon, laid.onStage)),
    });
  }, [stage, aircraft, drawing, pen, findings, notes, still]);

  return { notes, ...marks };
}

/** Where things lie on the stage [px]: the drawing's places and the heads of the notes. */
interface Laid {
  readonly beside: boolean;
  readonly onStage: (place: Point) => Point;
  readonly notes: readonly Point[];
}

function lookAt(stage: HTMLElement, drawing: Drawing, pen: number): Laid | undefined {
  const paper = stage.querySelector('.stage-drawing')?.getBoundingClientRect();
  const margin = stage.querySelector('.margin')?.getBoundingClientRect();
  if (paper === undefined || margin === undefined) return undefined;
  const origin = stage.getBoundingClientRect();
  return {
    beside: margin.left > paper.right - 20,
    onStage: (place: Point): Point => ({
      x: paper.left - origin.left + (place.x - drawing.frame.left) / pen,
      y: paper.top - origin.top + (place.y - drawing.frame.top) / pen,
    }),
    notes: Array.from(stage.querySelectorAll('.margin-note'), (note): Point => {
      const { left, top } = note.getBoundingClientRect();
      return { x: left - origin.left - 8, y: top - origin.top + 12 };
    }),
  };
}

/** Flags of several notes on one spot stand side by side instead of hiding each other. */
function fanned(placed: readonly Tie[]): Tie[] {
  const near = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y) < FLAG;
  return placed.map((each) => {
    const together = placed.filter((other) => near(each.from, other.from));
    const shift = (together.indexOf(each) - (together.length - 1) / 2) * FLAG;
    return { ...each, from: { x: each.from.x + shift, y: each.from.y } };
  });
}

function ringOn(balloon: Balloon, onStage: (place: Point) => Point): Ring {
  const from = onStage(balloon.ring);
  return {
    ...balloon,
    spot: onStage(balloon.at),
    middle: { x: from.x + balloon.shift.x, y: from.y + balloon.shift.y },
  };
}
