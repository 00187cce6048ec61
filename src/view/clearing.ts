import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { touchedShare } from './cover.ts';
import { isClear } from './isClear.ts';
import type { Camera, Occluder } from './types.ts';

export type ChangeKind = 'forward' | 'up' | 'tilt up' | 'tilt down' | 'smaller propellers';

/** What must leave the picture, how clear is clear, and how far each change may go. */
export interface ClearingRequest {
  /** Ids of the occluders to clear; all swept discs where absent. */
  readonly clear?: readonly string[];
  /** Share of the picture they may still touch, 0 to 1. */
  readonly allowed: number;
  /** Largest change of each kind: [m], tilts [rad], the last off each disc's radius [m]. */
  readonly most: Readonly<Record<ChangeKind, number>>;
  /** What one propeller size down takes off the radius [m]. */
  readonly sizeStep: number;
}

export interface Clearing {
  /** Share of the picture that the ones to clear touch now. */
  readonly touchedNow: number;
  /** Smallest change of each kind by itself. */
  readonly changes: readonly {
    readonly change: ChangeKind;
    readonly smallest: Outcome<ClearingChange>;
  }[];
  /** What propellers one size smaller leave in the picture, as a share of it. */
  readonly oneSizeDown: { readonly touched: number; readonly clears: boolean };
}

export interface ClearingChange {
  /** [m] or [rad], rounded up to what clears, within 0.5 mm or 0.2 degrees. */
  readonly amount: number;
  /** False when going further would bring something back into the picture within the range. */
  readonly staysClear: boolean;
}

/**
 * Half a per mille touched is nothing one sees. 0.5 in is the step between propeller sizes near 5 in.
 * Both, and the ranges, are common practice, no source.
 */
export const usualClearing: ClearingRequest = {
  allowed: 0.0005,
  most: {
    forward: 0.06,
    up: 0.04,
    'tilt up': (40 * Math.PI) / 180,
    'tilt down': (40 * Math.PI) / 180,
    'smaller propellers': 0.02,
  },
  sizeStep: 0.00635,
};

const LENGTH_TOLERANCE = 0.00025; // [m], half of what is promised
const ANGLE_TOLERANCE = (0.1 * Math.PI) / 180; // [rad]
/** Steps of the scan that brackets the first clear place; a clear gap narrower than one is missed. */
const STEPS = 20;

/**
 * The smallest single change that clears the picture, for each kind of change: the range is scanned,
 * since cover need not fall steadily (a lens moved up may meet the plate above), and the first bracket
 * halved. Says so when no change in its range clears.
 *
 * @throws RangeError for a camera or occluder out of range
 */
export function clearingChanges(
  camera: Camera,
  occluders: readonly Occluder[],
  request: ClearingRequest = usualClearing,
): Clearing {
  const wanted = request.clear && new Set(request.clear);
  const isWanted = (o: Occluder) => (wanted ? wanted.has(o.id) : o.kind === 'sweptDisc');
  const inTheWay = occluders.filter(isWanted);
  const touchedNow = touchedShare(camera, inTheWay);
  const smaller = apply('smaller propellers', request.sizeStep, camera, inTheWay);
  const shrunk = touchedShare(smaller.camera, smaller.occluders);
  const kinds: readonly ChangeKind[] = ['forward', 'up', 'tilt up', 'tilt down', 'smaller propellers'];
  return {
    touchedNow,
    changes: kinds.map((change) => {
      const tolerance = change.startsWith('tilt') ? ANGLE_TOLERANCE : LENGTH_TOLERANCE;
      const found = firstClear(
        (amount) => {
          const changed = apply(change, amount, camera, inTheWay);
          return isClear(changed.camera, changed.occluders, request.allowed);
        },
        request.most[change],
        tolerance,
      );
      return {
        change,
        smallest: found ? solved(found) : noSolution(words(change, request.most[change])),
      };
    }),
    oneSizeDown: { touched: shrunk, clears: shrunk <= request.allowed },
  };
}

function firstClear(
  clears: (amount: number) => boolean,
  most: number,
  tolerance: number,
): { amount: number; staysClear: boolean } | undefined {
  const clear = Array.from({ length: STEPS + 1 }, (_, i) => clears((i * most) / STEPS));
  const first = clear.indexOf(true);
  if (first < 0) return undefined;
  const staysClear = clear.slice(first).every((value) => value);
  let high = (first * most) / STEPS;
  let low = (Math.max(0, first - 1) * most) / STEPS;
  while (high - low > tolerance) {
    const middle = (low + high) / 2;
    if (clears(middle)) high = middle;
    else low = middle;
  }
  return { amount: high, staysClear };
}

function apply(
  change: ChangeKind,
  amount: number,
  camera: Camera,
  occluders: readonly Occluder[],
): { camera: Camera; occluders: readonly Occluder[] } {
  const [x, y, z] = camera.position;
  switch (change) {
    case 'forward':
      return { camera: { ...camera, position: [x + amount, y, z] }, occluders };
    case 'up':
      return { camera: { ...camera, position: [x, y, z - amount] }, occluders };
    case 'tilt up':
      return { camera: { ...camera, pitch: camera.pitch + amount }, occluders };
    case 'tilt down':
      return { camera: { ...camera, pitch: camera.pitch - amount }, occluders };
    case 'smaller propellers':
      return {
        camera,
        occluders: occluders.map((o) =>
          o.kind === 'sweptDisc'
            ? // The hub stays and is the least a disc can shrink to.
              { ...o, radius: Math.max(o.radius - amount, o.hubRadius * 1.001, 1e-4) }
            : o,
        ),
      };
  }
}

function words(change: ChangeKind, most: number): string {
  const range = change.startsWith('tilt')
    ? `${((most * 180) / Math.PI).toFixed(1)} degrees`
    : `${(most * 1000).toFixed(1)} mm`;
  return `${change} by up to ${range} does not clear the picture`;
}
