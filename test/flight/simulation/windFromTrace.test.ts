import { describe, expect, it } from 'vitest';
import { windFromTrace } from '../../../src/flight/simulation/windFromTrace.ts';

const trace = {
  longitudinal: Float64Array.from([0, 2, 4]),
  lateral: Float64Array.from([0, 1, 1]),
  vertical: Float64Array.from([0, 0, -3]),
};
const out = new Float64Array(3);

describe('wind from a trace of gusts', () => {
  it('a north wind blows south, its gusts along it', () => {
    windFromTrace(5, 0, trace, 0.5)(0.25, out);
    expect([...out]).toEqual([expect.closeTo(-6, 12), expect.closeTo(-0.5, 12), expect.closeTo(0, 12)]);
  });

  it('a west wind blows east, and a downdraught is down', () => {
    const read = windFromTrace(5, 1.5 * Math.PI, trace, 0.5);
    read(1, out);
    expect([...out]).toEqual([expect.closeTo(-1, 12), expect.closeTo(9, 12), expect.closeTo(3, 12)]);
    read(99, out);
    expect(out[1]).toBeCloseTo(9, 12);
  });

  it('one sample is a steady wind', () => {
    const still = {
      longitudinal: Float64Array.of(1),
      lateral: Float64Array.of(0),
      vertical: Float64Array.of(0),
    };
    windFromTrace(5, Math.PI, still, 1)(7, out);
    expect(out[0]).toBeCloseTo(6, 12);
  });
});
