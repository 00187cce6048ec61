import { describe, expect, it } from 'vitest';
import { skewedTube } from '../../src/flight/wakes/skewedTube.ts';

/**
 * R. P. Coleman, A. M. Feingold, C. W. Stempin, 'Evaluation of the induced-velocity field of an idealized helicopter
 * rotor', NACA ARR L5E10 (1945): fore and aft across the centre of the disc the induced velocity of a skewed vortex
 * cylinder grows as v0 (1 + r/R tan(skew/2) cos psi), and across it is even. From memory, as in Leishman 2006, sec. 3.5.2.
 * W. Castles, J. H. De Leeuw, NACA Report 1184 (1954), the same cylinder's field outside: its symmetries, by reasoning.
 */
describe('a skewed vortex cylinder', () => {
  const degrees = (angle: number): number => (angle * Math.PI) / 180;

  it.each([0, 20, 40, 60, 75])('has Coleman’s gradient at %i degrees', (angle) => {
    const skew = degrees(angle);
    const h = 1e-3;
    expect(skewedTube(0, 0, 0, skew)).toBeCloseTo(1, 9);
    const gradient = (skewedTube(-h, 0, 0, skew) - skewedTube(h, 0, 0, skew)) / (2 * h);
    expect(gradient).toBeCloseTo(Math.tan(skew / 2), 4);
    for (const y of [-0.6, 0.3, 0.6]) expect(skewedTube(0, y, 0, skew)).toBeCloseTo(1, 3);
  });

  // Momentum theory: the wash doubles in the far wake.
  it.each([0, 30, 60])('doubles its wash far down at %i degrees', (angle) => {
    const skew = degrees(angle);
    expect(skewedTube(-40 * Math.tan(skew), 0, 40, skew)).toBeCloseTo(2, 2);
  });

  // Half of an endless straight tube, whose outside stands still: the plane of its mouth is left alone.
  it('leaves its disc plane alone outside when it hangs straight down', () => {
    for (const r of [1.5, 2.2, 4]) expect(skewedTube(r * 0.6, r * 0.8, 0, 0)).toBeCloseTo(0, 6);
  });

  // The flow past a cylinder that moves down (Lamb, Hydrodynamics, art. 68): along its way with it, beside it against.
  it('has upwash beside a flat wake, downwash above it, as a cylinder moving down has', () => {
    const skew = degrees(80);
    expect(skewedTube(-6, 2.2, 6 / Math.tan(skew), skew)).toBeLessThan(-0.05);
    expect(skewedTube(-6, 0, 6 / Math.tan(skew) - 1.6, skew)).toBeGreaterThan(0.05);
  });

  it('fades downwards ahead and is the same on both sides', () => {
    const skew = degrees(50);
    expect(Math.abs(skewedTube(5, 0, 0, skew))).toBeLessThan(Math.abs(skewedTube(2.2, 0, 0, skew)));
    expect(skewedTube(-2, 1.4, 0.1, skew)).toBeCloseTo(skewedTube(-2, -1.4, 0.1, skew), 9);
  });
});
