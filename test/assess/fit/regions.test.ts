import { describe, expect, it } from 'vitest';
import { massClassOf, REGION_RULES, radioBandOf, sourceOf } from '../../../src/assess/fit/regions.ts';

const regions = Object.entries(REGION_RULES);
const facts = regions.flatMap(([, rules]) => [
  ...rules.massClasses,
  rules.observer,
  rules.people,
  ...rules.radio,
]);

describe('regulations by region', () => {
  it('date and cite every fact, and leave the last word to local rules', () => {
    for (const fact of facts) {
      expect(fact.asOf).toMatch(/^20\d\d-(0[1-9]|1[0-2])$/);
      expect(fact.citation.length).toBeGreaterThan(8);
      expect(sourceOf(fact)).toContain('local rules decide');
      if (fact.checked === 'from memory') expect(sourceOf(fact)).toContain('from memory');
    }
  });

  it.each(regions)('%s: mass classes rise and leave none out', (_, { massClasses }) => {
    const tops = massClasses.map(({ upTo }) => upTo);
    expect([...tops].sort((a, b) => a - b)).toEqual(tops);
    expect(tops.at(-1)).toBe(Number.POSITIVE_INFINITY);
  });

  // EU 2019/947 UAS.OPEN.020(5)(a): less than 250 g. 14 CFR 48.15(b): 0.55 pounds or less; 1 lb = 0.45359237 kg.
  it('holds the letter of each threshold', () => {
    expect(massClassOf('EU', 0.2499)?.upTo).toBe(0.25);
    expect(massClassOf('EU', 0.25)?.upTo).toBe(Number.POSITIVE_INFINITY);
    const pounds = 0.55 * 0.45359237;
    expect(massClassOf('US', pounds)?.upTo).toBe(pounds);
    expect(massClassOf('US', pounds + 1e-9)?.upTo).toBe(Number.POSITIVE_INFINITY);
    expect(massClassOf('UK', 0.0999)?.upTo).toBe(0.1);
    expect(massClassOf('UK', 0.1)?.upTo).toBe(0.25);
    expect(massClassOf('other', 0.1)).toBeUndefined();
  });

  it('knows the bands that small aircraft use', () => {
    expect(radioBandOf('UK', 5.8e9)?.radiated).toBe(0.025);
    expect(radioBandOf('EU', 2.44e9)?.radiated).toBe(0.1);
    expect(radioBandOf('US', 5.8e9)?.radiated).toBe(4);
    expect(radioBandOf('EU', 1.3e9)).toBeUndefined();
    expect(radioBandOf('other', 5.8e9)).toBeUndefined();
  });
});
