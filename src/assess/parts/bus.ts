import type { Craft } from '../../build/craft.ts';
import { type BusCapacitor, peakBusVoltage } from '../../drive/busTransient.ts';
import { chemistries } from '../../drive/chemistry.ts';
import { inBox } from '../money/boxes.ts';

/** Series resistance of one low-impedance electrolytic capacitor [ohm] (common practice, no source). */
const CAPACITOR_RESISTANCE = 0.03;
/** What a box that brings a capacitor without telling its size is taken to bring [F] (common practice). */
const BOXED_CAPACITANCE = 470e-6;
/** Ceramic capacitors on a controller, for each motor, always there (common practice, no source). */
const OWN_CAPACITANCE = 40e-6; // [F]
const OWN_RESISTANCE = 0.005; // [ohm], of all of them side by side

/**
 * Highest bus voltage after full throttle is cut on a full pack [V], an upper bound: the controllers' own capacitors
 * and those fitted share the charge.
 *
 * @param current cut [A]
 */
export function busPeak(
  craft: Craft,
  current: number,
  scales = { inductance: 1, capacitorResistance: 1 },
): number {
  const { cells, chemistry } = craft.parts.pack;
  const resistance = CAPACITOR_RESISTANCE * scales.capacitorResistance;
  const capacitors: BusCapacitor[] = [
    {
      capacitance: OWN_CAPACITANCE * craft.motors.length,
      resistance: OWN_RESISTANCE * scales.capacitorResistance,
    },
    ...craft.parts.extras.flatMap(({ part, count }) =>
      part.kind === 'capacitor'
        ? Array.from({ length: count }, () => ({ capacitance: part.capacitance.value, resistance }))
        : [],
    ),
    ...(inBox(craft.parts, 'capacitor') ? [{ capacitance: BOXED_CAPACITANCE, resistance }] : []),
  ];
  return peakBusVoltage({
    packVoltage: cells * chemistries[chemistry].fullVoltage,
    current,
    // Inductance goes with length.
    leadLength: (craft.wiring.main.length / 2) * scales.inductance,
    capacitors,
  });
}
