import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatBand, formatQuantity } from '../../src/units/formatQuantity.ts';
import { decimalsForBand, digitsForBand } from '../../src/units/significance.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('showing quantities', () => {
  test.each([
    [0.12954, 'length', {}, '130 mm'],
    [0.12954, 'length', { system: 'imperial' }, '5.1 in'],
    [0.033, 'mass', {}, '33 g'],
    [0.6246, 'mass', {}, '625 g'],
    [1.0812, 'mass', {}, '1.08 kg'],
    [288.15, 'temperature', {}, '15 degC'],
    [288.15, 'temperature', { system: 'imperial' }, '59 degF'],
    [24.9, 'money', { currency: 'GBP' }, '24.90 GBP'],
    [412.6, 'money', { currency: 'GBP' }, '413 GBP'],
    [2600, 'angularSpeed', {}, '24828 rpm'],
    [0.27, 'share', {}, '27 %'],
    [7.2, 'ratio', {}, '7.2'],
    [312, 'time', {}, '5.2 min'],
    [Number.NaN, 'mass', {}, 'not known'],
  ] as const)('%d %s %o', (value, quantity, options, text) => {
    expect(plain(formatQuantity(value, quantity, options))).toBe(text);
  });

  test('no number is shown finer than its band', () => {
    expect(plain(formatQuantity(0.6246, 'mass', { band: [0.55, 0.7] }))).toBe('620 g');
    expect(plain(formatQuantity(312, 'time', { band: [280, 344] }))).toBe('5.2 min');
    expect(plain(formatBand(312, [280, 344], 'time'))).toBe('4.7 to 5.7 min');
  });

  test('number and unit never part', () => {
    expect(formatQuantity(0.033, 'mass')).toBe('33\u00a0g');
  });

  test('digits follow the band', () => {
    expect(digitsForBand(5.13, [4.7, 5.5])).toBe(2);
    expect(digitsForBand(623, [593, 653])).toBe(2);
    expect(digitsForBand(623, [622.9, 623.1])).toBe(5);
    expect(decimalsForBand([2, 2])).toBeUndefined();
  });

  test('rounding adds less than a quarter of the half width', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1e4, noNaN: true }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        (value, share) => {
          const half = value * share;
          const text = plain(formatQuantity(value, 'ratio', { band: [value - half, value + half] }));
          expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.2501 * half);
        },
      ),
    );
  });
});
