import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circuitOf } from '../../src/flight/circuit.ts';
import { drain, steadyDraw } from '../../src/flight/drain.ts';
import { emptySupply } from '../../src/flight/feed.ts';
import { hoverStory } from '../../src/flight/hoverStory.ts';
import { hoverTrim } from '../../src/flight/hoverTrim.ts';
import { hoverCurrent } from '../../src/flight/styleFlight.ts';
import { styles } from '../../src/flight/styles.ts';
import { type Levers, neutralLevers } from '../../src/flight/types.ts';
import { anyModel, exampleQuad } from './exampleModel.ts';

const all = [styles.novice, styles.filming, styles.cruise, styles.freestyle, styles.race];

function storyOf(change = {}, levers: Partial<Levers> = {}) {
  const story = hoverStory(exampleQuad(change), { ...neutralLevers, ...levers }, all);
  if (!story.ok) throw new Error(story.reason);
  return story.value;
}

/** Numbers that are neither finite nor the documented 'never' of a time to a limit. */
function badNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') {
    const never = path.endsWith('timeToLimit') && value === Number.POSITIVE_INFINITY;
    return Number.isFinite(value) || never ? [] : [`${path} = ${value}`];
  }
  if (ArrayBuffer.isView(value)) return badNumbers([...(value as Float64Array)], path);
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, inner]) => badNumbers(inner, `${path}.${key}`));
  }
  return [];
}

