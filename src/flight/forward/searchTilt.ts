import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { settle } from './settle.ts';
import type { TrimRound, TrimRounds } from './trimRounds.ts';

/** Tilts looked at between upright and flat. */
const STEPS = 12;
/** Unrest of shares and washes, and tilt [rad], at which `settle` may take over. */
const NEAR = 1e-5;

/**
 * Goes through all tilts, shares and washes settled at each, and ends at the first that balances along the way without a stand-in;
 * at the first stand-in that balances when there is none. Ten times slower than `settle`, whose guess it mends.
 *
 * @returns undefined when shares, washes and tilt do not settle where it balances
 */
export function searchTilt(rounds: TrimRounds): TrimRound | undefined {
  const last = 2 * rounds.stations;
  const guess = rounds.start();
  const lackAt = (tilt: number): number => {
    guess[last] = tilt;
    const round = settle(rounds, guess, true, NEAR) ?? rounds.round(guess);
    return round.lack;
  };
  let before = { tilt: 0, lack: lackAt(0), guess: guess.slice() };
  let standIn: Float64Array | undefined;
  for (let k = 1; k <= STEPS; k++) {
    const tilt = ((Math.PI / 2) * k) / STEPS;
    const here = { tilt, lack: lackAt(tilt), guess: guess.slice() };
    if (before.lack < 0 !== here.lack < 0) {
      guess.set(before.guess);
      const root = bracketedRoot(lackAt, before.tilt, here.tilt, NEAR);
      if (root.ok) {
        lackAt(root.value);
        const near = guess.slice();
        const found = settle(rounds, near);
        if (found !== undefined && found.whyNot === undefined) return found;
        if (found !== undefined) standIn ??= near;
      }
      guess.set(here.guess);
    }
    before = here;
  }
  return standIn === undefined ? undefined : settle(rounds, standIn);
}
