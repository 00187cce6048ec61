import { describe, expect, it } from 'vitest';
import { drydenLowAltitude, passingTime } from '../../src/air/dryden.ts';
import { type HoldRequest, holdInGusts, plainHold } from '../../src/flight/gustResponse.ts';

const wind = 7;
const request: HoldRequest = {
  mass: 0.7,
  gravity: 9.80665,
  airDensity: 1.225,
  dragArea: 0.012,
  rotorDragSlope: 0.08,
  axialThrustSlope: 0.6,
  wind,
  turbulence: drydenLowAltitude(10, 6.5),
  controller: plainHold,
};

const response = (r: HoldRequest) => {
  const outcome = holdInGusts(r);
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

describe('holding place in Dryden gusts', () => {
  it('agrees with the Lyapunov equation of the same loop in state space', () => {
    // An independent road: A P + P A' + B B' = 0 for (gust, place, speed, tilt, tilt rate).
    const { turbulence, controller, mass, gravity } = request;
    const T = passingTime(turbulence, 'longitudinal', wind);
    const d = (1.225 * 0.012 * wind + 0.08) / mass;
    const { placeGain: kp, speedGain: kv, tiltFrequency: f, tiltDamping: z } = controller;
    const A = [
      [-1 / T, 0, 0, 0, 0],
      [0, 0, 1, 0, 0],
      [d, 0, -d, gravity, 0],
      [0, 0, 0, 0, 1],
      [0, (-f * f * kp) / gravity, (-f * f * kv) / gravity, -f * f, -2 * z * f],
    ];
    const noise = turbulence.intensity.longitudinal ** 2 * (2 / T);
    const P = lyapunov(A, noise);
    const { longitudinal } = response(request);
    expect(longitudinal.place ** 2 / P[1]![1]!).toBeCloseTo(1, 5);
    expect(longitudinal.speed ** 2 / P[2]![2]!).toBeCloseTo(1, 5);
    expect(longitudinal.answer ** 2 / P[3]![3]!).toBeCloseTo(1, 5);
    const row = A[2]!;
    let acceleration = 0;
    for (let i = 0; i < 5; i++) for (let j = 0; j < 5; j++) acceleration += row[i]! * row[j]! * P[i]![j]!;
    expect(longitudinal.acceleration ** 2 / acceleration).toBeCloseTo(1, 5);
  });

  it('moves less with more mass, more with more drag and rougher air', () => {
    const base = response(request).longitudinal;
    expect(response({ ...request, mass: 1.4 }).longitudinal.speed).toBeLessThan(base.speed);
    expect(response({ ...request, dragArea: 0.03 }).longitudinal.place).toBeGreaterThan(base.place);
    const rough = response({ ...request, turbulence: drydenLowAltitude(10, 13) }).longitudinal;
    expect(rough.answer).toBeCloseTo(2 * base.answer, 9);
  });

  it('is pushed less across the wind than along it by its drag', () => {
    const { longitudinal, lateral } = response({ ...request, rotorDragSlope: 0 });
    expect(lateral.acceleration).toBeLessThan(longitudinal.acceleration);
  });

  it('says when the gains cannot hold the craft', () => {
    const slow = holdInGusts({ ...request, controller: { ...plainHold, tiltFrequency: 1, placeGain: 4 } });
    expect(slow.ok).toBe(false);
    expect(() => holdInGusts({ ...request, wind: 0 })).toThrow(/wind/);
    expect(() => holdInGusts({ ...request, dragArea: -1 })).toThrow(/dragArea/);
  });
});

/** Covariance of x' = A x + b w with unit noise of strength `noise` on the first state, by Gauss elimination. */
function lyapunov(A: number[][], noise: number): number[][] {
  const n = A.length;
  const size = n * n;
  const M = Array.from({ length: size }, () => new Array<number>(size + 1).fill(0));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const row = M[i * n + j]!;
      for (let k = 0; k < n; k++) {
        row[k * n + j]! += A[i]![k]!;
        row[i * n + k]! += A[j]![k]!;
      }
      row[size] = i === 0 && j === 0 ? -noise : 0;
    }
  }
  for (let c = 0; c < size; c++) {
    let p = c;
    for (let r = c; r < size; r++) if (Math.abs(M[r]![c]!) > Math.abs(M[p]![c]!)) p = r;
    [M[c], M[p]] = [M[p]!, M[c]!];
    for (let r = 0; r < size; r++) {
      if (r === c) continue;
      const factor = M[r]![c]! / M[c]![c]!;
      for (let k = c; k <= size; k++) M[r]![k]! -= factor * M[c]![k]!;
    }
  }
  return Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => M[i * n + j]![size]! / M[i * n + j]![i * n + j]!),
  );
}
