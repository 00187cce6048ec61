import { sameData } from '../numerics/recall.ts';
import { coverInto, type Extent, type Raster, raster } from './raster.ts';
import { ROUGH, type SeenLayer, seenLayers } from './seenLayers.ts';
import type { Camera, Cover, Occluder } from './types.ts';
import { viewFrame } from './viewFrame.ts';

/** Cells across the picture. Areas are exact; the grid only blurs where two edges share a cell. */
const COLUMNS = 200;

/** What one look leaves for the next of the same camera: an occluder that has not moved needs no new outlines. */
export interface CoverMemory {
  last?: {
    readonly camera: Camera;
    readonly occluders: readonly Occluder[];
    readonly kinds: readonly (string | undefined)[];
    readonly layers: readonly SeenLayer[][];
    readonly cover: Cover;
  };
}

/**
 * The share of a camera's picture that the aircraft covers, in all and by occluder, and where.
 * Occluders hide behind each other as independent veils do: what passes is the product of what each
 * lets through. For the outlines to draw use `picture`, for the way out `clearingChanges`.
 *
 * @param kinds of the occluders, one each or undefined, for shares by kind; things of a kind that overlap count once
 * @param memory of the last look, written anew; it changes nothing but the time taken
 * @throws RangeError for a camera or occluder out of range
 */
export function cover(
  camera: Camera,
  occluders: readonly Occluder[],
  kinds: readonly (string | undefined)[] = [],
  memory: CoverMemory = {},
): Cover {
  const last = memory.last !== undefined && sameData(memory.last.camera, camera) ? memory.last : undefined;
  const view = viewFrame(camera);
  const rows = Math.max(1, Math.round((COLUMNS * view.height) / view.width));
  const layers = occluders.map((occluder, i) => {
    const known = sameData(last?.occluders[i], occluder) ? last?.layers[i] : undefined;
    return known ?? seenLayers(occluder, view, camera.exposure);
  });
  if (last !== undefined && sameLook(last, layers, occluders, kinds)) {
    memory.last = { ...last, occluders, layers };
    return last.cover;
  }
  const sheet = sheetOf(COLUMNS, rows, view);
  const each = layers.map((own) => addOccluder(own, sheet));
  const opacity = new Float32Array(sheet.passed.length);
  const whole = sharesOf(sheet, opacity);
  const byKind: Record<string, Shares> = {};
  for (const kind of new Set(kinds)) {
    if (kind === undefined) continue;
    const seen = each.flatMap(({ touched }, i) => (kinds[i] === kind && touched > 0 ? [i] : []));
    const [first] = seen;
    if (first === undefined) byKind[kind] = { covered: 0, touched: 0 };
    else if (seen.length === 1) byKind[kind] = each[first] ?? { covered: 0, touched: 0 };
    else {
      wipe(sheet);
      for (const i of seen) addOccluder(layers[i] ?? [], sheet);
      byKind[kind] = sharesOf(sheet);
    }
  }
  const found: Cover = {
    ...whole,
    byOccluder: occluders.map(({ id, kind }, i) => ({ id, kind, ...(each[i] as Shares) })),
    byKind,
    map: { columns: COLUMNS, rows, opacity },
  };
  memory.last = { camera, occluders, kinds, layers, cover: found };
  return found;
}

/** Whether nothing that is in the picture has moved: what lies outside it may. */
function sameLook(
  last: NonNullable<CoverMemory['last']>,
  layers: readonly SeenLayer[][],
  occluders: readonly Occluder[],
  kinds: readonly (string | undefined)[],
): boolean {
  return (
    last.occluders.length === occluders.length &&
    sameData(last.kinds, kinds) &&
    occluders.every(({ id, kind }, i) => {
      const was = last.occluders[i];
      return was?.id === id && was.kind === kind && sameLayers(last.layers[i], layers[i]);
    })
  );
}

const sameLayers = (a: readonly SeenLayer[] | undefined, b: readonly SeenLayer[] | undefined): boolean =>
  a === b || (a?.length === 0 && b?.length === 0);

/** Cells across for `touchedShare`: areas are exact on any grid, only overlaps in one cell are not. */
const FEW_COLUMNS = 64;

