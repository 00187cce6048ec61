import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { linearProgram } from '../../numerics/linearProgram.ts';
import { noSolution } from '../../numerics/outcome.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import { wrenchPerNewton } from '../reserve/wrench.ts';
import { besideThrust, bodyMoments, torquePerThrust } from './momentShares.ts';
import type { TrimRound, TrimRounds } from './trimRounds.ts';
import type { ForwardCraft } from './types.ts';

/** Shares of the thrust at which every rotor is looked at to begin with. */
const WIDE = [0, 0.01, 0.02, 0.04, 0.06, 0.09, 0.12, 0.16, 0.2, 0.25, 0.32, 0.4, 0.5, 0.65, 0.8, 1];
/** Times that the thrusts' wakes are laid anew at one tilt. */
const WAKES = 3;
/** Lack that straight lines between those shares cannot make: they miss a torque by less than a hundredth. */
const PROVEN = 0.02;
/** Steps about the thrusts found, first and last; each is this part of the one before. */
const [FIRST, LAST, FINER] = [0.03, 1e-7, 0.75];
/** Farthest that the tilt moves at once [rad]. */
const LEAN = 0.02;
/** What is left of a moment, over weight times arm or reaction torque, that counts as none. */
const BALANCED = 1e-6;
/** Of the tilt [rad], and of a wash over the hover's induced speed: their table is no better than that. */
const [LEVEL, BLOWN] = [1e-6, 1e-2];
/** Of the square of a share, over a lack: small enough to give way to it. */
const SQUARE = 1e-3;

/**
 * For thrusts that do not settle on shares of fixed torque over thrust: where nearly all that some motors have goes to one moment,
 * a little less thrust turns that ratio, and the shares with it. Each rotor's moments hang on its own thrust, once the wakes are
 * laid; between some thrusts they are taken as straight lines, and a linear program finds the thrusts that lack least of any moment
 * (separable programming: Hillier and Lieberman, Introduction to Operations Research, from memory), then of least square sum.
 *
 * That program may mix any two thrusts of a rotor, so what it cannot balance no thrusts can, in the wakes that they make: that is
 * told. What it can is narrowed down by smaller and smaller steps about it. A hundred times slower than `settle`.
 *
 * @returns undefined when the narrowing leaves a moment, or washes blow to and fro
 */
export function searchPieces(craft: ForwardCraft, rounds: TrimRounds): TrimRound | undefined {
  const last = 2 * rounds.stations;
  const guess = rounds.start();
  let lacks = 0;
  const lackAt = (tilt: number): number => {
    guess[last] = tilt;
    let lack = 0;
    for (let k = 0; k < WAKES; k++) {
      const columns = WIDE.map((share) => columnsAt(craft, rounds, guess, () => share));
      const found = leastLack(craft, columns);
      guess.set(found.shares);
      lacks = found.lacks;
      lack = layWakes(rounds, guess, 1).lack;
    }
    return lack;
  };
  const level = bracketedRoot(lackAt, 0, Math.PI / 2, LEAN / 20);
  if (!level.ok) return undefined;
  lackAt(level.value);
  return lacks > PROVEN ? unbalanced(rounds.round(guess)) : narrowed(craft, rounds, guess);
}

/** Thrusts, wakes and tilt moved together about a guess, which is left at the last; undefined when something is left over. */
function narrowed(craft: ForwardCraft, rounds: TrimRounds, guess: Float64Array): TrimRound | undefined {
  const { stations } = rounds;
  const last = 2 * stations;
  let lacks = 0;
  for (let step = FIRST; step > LAST; step *= FINER) {
    const about = guess.slice();
    const columns = [-2, -1, 0, 1, 2].map((k) =>
      columnsAt(craft, rounds, guess, (i) => Math.max(0, (about[i] as number) + k * step)),
    );
    const next = leastLack(craft, columns);
    guess.set(next.shares);
    lacks = next.lacks;
    const { moved } = layWakes(rounds, guess, 0.5);
    const lean = Math.min(Math.max(moved[last] as number, -LEAN), LEAN);
    guess[last] = Math.min(Math.max(0, (guess[last] as number) + lean), Math.PI / 2);
  }
  const found = rounds.round(guess);
  const blown = found.moved.slice(stations, last).every((moved) => Math.abs(moved) <= BLOWN);
  if (lacks > BALANCED || Math.abs(found.moved[last] as number) > LEVEL || !blown) return undefined;
  // Shares of fixed ratios may be said to be out of reach where these are not.
  if (found.whyNot?.because !== 'moments') return found;
  const { whyNot: _, ...balanced } = found;
  return balanced;
}

/** Moves the washes of a guess by this part of the way to those that its thrusts make. */
function layWakes(rounds: TrimRounds, guess: Float64Array, part: number): TrimRound {
  const round = rounds.round(guess);
  for (let i = rounds.stations; i < 2 * rounds.stations; i++) {
    guess[i] = (guess[i] as number) + part * (round.moved[i] as number);
  }
  return round;
}

