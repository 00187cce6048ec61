/** One unit of a dimension: SI value = (number + offset) * factor. */
export interface Unit {
  readonly text: string;
  readonly factor: number;
  /** Added before the factor; only temperature scales have one. */
  readonly offset?: number;
  /** Other spellings accepted when reading, never printed. */
  readonly also?: readonly string[];
}

const inch = 0.0254; // exact, international inch (BIPM SI Brochure / NIST SP 811 App. B)
const pound = 0.45359237; // exact, NIST SP 811 App. B
const turn = 2 * Math.PI;

/**
 * Every dimension that a file or a face may hold, its SI unit, and the trade units allowed for it.
 * Conversion factors: NIST SP 811 (2008) appendix B, all exact by definition. American wire gauge
 * is not a linear unit and is read by `parseWireArea`.
 */
export const DIMENSIONS = {
  length: dimension('m', [
    unit('mm', 1e-3),
    unit('cm', 1e-2),
    unit('m', 1),
    unit('km', 1e3),
    unit('in', inch, ['inch', '"']),
    unit('ft', 12 * inch),
    unit('mi', 5280 * 12 * inch),
  ]),
  mass: dimension('kg', [
    unit('g', 1e-3),
    unit('kg', 1),
    unit('mg', 1e-6),
    unit('oz', pound / 16),
    unit('lb', pound),
  ]),
  time: dimension('s', [
    unit('s', 1),
    unit('ms', 1e-3),
    unit('min', 60),
    unit('h', 3600),
    unit('days', 86400, ['day']),
  ]),
  speed: dimension('m/s', [
    unit('m/s', 1),
    unit('km/h', 1 / 3.6),
    unit('mph', 0.44704),
    unit('kn', 1852 / 3600),
  ]),
  angularSpeed: dimension('rad/s', [unit('rpm', turn / 60), unit('rad/s', 1), unit('deg/s', Math.PI / 180)]),
  /** K_V as unloaded speed for each volt of back-EMF. */
  motorSpeedConstant: dimension('rad/(s V)', [unit('rpm/V', turn / 60), unit('rad/s/V', 1)]),
  resistance: dimension('ohm', [unit('mohm', 1e-3, ['mΩ']), unit('ohm', 1, ['Ω'])]),
  charge: dimension('C', [unit('mAh', 3.6), unit('Ah', 3600), unit('C', 1)]),
  capacitance: dimension('F', [unit('uF', 1e-6, ['µF', 'μF']), unit('F', 1)]),
  voltage: dimension('V', [unit('V', 1), unit('mV', 1e-3)]),
  current: dimension('A', [unit('A', 1), unit('mA', 1e-3)]),
  power: dimension('W', [unit('W', 1), unit('mW', 1e-3), unit('kW', 1e3)]),
  energy: dimension('J', [unit('Wh', 3600), unit('J', 1), unit('kJ', 1e3)]),
  temperature: dimension('K', [
    { text: 'degC', factor: 1, offset: 273.15, also: ['°C', 'C'] },
    unit('K', 1),
    { text: 'degF', factor: 5 / 9, offset: 459.67, also: ['°F', 'F'] },
  ]),
  angle: dimension('rad', [unit('deg', Math.PI / 180, ['°']), unit('rad', 1)]),
  area: dimension('m2', [unit('mm2', 1e-6, ['mm²']), unit('cm2', 1e-4, ['cm²']), unit('m2', 1, ['m²'])]),
  frequency: dimension('Hz', [unit('Hz', 1), unit('kHz', 1e3), unit('MHz', 1e6), unit('GHz', 1e9)]),
  pressure: dimension('Pa', [
    unit('Pa', 1),
    unit('hPa', 100),
    unit('kPa', 1e3),
    unit('MPa', 1e6),
    unit('GPa', 1e9),
  ]),
  density: dimension('kg/m3', [unit('kg/m3', 1, ['kg/m³']), unit('g/cm3', 1e3, ['g/cm³'])]),
  inertia: dimension('kg m2', [unit('g mm2', 1e-9, ['g mm²']), unit('kg m2', 1, ['kg m²'])]),
  force: dimension('N', [unit('N', 1), unit('gf', 9.80665e-3), unit('mN', 1e-3)]),
  torque: dimension('N m', [unit('N m', 1, ['Nm']), unit('mN m', 1e-3, ['mNm', 'N mm'])]),
  share: dimension('1', [unit('%', 0.01), unit('parts', 1, ['part'])]),
} as const;

/** The name of a kind of quantity, a key of `DIMENSIONS`. */
export type Dimension = keyof typeof DIMENSIONS;

/** An SI unit's name and the units read for its dimension, the one usual in the trade first. */
export interface DimensionEntry {
  readonly si: string;
  readonly units: readonly Unit[];
}

function unit(text: string, factor: number, also: readonly string[] = []): Unit {
  return { text, factor, also };
}

function dimension(si: string, units: readonly Unit[]): DimensionEntry {
  return { si, units };
}
