import type { Finding, Measure, Severity } from '../../assess/types.ts';
import type { Build } from '../../build/schema/build.ts';
import type { Comparison } from '../../choose/compare.ts';
import type { AircraftPicture } from '../../report/aircraftPicture.ts';
import { planExtent } from '../../report/planDrawing.ts';
import type { BuildView } from '../worker/protocol.ts';

/** A candidate as the choice sheet shows it; its letter ties its column to the words above. */
export interface Candidate {
  readonly id: string;
  readonly letter: string;
  readonly name: string;
  readonly aircraft?: AircraftPicture;
  readonly measures: readonly Measure[];
  readonly findings: readonly Finding[];
  /** Why there is nothing to show, when there is not. */
  readonly reasons: readonly string[];
  /** From 1; absent until all are worked out. */
  readonly rank?: number;
}

export function candidatesOf(
  builds: Readonly<Record<string, Build>>,
  views: Readonly<Record<string, BuildView>>,
  comparison: Comparison | undefined,
): readonly Candidate[] {
  return Object.entries(builds).map(([id, build], i): Candidate => {
    const view = views[id];
    const bare = {
      id,
      letter: String.fromCharCode(65 + i),
      name: build.name,
      measures: [],
      findings: [],
      reasons: [],
      ...(comparison ? { rank: comparison.order.indexOf(i) + 1 } : {}),
    };
    if (view === undefined) return bare;
    if (!view.ok) return { ...bare, reasons: view.reasons };
    const { measures, findings } = view.assessment;
    return { ...bare, aircraft: view.picture, measures, findings };
  });
}

/** One scale for all: the largest machine fills its column [mm of the aircraft for a pixel]. */
export function penFor(candidates: readonly Candidate[], column: number): number {
  const widths = candidates.flatMap(({ aircraft }) => (aircraft ? [planExtent(aircraft).width] : []));
  return widths.length === 0 || column <= 0 ? 0 : Math.max(...widths) / column;
}

export const GRAVITY: readonly Severity[] = ['stop', 'risk', 'note'];
