import { noSolution } from '../../numerics/outcome.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { searchPieces } from './searchPieces.ts';
import { searchTilt } from './searchTilt.ts';
import { settle } from './settle.ts';
import { type TrimRound, trimRounds } from './trimRounds.ts';
import { CRAWL, type ForwardCraft, type ForwardTrim, type NoTrim } from './types.ts';

export type { ForwardCraft, ForwardTrim, NoTrim } from './types.ts';

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
  const searched = searchTilt(rounds) ?? searchPieces(craft, rounds);
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
