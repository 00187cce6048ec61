// The engine's own functions are the outside check; the bounds are those Abramowitz and Stegun give.
import { expect, it } from 'vitest';
import { arcCosine, cosine, decay, sine } from '../../src/rotor/polynomials.ts';

const STEPS = 20_000;
const worst = (error: (share: number) => number) => {
  let most = 0;
  for (let i = 0; i <= STEPS; i++) most = Math.max(most, Math.abs(error(i / STEPS)));
  return most;
};

it('sine and cosine hold to 4e-9 from one right angle to the other', () => {
  const angle = (share: number) => (share - 0.5) * Math.PI;
  expect(worst((s) => sine(angle(s)) - Math.sin(angle(s)))).toBeLessThan(4e-9);
  expect(worst((s) => cosine(angle(s)) - Math.cos(angle(s)))).toBeLessThan(4e-9);
});

it('decay holds to 1e-8 of itself from 0 to 14', () => {
  expect(worst((s) => decay(14 * s) / Math.exp(-14 * s) - 1)).toBeLessThan(1e-8);
});

it('arcCosine holds to 3e-8 from 0 to 1', () => {
  expect(worst((s) => arcCosine(s) - Math.acos(s))).toBeLessThan(3e-8);
});
