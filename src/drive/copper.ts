/** Standard annealed copper at 20 degC [ohm m], IEC 60028:1925. */
export const COPPER_RESISTIVITY = 1.7241e-8;

/** Constant-mass temperature coefficient of its resistance at 20 degC [1/K], IEC 60028:1925. */
const COEFFICIENT = 0.00393;
const REFERENCE = 293.15; // [K]

/**
 * Resistance of copper at one temperature over that at another, linear about 20 degC (IEC 60028).
 * Good to 1 % between 230 and 450 K.
 *
 * @param temperature, reference [K]
 */
export function copperRatio(temperature: number, reference: number): number {
  return (1 + COEFFICIENT * (temperature - REFERENCE)) / (1 + COEFFICIENT * (reference - REFERENCE));
}

/** Slope of `copperRatio` with temperature [1/K]; the same at every temperature. */
export function copperSlope(reference: number): number {
  return COEFFICIENT / (1 + COEFFICIENT * (reference - REFERENCE));
}
