import fc from 'fast-check';
import { expect, it } from 'vitest';
import { anyBuild, rotorPool } from './anyBuild.ts';
import { type Answer, askAll } from './ask.ts';

/** The small sister of `npm run bench -- fuzz`, which asks 100 000 builds over 300 propellers. */
const BUILDS = 600;

it('no random build gives a number that is none, an exception, or a refusal without words', () => {
  const solved = new Map<string, number>();
  fc.assert(
    fc.property(anyBuild(rotorPool(24, 7)), (build) => {
      for (const [question, answer] of askAll(build)) {
        if (answer === 'solved') solved.set(question, (solved.get(question) ?? 0) + 1);
        else expect(answer).not.toHaveProperty('fault');
      }
    }),
    { numRuns: BUILDS },
  );
  // Not by refusing everything.
  for (const question of ['hover story', 'at throttles', 'level flight', 'top speed', 'agility']) {
    expect(solved.get(question) ?? 0, question).toBeGreaterThan(BUILDS / 20);
  }
});

it('would notice', () => {
  const [build] = fc.sample(anyBuild(rotorPool(1, 7)), { numRuns: 1, seed: 1 });
  const broken = { ...build!, model: { ...build!.model, avionicsPower: Number.NaN } };
  const faults = [...askAll(broken).values()].filter(
    (answer: Answer) => typeof answer === 'object' && 'fault' in answer,
  );
  expect(faults.length).toBeGreaterThan(0);
});
