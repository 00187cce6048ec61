import { describe, expect, it } from 'vitest';
import { andersonMixer } from '../../src/numerics/anderson.ts';

describe("Anderson's mixing", () => {
  it('solves a linear fixed point in as many rounds as it has unknowns and one or two (Walker and Ni 2011, theorem 2.2)', () => {
    // x -> A x + b with the eigenvalues -3, 0.9, 0.5: plain turns run away.
    const step = ([x, y, z]: Float64Array): Float64Array =>
      Float64Array.from([-3 * x! + 0.2 * y! + 1, 0.9 * y! + 0.1 * z! + 2, 0.5 * z! - 1]);
    const mixed = andersonMixer(5);
    let x = new Float64Array(3);
    for (let round = 0; round < 6; round++) {
      const moved = step(x).map((value, i) => value - x[i]!);
      x = Float64Array.from(mixed(x, moved));
    }
    const left = step(x).map((value, i) => Math.abs(value - x[i]!));
    expect(Math.max(...left)).toBeLessThan(1e-8);
  });

  it('takes the plain step first, and rests where nothing moves', () => {
    const mixed = andersonMixer(3);
    expect([...mixed(Float64Array.of(1, 2), Float64Array.of(0.5, -1))]).toEqual([1.5, 1]);
    expect([...mixed(Float64Array.of(1.5, 1), Float64Array.of(0, 0))]).toEqual([1.5, 1]);
  });
});
