import { COPPER_RESISTIVITY, copperRatio } from './copper.ts';
import type { ConnectorModel, WireModel } from './types.ts';

/** Largest resistance at 20 degC of plain class 5 (flexible) copper, IEC 60228 table 3: mm2, ohm/km. */
const CLASS_5: readonly (readonly [number, number])[] = [
  [0.5, 39],
  [0.75, 26],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21],
];

/**
 * Copper area that has the largest resistance IEC 60228 class 5 allows for a nominal size [m2]:
 * honest for flexible wire sold by mm2. Sizes between the standard ones keep the next smaller one's ratio.
 *
 * @param nominalArea as sold [m2], 0.05e-6 to 50e-6
 */
export function class5Area(nominalArea: number): number {
  if (!(nominalArea >= 0.05e-6 && nominalArea <= 50e-6)) {
    throw new RangeError(`nominalArea must be between 0.05e-6 and 50e-6 m2; found ${nominalArea} m2`);
  }
  const nominal = nominalArea * 1e6;
  let row = CLASS_5[0] ?? [0.5, 39];
  for (const candidate of CLASS_5) if (candidate[0] <= nominal + 1e-9) row = candidate;
  const standardArea = COPPER_RESISTIVITY / (row[1] * 1e-3);
  return (standardArea * nominal) / row[0];
}

/** [ohm], of the whole conductor length at its temperature. */
export function wireResistance(wire: WireModel): number {
  return (COPPER_RESISTIVITY * wire.length * copperRatio(wire.temperature, 293.15)) / wire.area;
}

/** No wire at all. */
export const noWire: WireModel = { area: 1e-6, length: 0, temperature: 293.15 };

/**
 * Steady rise of the copper above the air [K] at a current: heat through the insulation's surface by
 * free convection and radiation, 12 W/(m2 K) together (from memory, horizontal cylinders of a few mm at 50 K).
 *
 * @param wire with the temperature at which its resistance is wanted
 * @param outerDiameter over the insulation [m]
 */
export function wireTemperatureRise(wire: WireModel, outerDiameter: number, current: number): number {
  if (wire.length === 0) return 0;
  const heatPerLength = (current * current * wireResistance(wire)) / wire.length;
  return heatPerLength / (12 * Math.PI * outerDiameter);
}

/**
 * A connector by its continuous rating [A]: both contacts together drop about 30 mV at the rating, and
 * it bears twice the rating for ten seconds (common practice, no source).
 */
export function connectorOfRating(continuousCurrent: number): ConnectorModel {
  return { resistance: 0.03 / continuousCurrent, continuousCurrent, burstCurrent: 2 * continuousCurrent };
}
