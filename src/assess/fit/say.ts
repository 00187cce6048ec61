import { withUnit } from '../../units/formatQuantity.ts';
import type { Severity } from '../types.ts';
import type { FitVerdict } from './types.ts';

/** Marked as quantities: a face may say them in other units. */
export const mm = (metres: number) => withUnit(trim(metres * 1000, 1), 'mm');
export const metres = (length: number) => withUnit(trim(length, 0), 'm');
export const grams = (mass: number) => withUnit(trim(mass * 1000, mass < 0.02 ? 1 : 0), 'g');
export const metresPerSecond = (speed: number) => withUnit(trim(speed, 1), 'm/s');
export const celsius = (temperature: number) => withUnit(trim(temperature - 273.15, 0), 'degC');

/** What parts are cut, drilled and sold by, and what laws name: said so everywhere. */
export const mmSize = (metres: number) => `${trim(metres * 1000, 1)} mm`;
export const gramsOfLaw = (mass: number) => `${trim(mass * 1000, 0)} g`;
export const amps = (current: number) => `${trim(current, current < 10 ? 1 : 0)} A`;
export const volts = (voltage: number) => `${trim(voltage, 1)} V`;
export const inches = (length: number) => `${trim(length / 0.0254, 1)} in`;
export const degrees = (angle: number) => `${trim((angle * 180) / Math.PI, 0)} degrees`;
export const megahertz = (frequency: number) => `${trim(frequency / 1e6, 0)} MHz`;
export const milliwatts = (power: number) => `${trim(power * 1000, 0)} mW`;
export const decibels = (ratio: number) => `${trim(ratio, 0)} dB`;
export const percent = (share: number) => `${trim(share * 100, 1)} %`;

/** `2 straps` */
export const countOf = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`;

/** Of sizes: `9, 12 and 16 mm` */
export const mmList = (lengths: readonly number[]) => {
  const texts = lengths.map((length) => trim(length * 1000, 1));
  const last = texts.pop() ?? 'none';
  return `${texts.length > 0 ? `${texts.join(', ')} and ` : ''}${last} mm`;
};

function trim(value: number, digits: number): string {
  const text = value.toFixed(digits);
  const short = digits > 0 ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

/** A verdict that passes: the says is a plain statement of what matches. */
export const fits = (says: string, parts: readonly string[], rest: Partial<FitVerdict> = {}): FitVerdict => ({
  passes: true,
  severity: 'note',
  says,
  remedy: 'Nothing to do.',
  parts,
  ...rest,
});

export const fails = (
  severity: Severity,
  says: string,
  remedy: string,
  parts: readonly string[],
  rest: Partial<FitVerdict> = {},
): FitVerdict => ({ passes: false, severity, says, remedy, parts, ...rest });

/** Limits count as kept within a micrometre, microvolt ...: 8 mm less 5 mm is 3 mm. */
export const SLACK = 1e-6;
