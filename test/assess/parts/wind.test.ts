import { describe, expect, it } from 'vitest';
import type { PartContext } from '../../../src/assess/parts/types.ts';
import { windHolding } from '../../../src/assess/parts/wind.ts';
import { contextOf } from './crafts.ts';

const inWind = (context: PartContext, value: number): PartContext => ({
  ...context,
  brief: { ...context.brief, site: { ...context.brief.site, wind: { ...context.brief.site.wind, value } } },
});

const turnstone = contextOf('first-freestyle/turnstone');
const ids = (wind: number) => {
  const { measures, findings } = windHolding.run(inWind(turnstone, wind));
  return {
    measures: measures.map(({ id }) => id),
    untold: findings.find(({ id }) => id === 'gust-untold'),
  };
};

describe('a sharp gust', () => {
  it('is told where the craft flies level in the wind', () => {
    const { measures, untold } = ids(7);
    expect(measures).toContain('gust-jolt');
    expect(measures).toContain('gust-push');
    expect(untold).toBeUndefined();
  });

  it('has no figure without a level flight to strike at, and words for it', () => {
    // The motors have too little left for the one, no propeller could give the thrust for the other.
    for (const [wind, why] of [
      [60, 'the pack cannot turn the motors'],
      [200, 'cannot give'],
    ] as const) {
      const { measures, untold } = ids(wind);
      expect(measures).not.toContain('gust-jolt');
      expect(measures).not.toContain('gust-push');
      expect(untold?.says).toContain(`no steady flight in ${wind}`);
      expect(untold?.says).toContain(why);
      expect(untold?.severity).toBe('note');
    }
  });

  it('strikes nothing in no wind, which needs no words', () => {
    const { measures, untold } = ids(0);
    expect(measures).not.toContain('gust-jolt');
    expect(untold).toBeUndefined();
  });
});