/**
 * Share of the picture that any of the occluders touches, 0 to 1: `cover`'s `touched` for a search that
 * asks often, on a coarser grid.
 */
export function touchedShare(camera: Camera, occluders: readonly Occluder[]): number {
  const view = viewFrame(camera);
  const rows = Math.max(1, Math.round((FEW_COLUMNS * view.height) / view.width));
  const sheet = sheetOf(FEW_COLUMNS, rows, view);
  for (const occluder of occluders) {
    // A hub lies within its disc, so it touches nothing more.
    const drawn = occluder.kind === 'sweptDisc' ? { ...occluder, hubRadius: 0 } : occluder;
    addOccluder(seenLayers(drawn, view, camera.exposure, ROUGH), sheet);
  }
  return sharesOf(sheet).touched;
}

interface Shares {
  readonly covered: number;
  readonly touched: number;
}

/** A grid with what passes each cell, light and sight, and where anything was drawn. */
interface Sheet {
  readonly grid: Raster;
  readonly layerCovers: readonly Float64Array[];
  readonly passed: Float64Array;
  readonly free: Float64Array;
  drawn: Extent;
}

function sheetOf(columns: number, rows: number, { width, height }: { width: number; height: number }): Sheet {
  const cells = columns * rows;
  return {
    grid: raster(columns, rows, width, height),
    layerCovers: [new Float64Array(cells), new Float64Array(cells)],
    passed: new Float64Array(cells).fill(1),
    free: new Float64Array(cells).fill(1),
    drawn: NOWHERE,
  };
}

function wipe(sheet: Sheet): void {
  sheet.passed.fill(1);
  sheet.free.fill(1);
  sheet.drawn = NOWHERE;
}

function sharesOf({ grid, passed, free, drawn }: Sheet, opacity?: Float32Array): Shares {
  let [covered, touched] = [0, 0];
  for (let row = drawn.firstRow; row < drawn.lastRow; row++) {
    const end = row * grid.columns + drawn.lastColumn;
    for (let cell = row * grid.columns + drawn.firstColumn; cell < end; cell++) {
      const hidden = 1 - (passed[cell] as number);
      covered += hidden;
      touched += 1 - (free[cell] as number);
      if (opacity !== undefined) opacity[cell] = hidden;
    }
  }
  const cells = grid.columns * grid.rows;
  return { covered: covered / cells, touched: touched / cells };
}

function addOccluder(layers: readonly SeenLayer[], sheet: Sheet): Shares {
  if (layers.length === 0) return { covered: 0, touched: 0 };
  const { grid, layerCovers, passed, free } = sheet;
  const drawn = layers.map((layer, i) => {
    const coverage = layerCovers[i] as Float64Array;
    return { opacity: layer.opacity, coverage, extent: coverInto(coverage, grid, layer.outlines) };
  });
  const all = drawn.reduce((sum, { extent }) => union(sum, extent), NOWHERE);
  let [covered, touched] = [0, 0];
  for (let row = all.firstRow; row < all.lastRow; row++) {
    for (let column = all.firstColumn; column < all.lastColumn; column++) {
      const cell = row * grid.columns + column;
      let [ownPassed, ownFree] = [1, 1];
      for (const { opacity, coverage } of drawn) {
        const share = coverage[cell] as number;
        ownPassed *= 1 - opacity * share;
        ownFree *= 1 - share;
        coverage[cell] = 0;
      }
      covered += 1 - ownPassed;
      touched += 1 - ownFree;
      passed[cell] = (passed[cell] as number) * ownPassed;
      free[cell] = (free[cell] as number) * ownFree;
    }
  }
  sheet.drawn = union(sheet.drawn, all);
  const cells = grid.columns * grid.rows;
  return { covered: covered / cells, touched: touched / cells };
}

const NOWHERE: Extent = {
  firstRow: Number.POSITIVE_INFINITY,
  lastRow: 0,
  firstColumn: Number.POSITIVE_INFINITY,
  lastColumn: 0,
};

const union = (a: Extent, b: Extent): Extent => ({
  firstRow: Math.min(a.firstRow, b.firstRow),
  lastRow: Math.max(a.lastRow, b.lastRow),
  firstColumn: Math.min(a.firstColumn, b.firstColumn),
  lastColumn: Math.max(a.lastColumn, b.lastColumn),
});
