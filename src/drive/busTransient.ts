/**
 * Inductance of a pair of leads [H] by length of the pair [m]: 0.6 uH/m for two round wires side by side,
 * (mu0/pi) ln(2 s / d) + internal part with spacing s about 1.5 wire diameters d (textbook two-wire line).
 */
const INDUCTANCE_PER_LENGTH = 0.6e-6; // [H/m]

export interface BusTransientRequest {
  /** Full pack, no load [V]. */
  readonly packVoltage: number;
  /** Bus current that is cut at once [A]: full throttle to zero. */
  readonly current: number;
  /** From pack to capacitor, one way [m]. */
  readonly leadLength: number;
  /** All capacitors on the bus, the controllers' own included [F], > 0. */
  readonly capacitance: number;
  /** Series resistance of the capacitors together [ohm]. */
  readonly capacitorResistance: number;
}

/**
 * Upper bound of the bus voltage when the controllers stop drawing at once [V]: the leads' current charges
 * the capacitor of a lossless LC circuit, which overshoots by i sqrt(L/C), on top of the step i x ESR.
 * Regenerative braking into a full pack is not in it. Shorter leads and a low-resistance capacitor help.
 */
export function peakBusVoltage(request: BusTransientRequest): number {
  const { packVoltage, current, leadLength, capacitance, capacitorResistance } = request;
  if (!(capacitance > 0)) throw new RangeError(`capacitance must be above 0 F; found ${capacitance} F`);
  const inductance = INDUCTANCE_PER_LENGTH * leadLength;
  return packVoltage + current * (Math.sqrt(inductance / capacitance) + capacitorResistance);
}
