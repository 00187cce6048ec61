import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, it } from 'vitest';
import { drydenLowAltitude, drydenSpectrum, gustComponents, passingTime } from '../../src/air/dryden.ts';
import { drydenTrace } from '../../src/air/drydenTrace.ts';

const turbulence = drydenLowAltitude(10, 8);
const airspeed = 9;
const request = { turbulence, airspeed, timeStep: 0.05, count: 1 << 17 };

describe('a Dryden trace', () => {
  it('is the same for the same seed and another for another', () => {
    const short = { ...request, count: 50 };
    const a = drydenTrace(short, xoroshiro128plus(7));
    expect(drydenTrace(short, xoroshiro128plus(7))).toEqual(a);
    expect(drydenTrace(short, xoroshiro128plus(8)).vertical).not.toEqual(a.vertical);
  });

  it('has the variance of the turbulence at coarse and fine steps', () => {
    // Sampling error of a variance over N correlation times is about sqrt(2/N); three of them allowed.
    for (const timeStep of [0.02, 0.5, 5]) {
      const trace = drydenTrace({ ...request, timeStep }, xoroshiro128plus(11));
      for (const component of gustComponents) {
        const independent = Math.min(
          request.count,
          (request.count * timeStep) / (2 * passingTime(turbulence, component, airspeed)),
        );
        const ratio = variance(trace[component]) / turbulence.intensity[component] ** 2;
        expect(Math.abs(ratio - 1)).toBeLessThan(3 * Math.sqrt(2 / independent));
      }
    }
  });

  it('has the autocorrelation of the Dryden form', () => {
    // Longitudinal exp(-t/T); lateral and vertical (1 - t/(2T)) exp(-t/T): Hoblit (1988), from memory.
    const trace = drydenTrace({ ...request, count: 1 << 19 }, xoroshiro128plus(3));
    for (const component of gustComponents) {
      const time = passingTime(turbulence, component, airspeed);
      for (const lag of [1, 10, 25]) {
        const r = (lag * request.timeStep) / time;
        const expected = component === 'longitudinal' ? Math.exp(-r) : (1 - r / 2) * Math.exp(-r);
        expect(Math.abs(correlation(trace[component], lag) - expected)).toBeLessThan(0.03);
      }
    }
  });

  it('has the spectrum asked for, band by band', () => {
    // Mean periodogram over 256 segments: relative sampling error 1/16 in each line, less over a band of lines.
    const length = 2048;
    const { timeStep } = request;
    const trace = drydenTrace({ ...request, count: length * 256 }, xoroshiro128plus(5));
    for (const component of gustComponents) {
      for (const line of [20, 60, 150]) {
        let measured = 0;
        let asked = 0;
        for (let k = line; k < line + 8; k++) {
          const omega = (2 * Math.PI * k) / (length * timeStep);
          measured += meanPower(trace[component], length, k, timeStep);
          asked += drydenSpectrum(turbulence, component, omega, airspeed);
        }
        expect(Math.abs(measured / asked - 1)).toBeLessThan(0.12);
      }
    }
  });

  it('refuses steps and counts that are none', () => {
    expect(() => drydenTrace({ ...request, timeStep: 0 }, xoroshiro128plus(1))).toThrow(/timeStep/);
    expect(() => drydenTrace({ ...request, count: 1.5 }, xoroshiro128plus(1))).toThrow(/count/);
  });
});

function variance(x: Float64Array): number {
  let sum = 0;
  for (const value of x) sum += value * value;
  return sum / x.length;
}

function correlation(x: Float64Array, lag: number): number {
  let sum = 0;
  for (let i = lag; i < x.length; i++) sum += x[i]! * x[i - lag]!;
  return sum / (x.length - lag) / variance(x);
}

/** One-sided spectral density per rad/s at line k, Hann window, mean over the segments. */
function meanPower(x: Float64Array, length: number, k: number, timeStep: number): number {
  const omega = (2 * Math.PI * k) / length;
  let total = 0;
  for (let start = 0; start < x.length; start += length) {
    let [re, im] = [0, 0];
    for (let i = 0; i < length; i++) {
      const windowed = x[start + i]! * (1 - Math.cos((2 * Math.PI * i) / length));
      re += windowed * Math.cos(omega * i);
      im -= windowed * Math.sin(omega * i);
    }
    total += re * re + im * im;
  }
  // The mean square of the window 1 - cos is 3/2; one-sided per rad/s: 2 dt / (2 pi N) |X|2.
  return ((total / (x.length / length)) * timeStep) / (Math.PI * length * 1.5);
}
