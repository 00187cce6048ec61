/**
 * Above these a settled temperature tells nothing: the insulation is gone, copper shorts, and no balance of heat holds.
 */

/**
 * Of a winding [K]: 240 degC, the highest thermal class of enamelled wire (IEC 60317-46, class 240; most motors have
 * class 180 to 220).
 */
export const WINDING_BEARS = 513.15;
