import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DIMENSIONS, type Dimension } from '../../src/units/dimensions.ts';
import { parseMoney } from '../../src/units/parseMoney.ts';
import { exampleOf, parseQuantity } from '../../src/units/parseQuantity.ts';
import { parseWireArea } from '../../src/units/wireArea.ts';

const dimensions = Object.keys(DIMENSIONS) as Dimension[];
const pairs = dimensions.flatMap((dimension) =>
  DIMENSIONS[dimension].units.map((unit) => ({ dimension, unit })),
);

describe('reading quantities', () => {
  test.each(dimensions)('the example of %s reads', (dimension) => {
    expect(parseQuantity(exampleOf(dimension), dimension).ok).toBe(true);
  });

  test('every unit reads back what was written in it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        ({ dimension, unit }, number) => {
          const read = parseQuantity(`${number.toPrecision(12)} ${unit.text}`, dimension);
          if (!read.ok) throw new Error(read.reason);
          expect(read.value / unit.factor - (unit.offset ?? 0)).toBeCloseTo(number, 3);
          expect(Math.abs(read.value / unit.factor - (unit.offset ?? 0) - number)).toBeLessThan(
            1e-9 * (number + Math.abs(unit.offset ?? 0)),
          );
        },
      ),
    );
  });

  test('a number without a unit is never guessed', () => {
    const read = parseQuantity('33.2', 'mass');
    expect(read).toMatchObject({
      ok: false,
      reason: '"33.2" has no unit',
      remedy: 'Write the unit too, such as "33.2 g".',
    });
  });

  test('a unit of another dimension names those allowed', () => {
    const read = parseQuantity('33 mm', 'mass');
    expect(read).toMatchObject({
      ok: false,
      reason: '"mm" is not a unit of mass',
      allowed: 'a number with one of g, kg, mg, oz, lb',
    });
  });

  test('a slip of the unit names the nearest', () => {
    expect(parseQuantity('1850 rmp/V', 'motorSpeedConstant')).toMatchObject({
      remedy: 'Did you mean "1850 rpm/V"?',
    });
    expect(parseQuantity('20 dge', 'angle')).toMatchObject({ remedy: 'Did you mean "20 deg"?' });
  });

  test('no text throws or gives a number that is not finite', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom(...dimensions), (text, dimension) => {
        const read = parseQuantity(text, dimension);
        expect(read.ok ? Number.isFinite(read.value) : read.reason.length > 0).toBe(true);
      }),
    );
    expect(parseQuantity('1e308 km', 'length').ok).toBe(false);
    expect(parseQuantity('9'.repeat(1e6), 'length').ok).toBe(false);
  });
});

test('money has a currency and at most two decimals', () => {
  expect(parseMoney('24.90 GBP')).toEqual({ ok: true, value: { amount: 24.9, currency: 'GBP' } });
  for (const wrong of ['24.90', '-3 GBP', '24.905 GBP', 'GBP 24.90', '9999999 GBP', '3 gbp']) {
    expect(parseMoney(wrong).ok, wrong).toBe(false);
  }
});

test('wire by gauge or by section, and nothing else', () => {
  expect(parseWireArea('2.1 mm2')).toEqual({ ok: true, value: 2.1e-6 });
  expect(parseWireArea('99 AWG').ok).toBe(false);
  expect(parseWireArea('14')).toMatchObject({ remedy: 'Write it like "14 AWG" or "2.1 mm2".' });
});
