import type { Craft } from '../../build/craft.ts';
import { peakBusVoltage } from '../../drive/busTransient.ts';
import { chemistries } from '../../drive/chemistry.ts';
import { inBox } from '../money/boxes.ts';

/** Series resistance of one low-impedance electrolytic capacitor [ohm] (common practice, no source). */
const CAPACITOR_RESISTANCE = 0.03;
/** What a box that brings a capacitor without telling its size is taken to bring [F] (common practice). */
const BOXED_CAPACITANCE = 470e-6;
/** Ceramic capacitors on a controller, for each motor, when nothing else is fitted (common practice, no source). */
const OWN_CAPACITANCE = 40e-6; // [F]
const OWN_RESISTANCE = 0.005; // [ohm]

/**
 * Highest bus voltage after full throttle is cut on a full pack [V], an upper bound. With no capacitor fitted the
 * controllers' own are all there is.
 *
 * @param current cut [A]
 */
export function busPeak(
  craft: Craft,
  current: number,
  scales: { readonly inductance: number; readonly capacitorResistance: number },
): number {
  const { cells, chemistry } = craft.parts.pack;
  const fitted = craft.parts.extras.flatMap(({ part, count }) =>
    part.kind === 'capacitor' ? Array.from({ length: count }, () => part.capacitance.value) : [],
  );
  if (inBox(craft.parts, 'capacitor')) fitted.push(BOXED_CAPACITANCE);
  const bare = fitted.length === 0;
  const resistance = bare ? OWN_RESISTANCE : CAPACITOR_RESISTANCE / fitted.length;
  return peakBusVoltage({
    packVoltage: cells * chemistries[chemistry].fullVoltage,
    current,
    // Inductance goes with length.
    leadLength: (craft.wiring.main.length / 2) * scales.inductance,
    capacitance: bare
      ? OWN_CAPACITANCE * craft.motors.length
      : fitted.reduce((sum, capacitance) => sum + capacitance, 0),
    capacitorResistance: resistance * scales.capacitorResistance,
  });
}
