import type { Hand, Shape } from './shapes.ts';

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
}

/**
 * Names where they hide neither one another nor what is taken: each in the first of its places that is free and on
 * the paper, in their order; where none is, in the one that hides least.
 */
export function placedNames(
  names: readonly Name[],
  paper: Box,
  taken: readonly Box[] = [],
): readonly Extract<Shape, { kind: 'text' }>[] {
  const boxes = [...taken];
  return names.flatMap(({ text, hand, places }) => {
    let best: { readonly place: NamePlace; readonly box: Box; readonly hides: number } | undefined;
    for (const place of places) {
      const box = boxOf(text, hand, place);
      const hides = boxes.reduce((sum, other) => sum + shared(box, other), off(box, paper));
      if (best === undefined || hides < best.hides) best = { place, box, hides };
      if (hides === 0) break;
    }
    if (best === undefined) return [];
    boxes.push(best.box);
    return [{ kind: 'text' as const, hand, size: LETTER, text, ...best.place }];
  });
}

/** What a text takes of the paper, about. */
export function boxOf(text: string, hand: Hand, { x, y, anchor }: NamePlace): Box {
  const width = (hand === 'figure' ? WIDE_BOLD : WIDE) * LETTER * text.length;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, top: y - 0.85 * LETTER, right: left + width, bottom: y + 0.25 * LETTER };
}

function shared(a: Box, b: Box): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > 0 && high > 0 ? wide * high : 0;
}

/** Cut off by the edge is worse than hidden: nobody can guess it. */
const off = (box: Box, paper: Box): number =>
  10 * ((box.right - box.left) * (box.bottom - box.top) - shared(box, paper));
