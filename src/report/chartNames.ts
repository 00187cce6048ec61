import type { Hand, Point, Shape } from './shapes.ts';

/** Size of a chart's lettering [px]. */
export const LETTER = 11;
/** Of a letter in the mean, over its size; figures are set bold. */
const WIDE = 0.48;
const WIDE_BOLD = 0.55;

/** On the paper [px], y down. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface NamePlace {
  /** Of the text's baseline [px]. */
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** A name to be written, and where it may stand, the best place first. */
export interface Name {
  readonly text: string;
  readonly hand: Hand;
  readonly places: readonly NamePlace[];
  /** The line it is of, as `alongLine` has it: it stands nearer to that one than to another. */
  readonly line?: readonly Box[];
}

/**
 * Names where they hide neither one another nor what is taken: each in the first of its places that is free and on
 * the paper, in their order; where none is, in the one that hides least. `lines` are taken too, each by `alongLine`.
 */
export function placedNames(
  names: readonly Name[],
  paper: Box,
  taken: readonly Box[] = [],
  lines: readonly (readonly Box[])[] = [],
): readonly Extract<Shape, { kind: 'text' }>[] {
  const boxes = [...taken, ...lines.flat()];
  return names.flatMap(({ text, hand, places, line }) => {
    const others = lines.filter((each) => each !== line).flat();
    let best: { readonly place: NamePlace; readonly box: Box; readonly hides: number } | undefined;
    for (const place of places) {
      const box = boxOf(text, hand, place);
      const astray = line !== undefined && gapTo(box, others) < gapTo(box, line) ? ASTRAY : 0;
      const hides = boxes.reduce((sum, other) => sum + shared(box, other), off(box, paper) + astray);
      if (best === undefined || hides < best.hides) best = { place, box, hides };
      if (hides === 0) break;
    }
    if (best === undefined) return [];
    boxes.push(best.box);
    return [{ kind: 'text' as const, hand, size: LETTER, text, ...best.place }];
  });
}

/** How far apart a line's boxes lie, and how far they reach to each side [px]. */
const STEP = 5;
const HALF_STROKE = 1.5;

/** What a line takes of the paper: a small box every few pixels, so that a name crosses it only where it must. */
export function alongLine(points: readonly Point[]): readonly Box[] {
  return points.slice(1).flatMap((to, i): readonly Box[] => {
    const from = points[i] ?? to;
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / STEP));
    return Array.from({ length: steps }, (_, step) => {
      const share = (step + 0.5) / steps;
      const [x, y] = [from.x + share * (to.x - from.x), from.y + share * (to.y - from.y)];
      return { left: x - HALF_STROKE, top: y - HALF_STROKE, right: x + HALF_STROKE, bottom: y + HALF_STROKE };
    });
  });
}

/** What a text takes of the paper, about. */
export function boxOf(text: string, hand: Hand, { x, y, anchor }: NamePlace): Box {
  const width = (hand === 'figure' ? WIDE_BOLD : WIDE) * LETTER * text.length;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, top: y - 0.85 * LETTER, right: left + width, bottom: y + 0.25 * LETTER };
}

/** What it counts to be taken for another line's name, in what is hidden [px2]: worse than to cross a line. */
const ASTRAY = 150;

/** From a name to the nearest of a line's boxes [px]. */
const gapTo = (name: Box, line: readonly Box[]): number =>
  Math.min(
    ...line.map((box) =>
      Math.hypot(
        Math.max(box.left - name.right, name.left - box.right, 0),
        Math.max(box.top - name.bottom, name.top - box.bottom, 0),
      ),
    ),
  );

function shared(a: Box, b: Box): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > 0 && high > 0 ? wide * high : 0;
}

/** Cut off by the edge is worse than hidden: nobody can guess it. */
const off = (box: Box, paper: Box): number =>
  10 * ((box.right - box.left) * (box.bottom - box.top) - shared(box, paper));
