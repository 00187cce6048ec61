import type { PackSource } from '../drive/types.ts';
import type { Circuit } from './circuit.ts';
import { currentAtCutOff } from './cutOff.ts';
import { type Drain, drain } from './drain.ts';
import { currentOfCurve, type DutyCurve, dutyCurve } from './dutyCurve.ts';
import { emptySupply, feed, type Supply } from './feed.ts';
import type { HoverTrim } from './hoverTrim.ts';
import { emptyLoad, type Load, loadForThrusts, rehang } from './load.ts';
import { sourceAt } from './operatingPoint.ts';
import { loadForDuties } from './throttle.ts';
import type { Style, StyleBin } from './types.ts';

/** Minutes flown in a style. */
export interface StyleFlight extends Drain {
  readonly style: string;
  /** Duration over hover duration from the same pack. */
  readonly ofHover: number;
  /** Root of the mean square of the pack current [A]: what heats wires. Its excess over the mean as on a half-full pack. */
  readonly heatingCurrent: number;
  /** Lowest pack voltage within the style's pulses [V]. */
  readonly lowestVoltage: number;
  /** Charge from which on bursts are eased to keep the cells at their cut-off, 1 full; absent when none is. */
  readonly easedFrom?: number;
  /** What the motors turn at in each bin of thrust, whatever feeds them; in the order of the bins. */
  readonly loads: readonly Load[];
}

const SLICES = 8;
/** Pulses ride on the style's mean current, not the hover's, so they sag a little deeper than a punch does. */
const BELOW = 0.85;

const nearHalf = (charge: number): boolean => Math.abs(charge - 0.5) <= 0.5 / SLICES;

interface BinLoad {
  readonly bin: StyleBin;
  readonly load: Load;
  /** False when the propellers cannot give it or the bin asks for a throttle. */
  readonly byThrust: boolean;
  /** Duties for a throttle, and for a demand beyond reach. */
  readonly duties: Float64Array;
  /** What these draw over bus voltage; made when first asked for. */
  curve: { readonly made: DutyCurve | undefined } | undefined;
}

/**
 * Flies a style from full to the landing reserve. Demands are static: the thrust is asked of the motors in
 * still air, in the proportions of the hover trim. Demands that a sagging pack cannot meet are flown at
 * full throttle. Pulses ride on the polarisation of the mean current; one that would pull the terminals below the
 * cut-off is eased to the current that keeps them there, as a pilot eases the stick. The flight ends where the hover alone
 * cannot be held at the cut-off.
 *
 * @param hover the same pack flown in a hover
 * @param lowestBus bus voltage of a full throttle at the landing reserve [V]
 * @param near the same style flown by nearly the same aircraft, to start from
 * @param sameAir when its rotors are asked for exactly the same
 * @param styleScale stretches the current that the style asks above the hover
 */
export function styleFlight(
  circuit: Circuit,
  trim: HoverTrim,
  style: Style,
  reserve: number,
  styleScale: number,
  hover: Drain,
  lowestBus: number,
  near?: StyleFlight,
  sameAir = false,
): StyleFlight {
  const shares = style.bins.reduce((sum, bin) => sum + bin.share, 0);
  if (!(Math.abs(shares - 1) <= 1e-6)) {
    throw new RangeError(`shares of style ${style.name} must add to 1; found ${shares}`);
  }
  const supply = emptySupply(circuit.branches.length);
  const bins = style.bins.map((bin, k) => binLoad(circuit, trim, bin, near?.loads[k], sameAir));
  const highestBus = sourceAt(circuit, 1).emf;
  let excess = 1;
  let lowest = Number.POSITIVE_INFINITY;
  let easedFrom: number | undefined;

  const askedOf = (entry: BinLoad, source: PackSource): number | undefined => {
    if (entry.byThrust && feed(circuit, source, entry.load, supply) === 'fed') return supply.packCurrent;
    entry.curve ??= { made: dutyCurve(circuit, entry.duties, BELOW * lowestBus, highestBus) };
    const current = entry.curve.made && currentOfCurve(entry.curve.made, circuit, source);
    return current ?? heldCurrent(circuit, source, entry.duties);
  };
  const flown = drain(circuit, reserve, SLICES, (charge, settled) => {
    const before = settled === 0 ? hover.meanCurrent : settled;
    const source = sourceAt(circuit, charge, before);
    const need = hoverCurrent(circuit, trim, charge, supply);
    if (need === undefined) return undefined;
    const most = Math.max(currentAtCutOff(circuit.pack, source), need);
    let mean = 0;
    let square = 0;
    let largest = 0;
    let least = 0;
    for (const entry of bins) {
      const { share } = entry.bin;
      const asked = askedOf(entry, source);
      if (asked === undefined) return undefined;
      const stretched = need + styleScale * (asked - need);
      if (stretched > most) easedFrom ??= charge;
      const current = Math.min(stretched, most);
      mean += share * current;
      square += share * current * current;
      least += 0.05 * share * asked;
      largest = Math.max(largest, current);
    }
    lowest = Math.min(lowest, source.emf - source.resistance * largest);
    if (nearHalf(charge)) excess = Math.sqrt(square) / mean;
    return { mean: Math.max(mean, least), need };
  });
  return {
    ...flown,
    style: style.name,
    ofHover: hover.duration > 0 ? flown.duration / hover.duration : 0,
    heatingCurrent: flown.meanCurrent * excess,
    lowestVoltage: Number.isFinite(lowest) ? lowest : 0,
    ...(easedFrom === undefined ? {} : { easedFrom }),
    loads: bins.map(({ load }) => load),
  };
}

/** Pack current at duties, solved directly [A]; undefined when the pack cannot hold its electronics up. */
function heldCurrent(circuit: Circuit, source: PackSource, duties: Float64Array): number | undefined {
  const supply = emptySupply(duties.length);
  const found = loadForDuties(circuit, source, duties, 0, emptyLoad(duties.length), supply);
  return found.ok ? supply.packCurrent : undefined;
}

/** Pack current of a steady hover at a charge [A]; undefined when it cannot be fed. */
export function hoverCurrent(
  circuit: Circuit,
  trim: HoverTrim,
  charge: number,
  supply: Supply,
): number | undefined {
  const fed = feed(circuit, sourceAt(circuit, charge), trim.load, supply);
  return fed === 'fed' ? supply.packCurrent : undefined;
}

function binLoad(
  circuit: Circuit,
  trim: HoverTrim,
  bin: StyleBin,
  near: Load | undefined,
  sameAir: boolean,
): BinLoad {
  const count = circuit.branches.length;
  const load = emptyLoad(count);
  const duties = new Float64Array(count).fill(1);
  if ('throttle' in bin) {
    circuit.branches.forEach((branch, i) => {
      duties[i] = branch.idleDuty + (1 - branch.idleDuty) * bin.throttle;
    });
    return { bin, load, byThrust: false, duties, curve: undefined };
  }
  // Where the rotors could not give it the speeds of a first try are left behind, of no use to anybody.
  const known = near?.voltage.every((volts) => volts > 0);
  if (near && known && sameAir) {
    return { bin, load: rehang(circuit, near), byThrust: true, duties, curve: undefined };
  }
  const faster = Math.sqrt(bin.thrustToWeight);
  load.angularSpeed.set(
    near && known ? near.angularSpeed : trim.load.angularSpeed.map((speed) => speed * faster),
  );
  const thrusts = trim.thrusts.map((thrust) => thrust * bin.thrustToWeight);
  const byThrust = loadForThrusts(circuit, thrusts, 0, load).ok;
  return { bin, load, byThrust, duties, curve: undefined };
}
