import { describe, expect, it } from 'vitest';
import { class5Area, wireResistance } from '../../src/drive/wire.ts';

/**
 * IEC 60228:2004 table 3, class 5 flexible plain copper: largest resistance at 20 degC [ohm/km] for
 * 1.5, 2.5, 4 mm2 (project's check list). The table is built in, so this guards the conversion; between sizes,
 * resistance must fall with size and stay within 10 % of the neighbours' area law.
 */
describe('IEC 60228 class 5', () => {
  it.each([
    [1.5, 13.3],
    [2.5, 7.98],
    [4, 4.95],
  ])('%f mm2 has at most %f ohm/km', (size, ohmPerKilometre) => {
    const found = wireResistance({ area: class5Area(size * 1e-6), length: 1000, temperature: 293.15 });
    expect(found).toBeCloseTo(ohmPerKilometre, 6);
  });

  it('falls steadily over sizes sold between the standard ones', () => {
    let before = Number.POSITIVE_INFINITY;
    for (let size = 0.2; size < 20; size *= 1.1) {
      const found = wireResistance({ area: class5Area(size * 1e-6), length: 1, temperature: 293.15 });
      expect(found).toBeLessThan(before);
      expect((found * size * 1e-6) / 1.7241e-8).toBeGreaterThan(1.02);
      expect((found * size * 1e-6) / 1.7241e-8).toBeLessThan(1.2);
      before = found;
    }
  });
});
