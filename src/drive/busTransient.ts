/**
 * Inductance of a pair of leads [H] by length of the pair [m]: 0.6 uH/m for two round wires side by side,
 * (mu0/pi) ln(2 s / d) + internal part with spacing s about 1.5 wire diameters d (textbook two-wire line).
 */
const INDUCTANCE_PER_LENGTH = 0.6e-6; // [H/m]

/** A capacitor as the bus feels it. */
export interface BusCapacitor {
  /** [F], > 0 */
  readonly capacitance: number;
  /** In series [ohm], > 0 */
  readonly resistance: number;
}

export interface BusTransientRequest {
  /** Full pack, no load [V]. */
  readonly packVoltage: number;
  /** Bus current that is cut at once [A]: full throttle to zero. */
  readonly current: number;
  /** From pack to the controllers, one way [m]. */
  readonly leadLength: number;
  /** All on the bus side by side, the controllers' own included; at least one. */
  readonly capacitors: readonly BusCapacitor[];
}

/** In a radian of the quickest swing; and in the time in which a capacitor and its own resistance settle. */
const STEPS_A_RADIAN = 40;
const STEPS_TO_SETTLE = 2;
/** Radians of the slowest swing looked at: an undamped one has turned after pi/2. */
const LONGEST = 3;

/**
 * Upper bound of the bus voltage when the controllers stop drawing at once [V]. The current goes on in the leads' inductance L
 * and charges the capacitors; Kirchhoff's laws for the current i and every capacitor's own voltage v_k behind its r_k,
 *
 *   L i' = V - u,   C_k v_k' = (u - v_k)/r_k,   sum (u - v_k)/r_k = i
 *
 * by Runge and Kutta's fourth-order steps up to the highest bus voltage u. An upper bound: the pack and its leads are
 * taken as lossless and the bus as unsagged, V before the cut. With one capacitor of little resistance it is V + i sqrt(L/C).
 * Braking into a full pack is not in it. Shorter leads and one more low-resistance capacitor always help.
 *
 * @throws RangeError for no capacitor, or one without capacitance or resistance
 */
export function peakBusVoltage(request: BusTransientRequest): number {
  const { packVoltage, current, leadLength, capacitors } = request;
  if (capacitors.length === 0) throw new RangeError('capacitors must hold at least one; found none');
  for (const { capacitance, resistance } of capacitors) {
    if (!(capacitance > 0)) throw new RangeError(`capacitance must be above 0 F; found ${capacitance} F`);
    if (!(resistance > 0)) throw new RangeError(`resistance must be above 0 ohm; found ${resistance} ohm`);
  }
  const conductance = capacitors.reduce((sum, { resistance }) => sum + 1 / resistance, 0);
  const inductance = INDUCTANCE_PER_LENGTH * leadLength;
  if (!(inductance > 0 && current > 0)) return packVoltage + Math.max(current, 0) / conductance;
  // State: the current in the leads, then every capacitor's voltage over the pack's.
  const rise = (state: readonly number[]): number =>
    capacitors.reduce(
      (sum, { resistance }, k) => sum + (state[k + 1] as number) / resistance,
      state[0] as number,
    ) / conductance;
  const rates = (state: readonly number[]): readonly number[] => {
    const over = rise(state);
    return [
      -over / inductance,
      ...capacitors.map(
        ({ capacitance, resistance }, k) => (over - (state[k + 1] as number)) / (resistance * capacitance),
      ),
    ];
  };
  const swings = capacitors.map(({ capacitance }) => Math.sqrt(inductance * capacitance));
  const whole = Math.sqrt(inductance * capacitors.reduce((sum, { capacitance }) => sum + capacitance, 0));
  const settling = capacitors.map(({ capacitance, resistance }) => capacitance * resistance);
  const step = Math.min(Math.min(...swings) / STEPS_A_RADIAN, Math.min(...settling) / STEPS_TO_SETTLE);
  const steps = Math.ceil((LONGEST * whole) / step);
  let state: readonly number[] = [current, ...capacitors.map(() => 0)];
  let most = rise(state);
  // Once no current is left to charge them, none will rise any more.
  for (let n = 0; n < steps && (state[0] as number) > 0; n++) {
    state = rungeKutta(rates, state, step);
    most = Math.max(most, rise(state));
  }
  return packVoltage + most;
}

function rungeKutta(
  rates: (state: readonly number[]) => readonly number[],
  state: readonly number[],
  step: number,
): readonly number[] {
  const along = (slope: readonly number[], share: number): readonly number[] =>
    state.map((value, k) => value + share * step * (slope[k] as number));
  const a = rates(state);
  const b = rates(along(a, 0.5));
  const c = rates(along(b, 0.5));
  const d = rates(along(c, 1));
  return along(
    a.map((slope, k) => (slope + 2 * (b[k] as number) + 2 * (c[k] as number) + (d[k] as number)) / 6),
    1,
  );
}
