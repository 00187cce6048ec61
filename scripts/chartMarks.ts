import type { Mark } from '../src/report/chart.ts';
import type { Point } from '../src/report/shapes.ts';

/** `steps + 1` even values from one end to the other. */
export const range = (from: number, to: number, steps: number): readonly number[] =>
  Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);

/** Named at a third of its way: turn `xs` about to keep clear of another's name. */
export const curve = (
  name: string,
  xs: readonly number[],
  of: (x: number) => number,
  dashed = false,
): Mark => ({
  kind: 'curve',
  name,
  dashed,
  points: xs.map((x): Point => ({ x, y: of(x) })),
});
