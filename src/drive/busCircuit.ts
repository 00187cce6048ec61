import { matrixExponential } from '../numerics/matrixExponential.ts';

/** A capacitor as the bus feels it. */
export interface BusCapacitor {
  /** [F], > 0 */
  readonly capacitance: number;
  /** In series [ohm], > 0 */
  readonly resistance: number;
}

/** A pack behind its leads, and what hangs on the bus beside the controllers. */
export interface Bus {
  /** Of the pack without load [V]. */
  readonly packVoltage: number;
  /** Of pack, plug and leads, at once after a change of current [ohm], >= 0; above 0 where there is no inductance. */
  readonly sourceResistance: number;
  /** Of the leads out and back, `leadInductance` [H], >= 0. */
  readonly inductance: number;
  /** All side by side, the controllers' own included; at least one. */
  readonly capacitors: readonly BusCapacitor[];
}

/**
 * Inductance of a pair of leads [H] by length of the pair [m]: 0.6 uH/m for two round wires side by side,
 * (mu0/pi) ln(2 s / d) + internal part with spacing s about 1.5 wire diameters d (textbook two-wire line).
 */
const INDUCTANCE_PER_LENGTH = 0.6e-6; // [H/m]

export const leadInductance = (pairLength: number): number => INDUCTANCE_PER_LENGTH * pairLength;

/**
 * A bus in linear terms. Kirchhoff's laws for the leads' current i, every capacitor's own voltage w_k behind its r_k, the bus
 * voltage y, both over the pack's, and the current q that the controllers draw,
 *
 *   L i' = -R i - y,   C_k w_k' = (y - w_k)/r_k,   i = q + sum (y - w_k)/r_k
 *
 * make x' = A x + B q and y = c x - r q with x = (i, w_1, w_2, ...), without i where L is nothing.
 */
export interface BusModel {
  readonly size: number;
  /** A, row-major. */
  readonly rates: Float64Array;
  /** B */
  readonly forcing: Float64Array;
  /** c */
  readonly reads: Float64Array;
  /** What the bus gives way at once, r [ohm]. */
  readonly stiffness: number;
  /** x at which the bus rests while q = 1 A is drawn. */
  readonly atRest: Float64Array;
  /** The quickest swing, over a radian [s]; nothing swings without inductance: 0. */
  readonly quickest: number;
  /** The slowest [s]. */
  readonly slowest: number;
}

/** @throws RangeError for no capacitor, one without capacitance or resistance, or a source without inductance and resistance */
export function busModel(bus: Bus): BusModel {
  check(bus);
  const { inductance, sourceResistance } = bus;
  const capacitors = merged(bus.capacitors);
  const first = inductance > 0 ? 1 : 0;
  const size = first + capacitors.length;
  const conductance =
    capacitors.reduce((sum, { resistance }) => sum + 1 / resistance, 0) +
    (first === 1 ? 0 : 1 / sourceResistance);
  const reads = new Float64Array(size);
  if (first === 1) reads[0] = 1 / conductance;
  for (const [k, { resistance }] of capacitors.entries()) reads[first + k] = 1 / (resistance * conductance);
  const rates = new Float64Array(size * size);
  const forcing = new Float64Array(size);
  if (first === 1) {
    for (let j = 0; j < size; j++) rates[j] = -(reads[j] as number) / inductance;
    rates[0] = (rates[0] as number) - sourceResistance / inductance;
    forcing[0] = 1 / (conductance * inductance);
  }
  for (const [k, { capacitance, resistance }] of capacitors.entries()) {
    const row = first + k;
    const rate = 1 / (resistance * capacitance);
    for (let j = 0; j < size; j++) rates[row * size + j] = rate * (reads[j] as number);
    rates[row * size + row] = (rates[row * size + row] as number) - rate;
    forcing[row] = -rate / conductance;
  }
  const atRest = new Float64Array(size).fill(-sourceResistance);
  if (first === 1) atRest[0] = 1;
  const least = Math.min(...capacitors.map(({ capacitance }) => capacitance));
  const whole = capacitors.reduce((sum, { capacitance }) => sum + capacitance, 0);
  return {
    size,
    rates,
    forcing,
    reads,
    stiffness: 1 / conductance,
    atRest,
    quickest: Math.sqrt(inductance * least),
    slowest: Math.sqrt(inductance * whole),
  };
}

/** x after a step: Phi x + at q + to (q' - q), exactly, while the draw runs straight from q to q'. */
export interface BusStep {
  readonly phi: Float64Array;
  readonly at: Float64Array;
  readonly to: Float64Array;
}

/**
 * Steps a bus without error of time (C. Van Loan, Computing integrals involving the matrix exponential, IEEE Trans. Automatic
 * Control 23(3), 1978: the forcing's integrals stand beside exp(A h) in the exponential of one larger matrix).
 *
 * @param step [s], > 0
 */
export function busStep({ size, rates, forcing }: BusModel, step: number): BusStep {
  const wide = size + 2;
  const larger = new Float64Array(wide * wide);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) larger[i * wide + j] = step * (rates[i * size + j] as number);
    larger[i * wide + size] = step * (forcing[i] as number);
  }
  larger[size * wide + size + 1] = 1;
  const whole = matrixExponential(larger, wide);
  const phi = new Float64Array(size * size);
  for (let i = 0; i < size; i++) phi.set(whole.subarray(i * wide, i * wide + size), i * size);
  const column = (j: number) => Float64Array.from({ length: size }, (_, i) => whole[i * wide + j] as number);
  return { phi, at: column(size), to: column(size + 1) };
}

/** What the bus stands over the pack [V]. */
export const riseOf = ({ reads, stiffness }: BusModel, state: Float64Array, draw: number): number =>
  dot(reads, state) - stiffness * draw;

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** out = Phi x + at q + to (q' - q); out must not be x. */
export function advance(
  { phi, at, to }: BusStep,
  state: Float64Array,
  draw: number,
  nextDraw: number,
  out: Float64Array,
): void {
  const size = state.length;
  for (let i = 0; i < size; i++) {
    let sum = (at[i] as number) * draw + (to[i] as number) * (nextDraw - draw);
    for (let j = 0; j < size; j++) sum += (phi[i * size + j] as number) * (state[j] as number);
    out[i] = sum;
  }
}

/** Equal capacitors side by side are one. */
function merged(capacitors: readonly BusCapacitor[]): readonly BusCapacitor[] {
  const groups = new Map<string, { one: BusCapacitor; count: number }>();
  for (const one of capacitors) {
    const name = `${one.capacitance} ${one.resistance}`;
    groups.set(name, { one, count: (groups.get(name)?.count ?? 0) + 1 });
  }
  return [...groups.values()].map(({ one, count }) => ({
    capacitance: one.capacitance * count,
    resistance: one.resistance / count,
  }));
}

function check({ capacitors, inductance, sourceResistance }: Bus): void {
  if (capacitors.length === 0) throw new RangeError('capacitors must hold at least one; found none');
  for (const { capacitance, resistance } of capacitors) {
    if (!(capacitance > 0)) throw new RangeError(`capacitance must be above 0 F; found ${capacitance} F`);
    if (!(resistance > 0)) throw new RangeError(`resistance must be above 0 ohm; found ${resistance} ohm`);
  }
  if (!(inductance >= 0)) throw new RangeError(`inductance must be 0 H or more; found ${inductance} H`);
  if (!(sourceResistance >= 0 && (sourceResistance > 0 || inductance > 0))) {
    throw new RangeError(
      `sourceResistance must be 0 ohm or more, and above it without inductance; found ${sourceResistance} ohm`,
    );
  }
}
