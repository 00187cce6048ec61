import { expect, test } from 'vitest';
import { wireResistance } from '../../src/drive/wire.ts';
import { parseWireArea, wireGaugeArea } from '../../src/units/wireArea.ts';

/**
 * ASTM B258-18, table 1: nominal diameters of solid wire, printed to 0.1 mil.
 * Tolerance: half of that, 0.00005 in.
 */
test.each([
  ['10 AWG', 0.1019],
  ['12 AWG', 0.0808],
  ['14 AWG', 0.0641],
  ['16 AWG', 0.0508],
  ['18 AWG', 0.0403],
  ['20 AWG', 0.032],
  ['24 AWG', 0.0201],
  ['28 AWG', 0.0126],
])('%s has the diameter of the standard', (text, inches) => {
  const read = parseWireArea(text);
  const diameter = read.ok ? Math.sqrt((4 * read.value) / Math.PI) / 0.0254 : Number.NaN;
  expect(Math.abs(diameter - inches)).toBeLessThanOrEqual(0.00005);
});

/**
 * The same sizes as resistance of solid copper at 20 degC, with IEC 60028's 1.7241e-8 ohm m [mohm/m] (project's check list).
 * Tolerance: half of the last digit. Copper gains 0.393 % a kelvin (IEC 60028): 12 AWG at 70 degC by hand, 5.211 x 1.1965.
 */
test.each([
  [10, 20, 3.277],
  [12, 20, 5.211],
  [14, 20, 8.285],
  [16, 20, 13.174],
  [20, 20, 33.308],
  [12, 70, 6.235],
])('%i AWG at %i degC resists %f mohm a metre', (gauge, celsius, milliohm) => {
  const found = wireResistance({ area: wireGaugeArea(gauge), length: 1, temperature: celsius + 273.15 });
  expect(Math.abs(1000 * found - milliohm)).toBeLessThanOrEqual(0.0005);
});
