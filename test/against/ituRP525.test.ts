import { describe, expect, it } from 'vitest';
import { freeSpaceLoss, linkMargin } from '../../src/assess/fit/radioLink.ts';

/**
 * ITU-R P.525-5 (2024): Lbf = 20 log10(4 pi d / lambda), in practice 32.4 + 20 log10(f/MHz) + 20 log10(d/km).
 * The practical form rounds 32.4478 to 32.4: within 0.05 dB of the first.
 */
describe('free-space loss against ITU-R P.525', () => {
  it.each([
    [2.4e9, 500],
    [5.8e9, 1000],
    [868e6, 10000],
  ])('%d Hz over %d m', (frequency, distance) => {
    const exact = 20 * Math.log10((4 * Math.PI * distance * frequency) / 299792458);
    expect(Math.abs(freeSpaceLoss(distance, frequency) - exact)).toBeLessThan(0.05);
  });

  it('adds 6.02 dB for twice the distance', () => {
    expect(freeSpaceLoss(800, 2.4e9) - freeSpaceLoss(400, 2.4e9)).toBeCloseTo(20 * Math.log10(2), 12);
  });

  // 100 mW are 20 dBm; 20 + 4 - (32.4 + 20 log10 2400 + 20 log10 0.5) + 108 = 38.02 dB, by hand.
  it('gives the margin of a link by hand', () => {
    const link = { power: 0.1, gains: 4, sensitivity: -108, frequency: 2.4e9 };
    expect(linkMargin(link, 500)).toBeCloseTo(20 + 4 - (32.4 + 67.6042 - 6.0206) + 108, 3);
  });
});
