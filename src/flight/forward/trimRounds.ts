import { emptyLoad } from '../load.ts';
import { inducedSpeed } from '../wake.ts';
import { type WakeSource, writeWash } from '../wakes/wakeTable.ts';
import { bluffAreas, writeBodyForce } from './bodyDrag.ts';
import { momentShares } from './momentShares.ts';
import { turnRotors } from './turnRotors.ts';
import { CRAWL, type ForwardCraft, type ForwardTrim, type NoTrim } from './types.ts';

/** Tilt, shares of the thrust, and washes take turns until none moves by more than this (rad, shares). */
export const SETTLED = 1e-9;
/** A wash is settled when a thousand times further off than a share would be: a millionth of the hover's induced speed. */
const WASH_MATTERS = 1e-3;
/** Steepest tilt that a slope is taken at, or that a stray round is put back to [rad]. */
export const STEEPEST = 1.5;

/** One round of the trim: what came of a guess. */
export interface TrimRound {
  readonly state: ForwardTrim;
  /** How far each of the guess is from what it brings about: shares of the thrust, washes, tilt. */
  readonly moved: Float64Array;
  /** Pull of the leaning weight beyond the drag [N]; nothing at a trim. */
  readonly lack: number;
  /** Why this is a stand-in: a rotor at its slowest or fastest, or moments met only in part. Absent when it is none. */
  readonly whyNot?: NoTrim;
}

/**
 * Trim as a fixed point. A guess is a list of shares of the thrust, of washes over a hover's induced speed (one of each a
 * station) and the tilt.
 */
export interface TrimRounds {
  readonly stations: number;
  /** No speed, no climb: the hover, whatever is guessed. */
  readonly still: boolean;
  /** False at no level speed, where there is no tilt to find. */
  readonly leans: boolean;
  /** The hover's shares leaning against the body's drag. */
  readonly start: () => Float64Array;
  /** Its state is overwritten by the next round. */
  readonly round: (guess: Float64Array) => TrimRound;
  /** Largest movement of a round, by what matters. */
  readonly unrest: (moved: Float64Array) => number;
}

/** For a craft at a speed and a climb [m/s]. */
export function trimRounds(craft: ForwardCraft, speed: number, climb: number): TrimRounds {
  const { circuit, bars } = craft;
  const count = circuit.branches.length;
  const bluff = bluffAreas(craft.drag);
  const density = circuit.airDensity * craft.dragScale;
  const force = new Float64Array(3);
  const load = emptyLoad(count);
  load.angularSpeed.set(craft.trim.load.angularSpeed);
  const thrusts = new Float64Array(count);
  const wash = new Float64Array(count);
  const made = new Float64Array(count);
  const hoverSpeed = hoverSpeedOf(craft);
  const still = speed <= CRAWL && climb <= CRAWL;
  const leans = speed > CRAWL;

  const round = (guess: Float64Array): TrimRound => {
    const tilt = guess[2 * count] as number;
    const [sine, cosine] = [Math.sin(tilt), Math.cos(tilt)];
    const along = speed * cosine - climb * sine;
    const through = speed * sine + climb * cosine;
    writeBodyForce(bluff, bars, along, 0, -through, density, force);
    const bodyDrag = -(force[0] as number);
    const download = force[2] as number;
    const thrust = circuit.weight * cosine + download;
    for (let i = 0; i < count; i++) {
      thrusts[i] = Math.max(guess[i] as number, 0) * thrust;
      wash[i] = (guess[count + i] as number) * hoverSpeed;
    }
    // Only on the way to the answer does a steep climb blow along the discs from behind.
    const turned = turnRotors(craft, thrusts, through, Math.max(along, 0), wash, load);
    const { rotors, inPlaneForce } = turned;
    const state: ForwardTrim = {
      speed,
      climb,
      tilt,
      thrust,
      thrusts,
      bodyDrag,
      rotorDrag: inPlaneForce,
      download,
      load,
      rotors,
      wash,
    };
    const asked = momentShares(craft, state, guess);
    const moved = new Float64Array(2 * count + 1);
    for (let i = 0; i < count; i++) moved[i] = (asked.shares[i] as number) - (guess[i] as number);
    if (craft.wakes !== undefined) {
      writeWash(craft.wakes, wakeSources(state), made);
      for (let i = 0; i < count; i++) {
        moved[count + i] = (made[i] as number) / hoverSpeed - (guess[count + i] as number);
      }
    }
    const lack = circuit.weight * sine - bodyDrag - inPlaneForce;
    // Drag along the aircraft falls about as the cosine of the tilt.
    const slope = circuit.weight * cosine + (bodyDrag + inPlaneForce) * Math.tan(Math.min(tilt, STEEPEST));
    if (leans) moved[2 * count] = -lack / slope;
    const whyNot = turned.whyNot ?? asked.whyNot;
    return whyNot === undefined ? { state, moved, lack } : { state, moved, lack, whyNot };
  };

  const start = (): Float64Array => {
    const guess = new Float64Array(2 * count + 1);
    guess.set(craft.trim.thrusts.map((thrust) => thrust / circuit.weight));
    if (leans) {
      writeBodyForce(bluff, bars, speed, 0, 0, density, force);
      guess[2 * count] = Math.atan2(-(force[0] as number), circuit.weight);
    }
    return guess;
  };

  const unrest = (moved: Float64Array): number => {
    let most = 0;
    for (let i = 0; i < moved.length; i++) {
      const matters = i >= count && i < 2 * count ? WASH_MATTERS : 1;
      most = Math.max(most, Math.abs(moved[i] as number) * matters);
    }
    return most;
  };

  return { stations: count, still, leans, start, round, unrest };
}

/** One induced speed to measure washes by [m/s]. */
function hoverSpeedOf({ circuit }: ForwardCraft): number {
  const area = circuit.branches.reduce((sum, branch) => sum + branch.discArea, 0);
  return inducedSpeed(circuit.weight, 0, circuit.airDensity, area);
}

function wakeSources({ speed, climb, tilt, load, rotors }: ForwardTrim): readonly WakeSource[] {
  const edgewiseSpeed = Math.max(speed * Math.cos(tilt) - climb * Math.sin(tilt), 0);
  return rotors.map((rotor, i) => ({
    inducedSpeed: rotor.inducedSpeed,
    throughSpeed: (load.axialSpeed[i] as number) + rotor.inducedSpeed,
    edgewiseSpeed,
  }));
}
