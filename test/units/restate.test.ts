import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { formatBand, formatQuantity } from '../../src/units/formatQuantity.ts';
import { restate } from '../../src/units/restate.ts';

const imperial = (text: string, mark?: ',' | '.') =>
  restate(text.replaceAll('~', '\u00a0'), { system: 'imperial', ...(mark ? { mark } : {}) }).replaceAll(
    '\u00a0',
    '~',
  );

describe('a sentence in the other system of units', () => {
  // By hand, from NIST SP 811 (2008) appendix B: 25.4 mm/in, 0.3048 m/ft, 28.34952 g/oz, 0.44704 m/s per mph.
  test.each([
    ['The tips are 12.3~mm apart.', 'The tips are 0.484~in apart.'],
    ['Only 4~mm left.', 'Only 0.16~in left.'],
    ['between 4.8 to 5.4~mm.', 'between 0.19 to 0.21~in.'],
    ['850~mm out', '2.8~ft out'],
    ['2000~m out; 2.4~km home', '1.2~mi out; 1.5~mi home'],
    ['500~m out', '1600~ft out'],
    ['33~g more', '1.2~oz more'],
    ['651~g, pack included', '1.44~lb, pack included'],
    ['+8.95~g', '+0.316~oz'],
    ['-3~g', '-0.11~oz'],
    ['it flies 45.6~m/s for a while', 'it flies 102~mph for a while'],
    ['settles at 71~degC, over 80~degC', 'settles at 160~degF, over 176~degF'],
    ['-10~degC', '14~degF'],
    ['0~mm', '0~in'],
  ])('%s', (metric, told) => {
    expect(imperial(metric)).toBe(told);
  });

  test.each([
    'Use M3 x 8 mm screws on a 16 mm circle',
    'in the EU under 250 g',
    'Harbour 5 mm plate, 30.5 x 30.5 mm, 14 AWG, 2.1 mm2, 1750 rpm/V',
    '197~Hz, 3.3~deg/s, 27~%, 9.86~GBP, 5.2~min, 700~gf, 0.3~N m, 12~kg cm2',
    'part4~mm',
  ])('leaves names and what has no other unit: %s', (text) => {
    expect(imperial(text)).toBe(text);
  });

  it('says metric sentences as they were written', () => {
    expect(restate('12.3\u00a0mm', { system: 'metric' })).toBe('12.3\u00a0mm');
    expect(restate('12.3\u00a0mm', {})).toBe('12.3\u00a0mm');
  });

  it('reads and writes the decimal mark it is told', () => {
    expect(imperial('12,3~mm und 7,0~m/s', ',')).toBe('0,484~in und 16~mph');
  });

  const shown = fc.record({
    quantity: fc.constantFrom('length', 'mass', 'speed', 'temperature'),
    value: fc.double({ min: 0.001, max: 2000, noNaN: true }),
    share: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
  });

  it('says what the figures say, to the digits of the metric text', () => {
    fc.assert(
      fc.property(shown, ({ quantity, value }) => {
        const [metric, own] = (['metric', 'imperial'] as const).map((system) =>
          formatQuantity(value, quantity, { system }),
        );
        const [number, unit] = restate(metric!, { system: 'imperial' }).split('\u00a0');
        // Where rounding carries the metric text over a change of unit both units are right.
        const inches = { in: 1, ft: 12, mi: 63360, oz: 1, lb: 16 };
        const size = (text: string, of: string | undefined) =>
          Number(text) * ((of !== undefined && inches[of as keyof typeof inches]) || 1);
        const [ownNumber, ownUnit] = own!.split('\u00a0');
        const exact = size(ownNumber!, ownUnit);
        // Half a step in the third digit on one side, in the second at least on the other.
        const off = quantity === 'temperature' ? 1.5 : 0.06 * Math.abs(exact);
        expect(Math.abs(size(number!, unit) - exact)).toBeLessThanOrEqual(off + 1e-9);
      }),
    );
  });

  it('turns both ends of a band, in one unit', () => {
    fc.assert(
      fc.property(shown, ({ quantity, value, share }) => {
        const band = [value * (1 - share), value * (1 + share)] as const;
        const text = restate(formatBand(value, band, quantity), { system: 'imperial' });
        expect(text).toMatch(/^-?[\d.]+ to -?[\d.]+\u00a0(in|ft|mi|oz|lb|mph|degF)$/);
        const [low, high] = text.split('\u00a0')[0]!.split(' to ').map(Number);
        expect(low).toBeLessThanOrEqual(high!);
      }),
    );
  });
});
