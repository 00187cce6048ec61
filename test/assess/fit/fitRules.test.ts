import { describe, expect, it } from 'vitest';
import { fitRules } from '../../../src/assess/fit/fitLines.ts';
import type { FitVerdict } from '../../../src/assess/fit/types.ts';
import { CASES } from './cases.ts';
import { look } from './variations.ts';

const RANK = { stop: 0, risk: 1, note: 2 } as const;

/** The worst that a rule says; `passes` when all pass, `silent` when it says nothing. */
function worst(verdicts: readonly FitVerdict[]) {
  if (verdicts.length === 0) return 'silent';
  const failing = verdicts.filter((verdict) => !verdict.passes).map((verdict) => verdict.severity);
  return failing.sort((a, b) => RANK[a] - RANK[b])[0] ?? 'passes';
}

it('tests every rule there is, and no other', () => {
  expect(Object.keys(CASES).sort()).toEqual(fitRules.map(({ id }) => id).sort());
});

describe.each(fitRules.map((rule) => [rule.id, rule] as const))('%s', (id, rule) => {
  const cases = CASES[id] ?? [];

  it.each(cases.map((each) => [each.when, each.gives, each.vary] as const))('%s: %s', (_, gives, vary) => {
    const verdicts = look(id, vary);
    expect(worst(verdicts), JSON.stringify(verdicts)).toBe(gives);
  });

  it('is seen both to speak up and to hold its peace', () => {
    const seen = cases.map(({ gives }) => gives);
    expect(seen.some((gives) => gives !== 'passes' && gives !== 'silent')).toBe(true);
    // What holds for every craft in a region cannot pass.
    if (id !== 'mass-class')
      expect(seen.some((gives) => gives === 'passes' || gives === 'silent')).toBe(true);
  });

  it('gives just the severities it tells of', () => {
    const seen = new Set(cases.map(({ gives }) => gives).filter((gives) => gives in RANK));
    expect([...seen].sort()).toEqual([...rule.severities].sort());
  });
});
