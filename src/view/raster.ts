import type { Outline } from './pictureOutline.ts';

/** A coarse grid over the picture that gathers how much of each cell an outline covers. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  /** Cells per pixel, across and down. */
  readonly scaleX: number;
  readonly scaleY: number;
  /** Changes of coverage from cell to cell; two spare columns take what falls on the right border. */
  readonly changes: Float64Array;
}

export function raster(columns: number, rows: number, width: number, height: number): Raster {
  return {
    columns,
    rows,
    scaleX: columns / width,
    scaleY: rows / height,
    changes: new Float64Array((columns + 2) * rows),
  };
}

/** The cells that something was drawn in; `last` exclusive. */
export interface Extent {
  readonly firstRow: number;
  readonly lastRow: number;
  readonly firstColumn: number;
  readonly lastColumn: number;
}

/**
 * The exact share of each cell that the outlines of one layer cover, into `coverage` (row by row),
 * by signed areas under edges, as font rasterisers do (method from memory); the changes are left cleared.
 * All outlines wind the same way, so abutting ones add up and overlapping ones are cut off at 1.
 */
export function coverInto(coverage: Float64Array, grid: Raster, outlines: readonly Outline[]): Extent {
  const { columns, rows, changes } = grid;
  let [left, right, top, bottom] = [columns, 0, rows, 0];
  for (const outline of outlines) {
    const count = outline.length;
    for (let i = 0; i < count; i += 2) {
      const j = i + 2 < count ? i + 2 : 0;
      const x0 = limited((outline[i] as number) * grid.scaleX, columns);
      const y0 = limited((outline[i + 1] as number) * grid.scaleY, rows);
      const x1 = limited((outline[j] as number) * grid.scaleX, columns);
      const y1 = limited((outline[j + 1] as number) * grid.scaleY, rows);
      left = Math.min(left, x0);
      right = Math.max(right, x0);
      top = Math.min(top, y0);
      bottom = Math.max(bottom, y0);
      if (y0 !== y1) addEdge(changes, columns, rows, x0, y0, x1, y1);
    }
  }
  const extent: Extent = {
    firstRow: Math.floor(Math.min(top, rows)),
    lastRow: Math.ceil(bottom),
    firstColumn: Math.floor(Math.min(left, columns)),
    lastColumn: Math.ceil(right),
  };
  for (let row = extent.firstRow; row < extent.lastRow; row++) {
    const start = row * (columns + 2);
    let sum = 0;
    for (let column = extent.firstColumn; column < extent.lastColumn; column++) {
      sum += changes[start + column] as number;
      coverage[row * columns + column] = Math.min(1, Math.abs(sum));
    }
    changes.fill(0, start + extent.firstColumn, start + extent.lastColumn + 2);
  }
  return extent;
}

const limited = (value: number, most: number): number => Math.min(most, Math.max(0, value));

/** Adds an edge's signed area to the right of it, cell by cell along its rows. */
function addEdge(
  changes: Float64Array,
  columns: number,
  rows: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): void {
  const direction = y0 < y1 ? 1 : -1;
  const [topX, topY, bottomX, bottomY] = y0 < y1 ? [x0, y0, x1, y1] : [x1, y1, x0, y0];
  const slope = (bottomX - topX) / (bottomY - topY);
  let x = topX;
  const lastRow = Math.min(rows, Math.ceil(bottomY));
  for (let row = Math.floor(topY); row < lastRow; row++) {
    const rowTop = Math.max(row, topY);
    const rowBottom = Math.min(row + 1, bottomY);
    const height = direction * (rowBottom - rowTop);
    const nextX = limited(topX + (rowBottom - topY) * slope, columns);
    addSpan(changes, row * (columns + 2), height, Math.min(x, nextX), Math.max(x, nextX));
    x = nextX;
  }
}

/** An edge within one row, from x `a` to `b`: a trapezium over each cell it crosses, full height after. */
function addSpan(changes: Float64Array, start: number, height: number, a: number, b: number): void {
  const first = Math.floor(a);
  const last = Math.ceil(b) - 1;
  if (last <= first) {
    const covered = height * (first + 1 - (a + b) / 2);
    changes[start + first] = (changes[start + first] as number) + covered;
    changes[start + first + 1] = (changes[start + first + 1] as number) + height - covered;
    return;
  }
  const rise = height / (b - a);
  let before = 0;
  for (let cell = first; cell <= last; cell++) {
    // Share of this cell to the right of the edge: the integral of the height reached up to there.
    const from = Math.max(a, cell);
    const to = Math.min(b, cell + 1);
    const reached = rise * (from - a);
    const covered = (to - from) * (reached + (rise * (to - from)) / 2) + rise * (to - a) * (cell + 1 - to);
    changes[start + cell] = (changes[start + cell] as number) + covered - before;
    before = covered;
  }
  changes[start + last + 1] = (changes[start + last + 1] as number) + height - before;
}