/** A rotor at a share of the thrust: its moments beside those of all else, over what they are measured by. */
interface Column {
  readonly station: number;
  readonly share: number;
  /** Share of the thrust, 1 when straight up; roll, pitch, and yaw where no servo holds it. */
  readonly does: readonly number[];
}

interface Columns {
  readonly each: readonly Column[];
  /** What the rotors must do: 1, and the body's moments taken back. */
  readonly wanted: readonly number[];
}

/** Every rotor at a share of its own, in the washes and at the tilt of a guess. */
function columnsAt(
  craft: ForwardCraft,
  rounds: TrimRounds,
  guess: Float64Array,
  shareOf: (station: number) => number,
): Columns {
  const { model, circuit } = craft;
  const { stations, centreOfGravity } = model;
  const shares = guess.map((value, i) => (i < stations.length ? shareOf(i) : value));
  const { state } = rounds.round(shares);
  const servo = stations.some(({ servoTilt }) => servoTilt !== undefined);
  const measures = measuresOf(craft).slice(0, servo ? 2 : 3);
  const thrust = Math.max(state.thrust, 1e-6 * circuit.weight);
  const each = stations.map((station, i): Column => {
    const pulls = state.thrusts[i] as number;
    const own = besideThrust(craft, state, i);
    const ratio = torquePerThrust(craft, state, i);
    const [roll, pitch, yaw, lift] = wrenchPerNewton(station, centreOfGravity, ratio);
    const turn = -station.spin * ((state.load.torque[i] as number) - ratio * pulls);
    const moments = [roll * pulls + own[0], pitch * pulls + own[1], yaw * pulls + own[2] + turn];
    return {
      station: i,
      share: shares[i] as number,
      does: [(lift * pulls) / thrust, ...measures.map((measure, a) => (moments[a] as number) / measure)],
    };
  });
  const body = bodyMoments(craft, state);
  return { each, wanted: [1, ...measures.map((measure, a) => -(body[a] as number) / measure)] };
}

/** Weight times arm for roll and pitch, reaction torque of the hover for yaw [N m]. */
function measuresOf({ model, circuit, trim }: ForwardCraft): readonly [number, number, number] {
  const arm = model.stations.reduce(
    (most, { position }) => Math.max(most, Math.hypot(position[0], position[1])),
    1e-3,
  );
  const torque = trim.load.torque.reduce((sum, value) => sum + value, 0);
  return [circuit.weight * arm, circuit.weight * arm, torque];
}

/** Shares between the columns of each rotor that lack least, and what they lack. */
function leastLack(
  { model }: ForwardCraft,
  columns: readonly Columns[],
): { readonly shares: Float64Array; readonly lacks: number } {
  const each = columns.flatMap((one) => one.each);
  const wanted = columns[0]?.wanted ?? [];
  const moments = wanted.length - 1;
  // After the columns two a moment: how much is lacking, and how much is over.
  const ends = (row: number): readonly number[] =>
    Array.from({ length: 2 * moments }, (_, k) => (Math.floor(k / 2) + 1 === row ? 1 - 2 * (k % 2) : 0));
  const found = linearProgram({
    objective: [
      ...each.map(({ share }) => -SQUARE * share * share),
      ...new Array<number>(2 * moments).fill(-1),
    ],
    rows: [
      ...wanted.map((_, row) => [...each.map(({ does }) => does[row] as number), ...ends(row)]),
      ...model.stations.map((_, i) => [
        ...each.map(({ station }) => (station === i ? 1 : 0)),
        ...new Array<number>(2 * moments).fill(0),
      ]),
    ],
    right: [...wanted, ...model.stations.map(() => 1)],
    upper: new Array<number>(each.length + 2 * moments).fill(Number.POSITIVE_INFINITY),
  });
  const shares = new Float64Array(model.stations.length);
  if (!found.ok) return { shares: shares.fill(1 / shares.length), lacks: Number.POSITIVE_INFINITY };
  each.forEach(({ station, share }, k) => {
    shares[station] = (shares[station] as number) + share * (found.value[k] as number);
  });
  return { shares, lacks: found.value.slice(each.length).reduce((sum, value) => sum + value, 0) };
}

/** The nearest thrusts as a stand-in, with why; a rotor that cannot comes first, as in every round. */
function unbalanced(round: TrimRound): TrimRound {
  if (round.whyNot !== undefined && round.whyNot.because !== 'moments') return round;
  const at = withUnit(round.state.speed.toFixed(1), 'm/s');
  return {
    ...round,
    whyNot: {
      ...noSolution(
        `at ${at} no thrusts balance the moments of drag, rotors and reaction torques all at once`,
      ),
      because: 'moments',
    },
  };
}
