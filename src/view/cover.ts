import { coverInto, type Extent, type Raster, raster } from './raster.ts';
import { type SeenLayer, seenLayers } from './seenLayers.ts';
import type { Camera, Cover, Occluder, OccluderCover } from './types.ts';
import { viewFrame } from './viewFrame.ts';

/** Cells across the picture. Areas are exact; the grid only blurs where two edges share a cell. */
const COLUMNS = 200;

/**
 * The share of a camera's picture that the aircraft covers, in all and by occluder, and where.
 * Occluders hide behind each other as independent veils do: what passes is the product of what each
 * lets through. For the outlines to draw use `picture`, for the way out `clearingChanges`.
 *
 * @throws RangeError for a camera or occluder out of range
 */
export function cover(camera: Camera, occluders: readonly Occluder[]): Cover {
  const view = viewFrame(camera);
  const columns = COLUMNS;
  const rows = Math.max(1, Math.round((columns * view.height) / view.width));
  const grid = raster(columns, rows, view.width, view.height);
  const cells = columns * rows;
  const passed = new Float64Array(cells).fill(1);
  const free = new Float64Array(cells).fill(1);
  const layerCovers = [new Float64Array(cells), new Float64Array(cells)];
  const byOccluder = occluders.map((occluder): OccluderCover => {
    const layers = seenLayers(occluder, view, camera.exposure);
    const own = addOccluder(layers, grid, layerCovers, passed, free);
    return { id: occluder.id, kind: occluder.kind, ...own };
  });
  const opacity = new Float32Array(cells);
  let [light, unhidden] = [0, 0];
  for (let cell = 0; cell < cells; cell++) {
    opacity[cell] = 1 - (passed[cell] as number);
    light += passed[cell] as number;
    unhidden += free[cell] as number;
  }
  return {
    covered: 1 - light / cells,
    touched: 1 - unhidden / cells,
    byOccluder,
    map: { columns, rows, opacity },
  };
}

/** Tolerance of outlines for the same, in picture widths: a twentieth of a degree under a wide lens. */
const ROUGH = 4e-4;
/** Cells across for `touchedShare`: areas are exact on any grid, only overlaps in one cell are not. */
const FEW_COLUMNS = 64;

/**
 * Share of the picture that any of the occluders touches, 0 to 1: `cover`'s `touched` for a search that
 * asks often, on a coarser grid.
 */
export function touchedShare(camera: Camera, occluders: readonly Occluder[]): number {
  const view = viewFrame(camera);
  const columns = FEW_COLUMNS;
  const rows = Math.max(1, Math.round((columns * view.height) / view.width));
  const grid = raster(columns, rows, view.width, view.height);
  const cells = columns * rows;
  const layerCovers = [new Float64Array(cells), new Float64Array(cells)];
  const passed = new Float64Array(cells).fill(1);
  const free = new Float64Array(cells).fill(1);
  for (const occluder of occluders) {
    // A hub lies within its disc, so it touches nothing more.
    const drawn = occluder.kind === 'sweptDisc' ? { ...occluder, hubRadius: 0 } : occluder;
    addOccluder(seenLayers(drawn, view, camera.exposure, ROUGH), grid, layerCovers, passed, free);
  }
  return 1 - free.reduce((sum, share) => sum + share, 0) / cells;
}

function addOccluder(
  layers: readonly SeenLayer[],
  grid: Raster,
  layerCovers: readonly Float64Array[],
  passed: Float64Array,
  free: Float64Array,
): { covered: number; touched: number } {
  const drawn = layers.map((layer, i) => {
    const coverage = layerCovers[i] as Float64Array;
    return { opacity: layer.opacity, coverage, extent: coverInto(coverage, grid, layer.outlines) };
  });
  const all = union(
    drawn.map(({ extent }) => extent),
    grid,
  );
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
  const cells = grid.columns * grid.rows;
  return { covered: covered / cells, touched: touched / cells };
}

function union(extents: readonly Extent[], { rows, columns }: Raster): Extent {
  return extents.reduce(
    (a, b) => ({
      firstRow: Math.min(a.firstRow, b.firstRow),
      lastRow: Math.max(a.lastRow, b.lastRow),
      firstColumn: Math.min(a.firstColumn, b.firstColumn),
      lastColumn: Math.max(a.lastColumn, b.lastColumn),
    }),
    { firstRow: rows, lastRow: 0, firstColumn: columns, lastColumn: 0 },
  );
}
