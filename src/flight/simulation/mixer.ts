import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { settledSpeed } from '../reserve/spinUp.ts';
import { type Wrench, wrenchPerNewton } from '../reserve/wrench.ts';
import type { RotorLoads } from '../types.ts';
import type { PreparedCraft } from './prepare.ts';
import type { RotorDrive, SimulatedRotor } from './types.ts';

/** What the flight controller knows of its craft: from moments and lift to each drive's command. */
export interface Mixer {
  /** Net thrust of each rotor over roll, pitch, yaw [N/(N m)] and lift [N/N]: the pseudo-inverse. */
  readonly shares: readonly Wrench[];
  /** Net thrust over speed squared, at the static hover speed [N s2]. */
  readonly thrustFactor: readonly number[];
  /** Torque over speed squared there [N m s2]. */
  readonly torqueFactor: readonly number[];
  /** Net thrusts between which each drive can be asked, static and settled [N]. */
  readonly lowestThrust: readonly number[];
  readonly highestThrust: readonly number[];
  /** Net thrusts and speeds that carry the craft level in still air [N], [rad/s]. */
  readonly hoverThrust: readonly number[];
  readonly hoverSpeed: readonly number[];
}

/** Above this no propeller of ours turns [rad/s]. */
const FASTEST = 20000;

/**
 * The plain mixer: the Moore-Penrose inverse of the wrench matrix about the true centre of gravity.
 *
 * Torque over thrust follows from the hover point, which follows from the mixer: two rounds settle it.
 *
 * @returns words when the motors cannot choose roll, pitch, yaw and lift freely, or hover is out of reach
 */
export function makeMixer(craft: PreparedCraft): Outcome<Mixer> {
  const { model, rotors } = craft;
  const weight = model.mass * model.gravity;
  let factors = rotors.map(({ rotor }) => factorsAt(rotor, weight / rotors.length));
  for (let round = 0; ; round++) {
    const known: HoverFactors[] = [];
    for (const factor of factors) {
      if (!factor.ok) return factor;
      known.push(factor.value);
    }
    const columns = rotors.map(({ rotor }, i) => {
      const torquePerThrust = (known[i]?.torqueFactor ?? 0) / (known[i]?.thrustFactor ?? 1);
      return wrenchPerNewton(rotor, model.centreOfGravity, torquePerThrust);
    });
    const shares = pseudoInverse(columns);
    if (!shares.ok) return shares;
    const hoverThrust = shares.value.map((share) => share[3] * weight);
    if (hoverThrust.some((thrust) => !(thrust > 0))) {
      return noSolution('a motor would have to pull down to hover level');
    }
    if (round === 2) {
      return solved({
        shares: shares.value,
        hoverThrust,
        thrustFactor: known.map(({ thrustFactor }) => thrustFactor),
        torqueFactor: known.map(({ torqueFactor }) => torqueFactor),
        hoverSpeed: known.map(({ speed }) => speed),
        lowestThrust: rotors.map(({ rotor }, i) => thrustAtLimit(rotor.drive, known[i], 'lowest')),
        highestThrust: rotors.map(({ rotor }, i) => thrustAtLimit(rotor.drive, known[i], 'highest')),
      });
    }
    factors = rotors.map(({ rotor }, i) => factorsAt(rotor, hoverThrust[i] ?? 0));
  }
}

interface HoverFactors {
  readonly speed: number;
  readonly thrustFactor: number;
  readonly torqueFactor: number;
}

function thrustAtLimit(
  drive: RotorDrive,
  factors: HoverFactors | undefined,
  end: 'lowest' | 'highest',
): number {
  const { thrustFactor, torqueFactor } = factors ?? { thrustFactor: 0, torqueFactor: 0 };
  if (drive.kind === 'lag') return thrustFactor * drive[`${end}Speed`] ** 2;
  return thrustFactor * settledSpeed({ ...drive, torqueFactor }, drive[`${end}Voltage`]) ** 2;
}

function factorsAt(rotor: SimulatedRotor, netThrust: number): Outcome<HoverFactors> {
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  const short = (speed: number): number => {
    rotor.rotor(speed, 0, loads);
    return loads.thrust * (1 - rotor.downloadShare) - netThrust;
  };
  const speed = bracketedRoot(short, 1, FASTEST, 1e-9);
  if (!speed.ok) return noSolution(`a rotor does not give ${netThrust.toFixed(2)} N at any speed`);
  rotor.rotor(speed.value, 0, loads);
  return solved({
    speed: speed.value,
    thrustFactor: netThrust / speed.value ** 2,
    torqueFactor: loads.torque / speed.value ** 2,
  });
}

/** B' (B B')^-1 for the 4 x n matrix whose columns are given; rows are scaled first, lift and moments differ in size. */
function pseudoInverse(columns: readonly Wrench[]): Outcome<readonly Wrench[]> {
  const size = [0, 1, 2, 3].map((r) => Math.max(...columns.map((c) => Math.abs(c[r] ?? 0)), 1e-12));
  const entry = (c: readonly number[], r: number): number => (c[r] ?? 0) / (size[r] ?? 1);
  const table = [0, 1, 2, 3].map((r) => [
    ...[0, 1, 2, 3].map((k) => columns.reduce((sum, c) => sum + entry(c, r) * entry(c, k), 0)),
    ...[0, 1, 2, 3].map((k) => (k === r ? 1 : 0)),
  ]);
  for (let c = 0; c < 4; c++) {
    const rest = table.slice(c).sort((a, b) => Math.abs(b[c] ?? 0) - Math.abs(a[c] ?? 0));
    table.splice(c, 4 - c, ...rest);
    const row = table[c] ?? [];
    const pivot = row[c] ?? 0;
    if (Math.abs(pivot) < 1e-9)
      return noSolution('the motors cannot choose roll, pitch, yaw and lift freely');
    table.forEach((other, r) => {
      if (r === c) return;
      const factor = (other[c] ?? 0) / pivot;
      table[r] = other.map((value, k) => value - factor * (row[k] ?? 0));
    });
    table[c] = row.map((value) => value / pivot);
  }
  const share = (column: readonly number[], k: number): number =>
    [0, 1, 2, 3].reduce((sum, r) => sum + entry(column, r) * (table[r]?.[4 + k] ?? 0), 0) / (size[k] ?? 1);
  return solved(columns.map((c): Wrench => [share(c, 0), share(c, 1), share(c, 2), share(c, 3)]));
}
