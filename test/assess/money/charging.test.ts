import { describe, expect, it } from 'vitest';
import { chargingMeasures, sessionCharging } from '../../../src/assess/money/charging.ts';
import type { Brief } from '../../../src/build/schema/brief.ts';
import { contextOf } from '../fit/variations.ts';

const sessionOf = (brief?: (brief: Brief) => void) => {
  const context = contextOf(brief === undefined ? {} : { brief });
  return sessionCharging(context.craft, context.brief, context.shelf);
};

describe('charging that the packs imply', () => {
  // W = S x 4.2 V x Ah x C: 6 x 4.2 x 1.3 x 1.
  it('asks 32.76 W for 6S 1300 mAh at 1C', () => {
    expect(sessionOf()?.powerOnePack).toBeCloseTo(6 * 4.2 * 1.3, 9);
  });

  // Three quarters flown out, and a fifth of an hour for the slow end: 0.95 h a pack, one by one.
  it('takes 3.8 h for four packs on one output', () => {
    expect(sessionOf()?.sessionTime).toBeCloseTo(4 * 0.95 * 3600, 6);
  });

  it('takes half of that on two outputs', () => {
    const twin = sessionOf((brief) => (brief.alreadyOwns = ['bollard-500-twin']));
    expect(twin?.sessionTime).toBeCloseTo(2 * 0.95 * 3600, 6);
  });

  it('is not known of a charger that is owned without saying which', () => {
    expect(sessionOf((brief) => (brief.alreadyOwns = ['charger']))).toBeUndefined();
    const context = contextOf({ brief: (brief) => (brief.alreadyOwns = ['charger']) });
    expect(chargingMeasures(context.craft, context.brief, context.shelf)).toEqual([]);
  });

  it('stands in two measures with bands about the value', () => {
    const context = contextOf({});
    const measures = chargingMeasures(context.craft, context.brief, context.shelf);
    expect(measures.map(({ id }) => id)).toEqual(['charging-power', 'session-charging-time']);
    for (const { value, band } of measures) {
      expect(band[0]).toBeLessThan(value);
      expect(band[1]).toBeGreaterThan(value);
    }
  });
});
