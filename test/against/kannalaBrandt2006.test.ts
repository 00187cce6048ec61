import { expect, it } from 'vitest';
import { lensAngle, lensRadius, lensStretch } from '../../src/view/lens.ts';

/**
 * Kannala and Brandt 2006, A generic camera model and calibration method for conventional, wide-angle
 * and fish-eye lenses, IEEE PAMI 28(8): projection laws (1) perspective, (3) equidistance, (4) equisolid
 * angle (equation numbers from memory). The laws' first odd-power terms, r = theta + k theta^3, as
 * listed at wiki.panotools.org, General lens model: k = 1/3, 0, -1/24.
 */
const laws = [
  { law: 'rectilinear', at45: 1, cubic: 1 / 3 },
  { law: 'equidistant', at45: 0.785398, cubic: 0 },
  { law: 'equisolid', at45: 0.765367, cubic: -1 / 24 },
] as const;

for (const { law, at45, cubic } of laws) {
  it(`${law}: value at 45 degrees (hand calculation) and the listed cubic term`, () => {
    expect(Math.abs(lensRadius(law, Math.PI / 4) - at45)).toBeLessThan(1e-6);
    // The next term is at most 2/15 theta^5, so at 0.02 rad the cubic shows to 1e-4.
    const small = 0.02;
    expect(Math.abs((lensRadius(law, small) - small) / small ** 3 - cubic)).toBeLessThan(1e-4);
  });

  it(`${law}: the angle comes back from the radius, and the stretch is the slope`, () => {
    for (const angle of [0, 0.3, 0.9, 1.4]) {
      expect(Math.abs(lensAngle(law, lensRadius(law, angle)) - angle)).toBeLessThan(1e-12);
      const slope = (lensRadius(law, angle + 1e-6) - lensRadius(law, angle - 1e-6)) / 2e-6;
      expect(Math.abs(slope / lensStretch(law, angle) - 1)).toBeLessThan(1e-6);
    }
  });
}