describe('hover story', () => {
  it('never gives a NaN, whatever the aircraft', () => {
    let flew = 0;
    fc.assert(
      fc.property(anyModel, (model) => {
        const story = hoverStory(model, neutralLevers, all);
        if (!story.ok) {
          expect(story.reason.length).toBeGreaterThan(20);
          return;
        }
        flew++;
        expect(badNumbers(story.value)).toEqual([]);
      }),
      { numRuns: 400 },
    );
    expect(flew).toBeGreaterThan(60);
  });

  // Project's trade notes (common practice, no source): freestyle about half the hover time, race a quarter to a fifth.
  it('flies styles in the trade’s proportions', () => {
    const { styles: flown } = storyOf();
    const [novice, , , freestyle, race] = flown;
    expect(novice!.ofHover).toBeGreaterThan(0.8);
    expect(freestyle!.ofHover).toBeGreaterThan(0.42);
    expect(freestyle!.ofHover).toBeLessThan(0.58);
    expect(race!.ofHover).toBeGreaterThan(0.18);
    expect(race!.ofHover).toBeLessThan(0.27);
  });

  // Joule: heat goes by the mean square. Each bin flown by itself gives its current by hand; the drain spreads it by a few per cent.
  it('tells the root mean square of a style, over its mean where thrust varies', () => {
    const bin = (share: number, thrustToWeight: number) => ({ share, thrustToWeight });
    const style = (bins: readonly { share: number; thrustToWeight: number }[]) =>
      ({ name: 'test', bins, source: 'test' }) as const;
    const flown = hoverStory(exampleQuad(), neutralLevers, [
      style([bin(0.8, 0.7), bin(0.2, 3)]),
      style([bin(1, 0.7)]),
      style([bin(1, 3)]),
    ]);
    if (!flown.ok) throw new Error(flown.reason);
    const [both, low, high] = flown.value.styles;
    expect(low!.heatingCurrent).toBeCloseTo(low!.meanCurrent, 9);
    const byHand = Math.sqrt(0.8 * low!.meanCurrent ** 2 + 0.2 * high!.meanCurrent ** 2);
    expect(Math.abs(both!.heatingCurrent / byHand - 1)).toBeLessThan(0.03);
    expect(both!.heatingCurrent).toBeGreaterThan(1.3 * both!.meanCurrent);
  });

  // An invented but usual 5-inch 6S craft: the trade expects these windows (common practice, no source).
  it('puts a usual 5-inch 6S craft where the trade expects it', () => {
    const story = storyOf();
    expect(story.thrustToWeight).toBeGreaterThan(6);
    expect(story.thrustToWeight).toBeLessThan(12);
    expect(story.hoverThrottle).toBeGreaterThan(0.2);
    expect(story.hoverThrottle).toBeLessThan(0.35);
    expect(story.lastThrustToWeight).toBeLessThan(story.thrustToWeight);
  });

  it('integrates endurance to 0.1 % of a thousand slices, and spends the charge exactly', () => {
    const model = exampleQuad();
    const circuit = circuitOf(model, neutralLevers);
    const trim = hoverTrim(model, circuit);
    if (!trim.ok) throw new Error(trim.reason);
    const supply = emptySupply(4);
    const fine = drain(circuit, 0.2, 1000, (charge) =>
      steadyDraw(hoverCurrent(circuit, trim.value, charge, supply)),
    );
    const story = storyOf();
    expect(Math.abs(story.endurance.duration / fine.duration - 1)).toBeLessThan(1e-3);
    expect(story.endurance.meanCurrent * story.endurance.duration).toBeCloseTo(0.8 * 1.3 * 3600, 6);
  });

  it('ends at the cut-off when the pack sags, where a fine integration ends', () => {
    const base = exampleQuad();
    const sagging = exampleQuad({ pack: { ...base.pack, resistance: 0.5 }, landingReserve: 0.02 });
    const circuit = circuitOf(sagging, neutralLevers);
    const trim = hoverTrim(sagging, circuit);
    if (!trim.ok) throw new Error(trim.reason);
    const supply = emptySupply(4);
    const fine = drain(circuit, 0.02, 2000, (charge) =>
      steadyDraw(hoverCurrent(circuit, trim.value, charge, supply)),
    );
    const story = hoverStory(sagging, neutralLevers, []);
    if (!story.ok) throw new Error(story.reason);
    expect(story.value.endurance.end).toBe('cut-off voltage');
    expect(fine.end).toBe('cut-off voltage');
    expect(Math.abs(story.value.endurance.chargeLeft - fine.chargeLeft)).toBeLessThan(0.01);
    expect(Math.abs(story.value.endurance.duration / fine.duration - 1)).toBeLessThan(0.02);
  });

  it('answers each lever in its own direction', () => {
    const base = storyOf();
    expect(storyOf({}, { thrustScale: 1.1 }).thrustToWeight).toBeGreaterThan(base.thrustToWeight);
    expect(storyOf({}, { torqueScale: 1.1 }).endurance.duration).toBeLessThan(base.endurance.duration);
    expect(storyOf({}, { packCapacityScale: 1.1 }).endurance.duration / base.endurance.duration).toBeCloseTo(
      1.1,
      6,
    );
    expect(storyOf({}, { packResistanceScale: 1.3 }).thrustToWeight).toBeLessThan(base.thrustToWeight);
    expect(storyOf({}, { massScale: 1.05 }).hoverThrottle).toBeGreaterThan(base.hoverThrottle);
    expect(storyOf({}, { windingResistanceScale: 1.3 }).thrustToWeight).toBeLessThan(base.thrustToWeight);
    expect(storyOf({}, { coolingScale: 0.7 }).hoverHeat[0]!.settled!.winding).toBeGreaterThan(
      base.hoverHeat[0]!.settled!.winding,
    );
    expect(storyOf({}, { styleScale: 1.2 }).styles[4]!.duration).toBeLessThan(base.styles[4]!.duration);
    expect(storyOf({}, { downloadScale: 2 }).endurance.duration).toBeLessThan(base.endurance.duration);
  });

  it('says by how much it falls short of hovering', () => {
    const story = hoverStory(exampleQuad({ mass: 9 }), neutralLevers, []);
    expect(story.ok ? '' : story.reason).toMatch(
      /cannot hover .* weighs 88.26 N and full throttle .* lifts \d+/,
    );
  });

  it('refuses an aircraft without mass, or flying on more than its charge', () => {
    expect(() => hoverStory(exampleQuad({ mass: -1 }), neutralLevers, [])).toThrow(
      /mass must be above 0; found -1/,
    );
    expect(() => hoverStory(exampleQuad({ landingReserve: 1 }), neutralLevers, [])).toThrow(/landingReserve/);
    expect(() => hoverStory(exampleQuad({ stations: [] }), neutralLevers, [])).toThrow(/at least one motor/);
  });

  it('refuses a style that does not fill its time', () => {
    const half = { name: 'half', bins: [{ share: 0.5, thrustToWeight: 1 }], source: 'test' };
    expect(() => hoverStory(exampleQuad(), neutralLevers, [half])).toThrow(
      /shares of style half must add to 1; found 0.5/,
    );
  });

  // A style that only hovers is the hover: same model by two roads.
  it('flies a style of nothing but hover as long as the hover', () => {
    const still = { name: 'still', bins: [{ share: 1, thrustToWeight: 1 }], source: 'test' };
    const story = hoverStory(exampleQuad(), neutralLevers, [still]);
    if (!story.ok) throw new Error(story.reason);
    expect(story.value.styles[0]!.ofHover).toBeCloseTo(1, 2);
  });

  it('refuses a lever of zero by name', () => {
    expect(() => hoverStory(exampleQuad(), { ...neutralLevers, massScale: 0 }, [])).toThrow(/massScale/);
  });
});
