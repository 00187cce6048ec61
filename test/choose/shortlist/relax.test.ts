import { describe, expect, it } from 'vitest';
import type { Brief } from '../../../src/build/schema/brief.ts';
import { relaxationsOf, relaxedBy } from '../../../src/choose/shortlist/relax.ts';
import type { SearchState } from '../../../src/choose/shortlist/state.ts';
import type { Scored, ShortlistQuestion } from '../../../src/choose/shortlist/types.ts';

const brief = { name: 'b', budget: { amount: 1000, currency: 'GBP' }, massLimit: 0.8 } as unknown as Brief;
const question = {
  limits: [
    { measure: 'flown-time', least: 300 },
    { measure: 'all-up-mass', most: 0.7 },
  ],
  front: ['all-up-mass'],
} as unknown as ShortlistQuestion;

describe('each limit a tenth wider', () => {
  it('widens one at a time, away from what it shuts out', () => {
    const tries = relaxationsOf(brief, question);
    expect(tries.map(({ limit }) => limit)).toEqual(['budget', 'mass-limit', 'flown-time', 'all-up-mass']);
    expect(tries[0]?.brief.budget?.amount).toBeCloseTo(1100, 9);
    expect(tries[0]?.brief.massLimit).toBe(0.8);
    expect(tries[1]?.brief.massLimit).toBeCloseTo(0.88, 9);
    expect(tries[2]?.question.limits[0]?.least).toBeCloseTo(270, 9);
    expect(tries[2]?.question.limits[1]).toEqual(question.limits[1]);
    expect(tries[3]?.question.limits[1]?.most).toBeCloseTo(0.77, 9);
    expect(tries.every(({ question: { front } }) => front.length === 0)).toBe(true);
  });

  it('tells what comes in, what it gains, and that there is still nothing', () => {
    const scored = (key: string, standing: number) => ({ key, standing }) as unknown as Scored;
    const found = (...top: readonly Scored[]) => ({ top }) as unknown as SearchState;
    const asked = found(scored('a', 0.5), scored('b', 0.4));
    expect(relaxedBy('budget', found(scored('c', 0.6), scored('a', 0.5)), asked)).toMatchObject({
      entersList: 1,
      best: { key: 'c' },
    });
    expect(relaxedBy('budget', found(scored('c', 0.6), scored('a', 0.5)), asked).gain).toBeCloseTo(0.1, 9);
    expect(relaxedBy('budget', found(), found()).best).toBeUndefined();
  });
});
