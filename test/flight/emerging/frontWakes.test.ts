import { describe, expect, it } from 'vitest';
import { flown, onFrame } from './layouts.ts';

/**
 * 'Stretched X suffers less from its front wakes over the forward speed range than true X of equal disc area'
 * (common practice, no source). The same four propellers at the same motor diagonal, 0.226 m.
 */
const layouts = {
  'true X': onFrame([0.08, 0.08], [0.08, 0.08]),
  'stretched X': onFrame([0.066, 0.092], [0.066, 0.092]),
  'squashed X': onFrame([0.092, 0.066], [0.092, 0.066]),
};
const speeds = [3, 6, 9, 12, 16, 20, 25];

/** Wash on the rear discs [m/s], and what all wakes together cost in power. */
function suffered(layout: keyof typeof layouts, speed: number) {
  const model = layouts[layout];
  const inWakes = flown(model, speed);
  const alone = flown(model, speed, { wakes: 'left out' });
  const [fl, , , rl] = [...inWakes.load.angularSpeed];
  return {
    wash: inWakes.wash[3]!,
    upwash: inWakes.wash[0]!,
    cost: inWakes.point.chemicalPower / alone.point.chemicalPower - 1,
    rearFaster: rl! / fl! - 1,
  };
}

describe('front rotors’ wakes on the rear', () => {
  it('there are none in a hover, where the tubes hang side by side', () => {
    for (const model of Object.values(layouts)) {
      for (const wash of flown(model, 0).wash) expect(Math.abs(wash)).toBeLessThan(1e-6);
    }
  });

  it.each(speeds)('stretched suffers less than true X, squashed more, at %i m/s', (speed) => {
    const [stretched, square, squashed] = (['stretched X', 'true X', 'squashed X'] as const).map((layout) =>
      suffered(layout, speed),
    );
    expect(stretched!.wash).toBeLessThan(0.85 * square!.wash);
    expect(stretched!.wash).toBeGreaterThan(0.4 * square!.wash);
    expect(squashed!.wash).toBeGreaterThan(1.2 * square!.wash);
    expect(stretched!.cost).toBeLessThan(square!.cost);
    expect(squashed!.cost).toBeGreaterThan(square!.cost);
  });

  it('costs a true X a per cent or so of its power, and fades as it leans away from its wakes', () => {
    const costs = speeds.map((speed) => suffered('true X', speed).cost);
    expect(Math.max(...costs)).toBeGreaterThan(0.005);
    expect(Math.max(...costs)).toBeLessThan(0.03);
    expect(costs.at(-1)!).toBeLessThan(0.5 * Math.max(...costs));
  });

  it('makes the rear motors turn faster for the same thrust, by a tenth or so at a cruise', () => {
    const { rearFaster, upwash } = suffered('true X', 12);
    expect(rearFaster).toBeGreaterThan(0.03);
    expect(rearFaster).toBeLessThan(0.2);
    expect(upwash).toBeLessThan(0);
  });
});
