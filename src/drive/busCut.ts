import { advance, type BusModel, busStep, riseOf } from './busCircuit.ts';

/** The bus after its draw has stopped at once. */
export interface BusCut {
  /** Highest bus voltage over the pack's without load [V], >= 0. */
  readonly rise: number;
  /** When it stands there [s]; absent where the bus only comes back to the pack's voltage. */
  readonly time?: number;
}

/** In a radian of the quickest swing: its crest is read to a part in a thousand. */
const STEPS_A_RADIAN = 12;
/** Radians of the slowest swing looked at: undamped it has turned after pi/2 to pi. */
const LONGEST = 6;

/**
 * The controllers draw a steady current, sag and all, and stop at once. The leads' current goes on and charges the capacitors:
 * lossless and with one capacitor the bus swings i sqrt(L/C) over the pack. The sag before it, i R, is in it: with R above
 * 2 sqrt(L/C) it does not overshoot at all.
 *
 * @param current before [A]
 */
export function cutOnBus(model: BusModel, current: number): BusCut {
  if (!(current > 0 && model.quickest > 0)) return { rise: 0 };
  const step = model.quickest / STEPS_A_RADIAN;
  const steps = Math.ceil((LONGEST * model.slowest) / step);
  const stepping = busStep(model, step);
  let state = model.atRest.map((value) => value * current);
  let next = new Float64Array(model.size);
  let rise = riseOf(model, state, 0);
  let crest = 0;
  // Once no current is left to charge them, none will rise any more.
  for (let n = 1; n <= steps && (state[0] as number) > 0; n++) {
    advance(stepping, state, 0, 0, next);
    [state, next] = [next, state];
    const here = riseOf(model, state, 0);
    if (here > rise) [rise, crest] = [here, n];
  }
  return rise > 0 ? { rise, time: crest * step } : { rise: 0 };
}
