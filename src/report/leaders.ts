import type { Point } from './shapes.ts';

/** A straight line from the spot spoken of to the edge of a note. */
export interface Leader {
  readonly from: Point;
  readonly to: Point;
}

/**
 * Which note goes in which slot of the margin, so that no two leaders cross: start in order of
 * height and swap the ends of any two that cross. A swap always shortens the total length (triangle
 * inequality), so it ends. Returns for each slot, from the top, the index of its place.
 */
export function orderNotes(places: readonly Point[], slots: readonly Point[]): readonly number[] {
  if (places.length !== slots.length)
    throw new RangeError(`slots must be as many as places, ${places.length}, got ${slots.length}`);
  const order = places.map((_, i) => i).sort((a, b) => (places[a]?.y ?? 0) - (places[b]?.y ?? 0));
  const line = (slot: number): Leader => ({
    from: places[order[slot] ?? 0] ?? { x: 0, y: 0 },
    to: slots[slot] ?? { x: 0, y: 0 },
  });
  for (let swapped = true; swapped; ) {
    swapped = false;
    for (let i = 0; i < order.length; i++) {
      for (let j = i + 1; j < order.length; j++) {
        if (!cross(line(i), line(j))) continue;
        const [first, second] = [order[i] ?? 0, order[j] ?? 0];
        order[i] = second;
        order[j] = first;
        swapped = true;
      }
    }
  }
  return order;
}

/** Whether two lines cross inside both; touching ends don't count. */
export function cross(a: Leader, b: Leader): boolean {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return (
    side(a.from, a.to, b.from) * side(a.from, a.to, b.to) < 0 &&
    side(b.from, b.to, a.from) * side(b.from, b.to, a.to) < 0
  );
}
