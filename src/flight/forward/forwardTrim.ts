import type { DragAreas } from '../../airframe/types.ts';
import { type NoSolution, noSolution } from '../../numerics/outcome.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import type { Circuit } from '../circuit.ts';
import type { HoverTrim } from '../hoverTrim.ts';
import type { Load } from '../load.ts';
import type { FlightModel } from '../types.ts';
import type { WakeTable } from '../wakes/wakeTable.ts';
import type { BarDrag } from './bodyDrag.ts';
import type { ObliqueRotor, ObliqueState } from './edgewise.ts';
import { searchTilt } from './searchTilt.ts';
import { settle } from './settle.ts';
import { CRAWL, type TrimRound, trimRounds } from './trimRounds.ts';

/** An aircraft in still air, ready to be asked at many speeds. */
export interface ForwardCraft {
  readonly model: FlightModel;
  readonly circuit: Circuit;
  readonly trim: HoverTrim;
  /** Of everything bluff: plates, pack, cameras, motors. */
  readonly drag: DragAreas;
  /** Arms and other slender bars. */
  readonly bars: readonly BarDrag[];
  /** Where that drag acts [m]. */
  readonly dragCentre: Vector3;
  readonly dragScale: number;
  readonly oblique: ObliqueRotor;
  /** Of the rotors on one another; none when absent. */
  readonly wakes?: WakeTable;
}

/** Level or climbing flight at a speed, motors turning as needed, whatever feeds them. */
export interface ForwardTrim {
  /** Through the air, level [m/s]. */
  readonly speed: number;
  /** [m/s] */
  readonly climb: number;
  /** Nose down, the thrust leaning forward [rad], 0 to pi/2. */
  readonly tilt: number;
  /** Net of download, all motors [N]. */
  readonly thrust: number;
  /** Net of download, one a station [N]. */
  readonly thrusts: Float64Array;
  /** Drag of body and bars along the aircraft's own x axis [N]. */
  readonly bodyDrag: number;
  /** In-plane drag of all propellers [N]. */
  readonly rotorDrag: number;
  /** Push of the air on the top of the tilted body, against the thrust [N]. */
  readonly download: number;
  readonly load: Load;
  /** One a station. */
  readonly rotors: readonly ObliqueState[];
  /** Axial speed that the other rotors' wakes add at each disc [m/s]; upwash is negative. */
  readonly wash: Float64Array;
}

/** Why there is no level flight at a speed. */
export interface NoTrim extends NoSolution {
  /**
   * `too slow`: a rotor would turn more slowly than is known of it, `too little thrust`: it cannot pull so hard, `moments`: no
   * thrusts balance them, `unfound`: the search did not end, which says nothing about the craft.
   */
  readonly because: 'too slow' | 'too little thrust' | 'moments' | 'unfound';
}

/**
 * Steady flight, level or climbing. In the tilted aircraft's axes, with D the force of the air on body and arms:
 *
 *   forward   W sin(tilt) = D_x + rotor in-plane drag
 *   upward    T = W cos(tilt) + D_z
 *   moments   thrusts, reaction torques, hub moments, body drag at its centre, in-plane forces at the discs: none
 *             about the centre of gravity
 *
 * D by `writeBodyForce`: bluff parts by the whole wind, bars by what crosses them. Rotors stand in each other's wakes
 * (`wakes/`). Side forces of the discs turn it but do not push it aside: in pairs they cancel, and what an odd rotor leaves would
 * take a hair of bank. Canted rotors are taken as upright, and a tail servo as holding whatever yaw is left.
 *
 * Upright the first line's left side is nothing, lying flat its right side: some tilt always meets it, once a rotor that cannot is
 * held at its slowest or fastest and moments out of reach are met as far as they can be. So where `settle` strays or ends at
 * such a stand-in `searchTilt` goes through all tilts, and only a stand-in at every one that balances means no trim.
 *
 * @param speed through the air, level [m/s], >= 0
 * @param climb [m/s], >= 0: sinking rotors meet their own wakes (`solveRotor` knows how far that can be answered)
 * @throws RangeError for a climb below 0
 */
export function forwardTrim(
  craft: ForwardCraft,
  speed: number,
  climb = 0,
): { readonly ok: true; readonly value: ForwardTrim } | NoTrim {
  if (!(climb >= 0)) throw new RangeError(`climb must be at least 0 m/s; found ${climb} m/s`);
  const rounds = trimRounds(craft, speed, climb);
  const quick = settle(rounds, rounds.start());
  if (quick !== undefined && (quick.whyNot === undefined || speed <= CRAWL)) return told(quick);
  const searched = searchTilt(rounds);
  if (searched !== undefined) return told(searched);
  return {
    ...noSolution(
      `at ${withUnit(speed.toFixed(1), 'm/s')} the search for thrusts and tilt did not end; that says nothing about the craft`,
    ),
    because: 'unfound',
  };
}

const told = ({ state, whyNot }: TrimRound): { readonly ok: true; readonly value: ForwardTrim } | NoTrim =>
  whyNot === undefined
    ? { ok: true, value: state }
    : { ...noSolution(whyNot.reason), because: whyNot.because };
