import { describe, expect, it } from 'vitest';
import { layoutMotors } from '../../../src/airframe/layout.ts';
import { hoverStory } from '../../../src/flight/hoverStory.ts';
import { neutralLevers } from '../../../src/flight/types.ts';
import { built, deadCat, type Quad, trueX } from './craftOfParts.ts';

/**
 * 'True X loads front and rear alike when balanced; a dead cat at its natural balance loads the front pair more, they
 * run hotter, and sliding the battery back trades it away; the rear pair sits closer together than the front' (common
 * practice, no source). Same parts on arms of one length; only two arms swing.
 */
function hovering(quad: Quad) {
  const { model, massProperties } = built(quad);
  const story = hoverStory(model, neutralLevers, []);
  if (!story.ok) throw new Error(story.reason);
  const [front, , rear] = [...story.value.trim.thrusts];
  const winding = (i: number): number => story.value.hoverHeat[i]!.settled!.winding;
  return {
    ahead: massProperties.centreOfGravity[0],
    ratio: front! / rear!,
    hotter: winding(0) - winding(2),
    current: story.value.hover.stations[0]!.motorCurrent / story.value.hover.stations[2]!.motorCurrent,
    left: story.value.trim.thrusts[0]! / story.value.trim.thrusts[1]!,
  };
}

/** Where the pack must lie for the front to carry as much as the rear [m]. */
function evenAt(quad: Quad): number {
  let [back, ahead] = [-0.06, 0.02];
  for (let k = 0; k < 40; k++) {
    const middle = 0.5 * (back + ahead);
    if (hovering({ ...quad, packAhead: middle }).ratio > 1) ahead = middle;
    else back = middle;
  }
  return 0.5 * (back + ahead);
}

describe('front and rear motors', () => {
  it('a balanced true X loads all four alike', () => {
    const even = hovering({ ...trueX, packAhead: evenAt(trueX) });
    expect(Math.abs(even.ahead)).toBeLessThan(1e-4);
    expect(even.ratio).toBeCloseTo(1, 6);
    expect(even.current).toBeCloseTo(1, 5);
    expect(even.hotter).toBeCloseTo(0, 3);
    expect(even.left).toBeCloseTo(1, 9);
    // The pack over the hub is nearly there already: a small camera on the nose is all that pulls.
    expect(evenAt(trueX)).toBeGreaterThan(-0.006);
  });

  it('a dead cat with its parts about the hub loads the front pair by a half more, and heats it', () => {
    const natural = hovering(deadCat);
    expect(natural.ahead).toBeGreaterThan(0.008);
    expect(natural.ratio).toBeGreaterThan(1.3);
    expect(natural.ratio).toBeLessThan(2);
    expect(natural.hotter).toBeGreaterThan(3);
    expect(natural.hotter).toBeLessThan(25);
    expect(natural.ratio).toBeGreaterThan(hovering(trueX).ratio * 1.2);
  });

  it('sliding the battery back trades it away, steadily, and beyond that loads the rear', () => {
    const ratios = [0, -0.01, -0.02, -0.03, -0.04, -0.055].map(
      (packAhead) => hovering({ ...deadCat, packAhead }).ratio,
    );
    for (let k = 1; k < ratios.length; k++) expect(ratios[k]!).toBeLessThan(ratios[k - 1]!);
    expect(ratios.at(-1)!).toBeLessThan(1);
    const slide = -evenAt(deadCat);
    expect(slide).toBeGreaterThan(0.02);
    expect(slide).toBeLessThan(0.06);
    expect(Math.abs(hovering({ ...deadCat, packAhead: -slide }).hotter)).toBeLessThan(0.01);
  });

  it('the rear pair of a dead cat sits closer together than its front pair', () => {
    const [fl, fr, rr, rl] = built(deadCat).model.stations.map(({ position }) => position[1]);
    expect(rr! - rl!).toBeLessThan(0.85 * (fr! - fl!));
    const sold = layoutMotors({ kind: 'dead cat', frontWidth: 0.21, rearWidth: 0.16, length: 0.15 }).motors;
    const width = (name: string) =>
      sold.filter((m) => m.name.startsWith(name)).reduce((sum, m) => sum + Math.abs(m.position[1]), 0);
    expect(width('rear')).toBeLessThan(width('front'));
  });
});
