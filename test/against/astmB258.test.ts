import { expect, test } from 'vitest';
import { parseWireArea } from '../../src/units/wireArea.ts';

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
