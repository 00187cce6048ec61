/**
 * Solder, ties, tape, heat-shrink and small screws of a finished craft over the mass of all that is listed, and one
 * standard deviation of it: between half a hundredth and three and a half in four builds of five (common practice, no source).
 */
export const SUNDRY_SHARE = 0.02;
export const SUNDRY_DEVIATION = 0.012;
