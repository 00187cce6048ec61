import { andersonMixer } from '../../numerics/anderson.ts';
import { SETTLED, STEEPEST, type TrimRound, type TrimRounds } from './trimRounds.ts';

/** Rounds that the mixing looks back on. */
const MEMORY = 5;
const ROUNDS = 40;

/**
 * Shares, washes and tilt moved together by Anderson's mixing until none moves. Quick, and without a guarantee.
 *
 * @param guess to start from; left as the last guess
 * @param tiltHeld leaves the tilt as it is guessed
 * @param enough unrest that counts as none
 * @returns undefined when it has not settled
 */
export function settle(
  rounds: TrimRounds,
  guess: Float64Array,
  tiltHeld = false,
  enough = SETTLED,
): TrimRound | undefined {
  const { stations } = rounds;
  const last = 2 * stations;
  const mixed = andersonMixer(MEMORY);
  for (let k = 0; k < ROUNDS; k++) {
    const round = rounds.round(guess);
    const { moved } = round;
    if (tiltHeld) moved[last] = 0;
    if (rounds.still || rounds.unrest(moved) <= enough) return round;
    const next = mixed(guess, moved);
    const tilt = next[last] as number;
    const sound =
      next.every((value, i) => Number.isFinite(value) && (i >= stations || value >= 0)) &&
      tilt >= 0 &&
      (tiltHeld || tilt < Math.PI / 2);
    if (sound) guess.set(next);
    else {
      for (let i = 0; i < guess.length; i++) guess[i] = (guess[i] as number) + (moved[i] as number);
      if (!tiltHeld) guess[last] = Math.min(Math.max(guess[last] as number, 0), STEEPEST);
    }
  }
  return undefined;
}
