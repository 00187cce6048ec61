import { subtract3 } from '../../numerics/vector3.ts';
import type { Station } from '../types.ts';
import { skewedTube } from './skewedTube.ts';

/** What every rotor's wake does to every other, over its skew. */
export interface WakeTable {
  /** Rotors. */
  readonly count: number;
  /** Mean axial velocity over the disc of rotor i by induced speed of rotor j, at [(skew x count + i) x count + j]. */
  readonly influence: Float64Array;
}

/** Skews up to this [rad], evenly, and held there: in a flatter wake the discs behind would cut the tube's skin. */
const FLATTEST = 1.5;
/** Nodes; read between by straight lines, to a hundredth. */
const SKEWS = 21;
/** Mean over a disc, exact to fifth order: Abramowitz and Stegun 25.4.61, seven points. */
const DISC: readonly (readonly [x: number, y: number, weight: number])[] = [
  [0, 0, 1 / 4],
  ...[0, 1, 2, 3, 4, 5].map((k): readonly [number, number, number] => [
    Math.sqrt(2 / 3) * Math.cos((k * Math.PI) / 3),
    Math.sqrt(2 / 3) * Math.sin((k * Math.PI) / 3),
    1 / 8,
  ]),
];

/**
 * Lays by the influence of every rotor's wake on every other, for flight along x. Made once for a layout. A coaxial pair is left
 * out, as its discs stand in each other's tubes: `wake.ts` has it. Canted rotors count as upright.
 */
export function wakeTable(
  stations: readonly Pick<Station, 'position' | 'propDiameter' | 'inWakeOf'>[],
): WakeTable {
  const count = stations.length;
  const influence = new Float64Array(SKEWS * count * count);
  // Pairs that lie alike, or as each other's mirror image, are computed once.
  const known = new Map<string, Float64Array>();
  stations.forEach((target, i) => {
    stations.forEach((source, j) => {
      if (i === j || target.inWakeOf === j || source.inWakeOf === i) return;
      const [x, y, z] = subtract3(target.position, source.position);
      const key = [x, Math.abs(y), z, target.propDiameter, source.propDiameter]
        .map((value) => value.toPrecision(9))
        .join();
      const overSkew = known.get(key) ?? pairInfluence(target, source);
      known.set(key, overSkew);
      overSkew.forEach((value, k) => {
        influence[(k * count + i) * count + j] = value;
      });
    });
  });
  return { count, influence };
}

function pairInfluence(
  target: Pick<Station, 'position' | 'propDiameter'>,
  source: Pick<Station, 'position' | 'propDiameter'>,
): Float64Array {
  const radius = source.propDiameter / 2;
  const size = target.propDiameter / source.propDiameter;
  const [x, y, z] = subtract3(target.position, source.position);
  return Float64Array.from({ length: SKEWS }, (_, k) => {
    const skew = (FLATTEST * k) / (SKEWS - 1);
    let mean = 0;
    for (const [px, py, weight] of DISC) {
      mean += weight * skewedTube(x / radius + size * px, y / radius + size * py, z / radius, skew);
    }
    return mean;
  });
}

/** What a wake is told by. */
export interface WakeSource {
  /** At its own disc [m/s]. */
  readonly inducedSpeed: number;
  /** Through its disc, all in all, and along it [m/s]. */
  readonly throughSpeed: number;
  readonly edgewiseSpeed: number;
}

/**
 * Axial speed that the wakes of all others add at each disc [m/s], positive as a climb.
 *
 * @param sources one a station
 */
export function writeWash(table: WakeTable, sources: readonly WakeSource[], out: Float64Array): void {
  const { count, influence } = table;
  out.fill(0);
  for (let j = 0; j < count; j++) {
    const source = sources[j];
    if (source === undefined || !(source.inducedSpeed > 0)) continue;
    const skew = Math.atan2(source.edgewiseSpeed, Math.max(source.throughSpeed, 0));
    const place = Math.min(skew / FLATTEST, 1) * (SKEWS - 1);
    const row = Math.min(Math.floor(place), SKEWS - 2);
    const share = place - row;
    for (let i = 0; i < count; i++) {
      const at = (row * count + i) * count + j;
      const below = influence[at] as number;
      const above = influence[at + count * count] as number;
      out[i] = (out[i] as number) + source.inducedSpeed * (below + share * (above - below));
    }
  }
}
