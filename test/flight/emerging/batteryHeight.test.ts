import { expect, it } from 'vitest';
import { built, type Quad, trueX } from './craftOfParts.ts';

/**
 * 'The battery above the plate lifts the centre of gravity toward the prop plane against one below' (common practice, no
 * source). z points down.
 */
const belowProps = (quad: Quad): number => {
  const { massProperties, model } = built(quad);
  return massProperties.centreOfGravity[2] - model.stations[0]!.position[2];
};

it('a pack above brings the balance towards the prop plane, a pack below takes it away', () => {
  for (const packMass of [0.1, 0.2, 0.3]) {
    const above = belowProps({ ...trueX, packMass, packSide: 'above' });
    const below = belowProps({ ...trueX, packMass, packSide: 'below' });
    expect(Math.abs(above)).toBeLessThan(0.6 * Math.abs(below));
    // By the lever law: the pack's share of the mass times the 72 mm between its places.
    const share = packMass / built({ ...trueX, packMass }).massProperties.mass;
    expect(below - above).toBeCloseTo(share * 0.072, 9);
  }
});

it('where it ends: a heavy pack above lifts the balance through the prop plane and out over it', () => {
  expect(belowProps({ ...trueX, packMass: 0.1 })).toBeGreaterThan(0);
  expect(belowProps({ ...trueX, packMass: 0.5 })).toBeLessThan(0);
});
