import { describe, expect, it } from 'vitest';
import { dragOf } from '../../../src/assess/parts/dragOf.ts';
import { levelFigures, raisedFigures } from '../../../src/assess/parts/level/levelFigures.ts';
import { type LevelNominal, levelNominal } from '../../../src/assess/parts/level/levelNominal.ts';
import { bestSpeed, crossing, flatStretch, throughThree } from '../../../src/assess/parts/level/onCurve.ts';
import { levelFlight } from '../../../src/assess/parts/levelFlight.ts';
import { forwardOf, onlyElectrical } from '../../../src/assess/parts/speedStates.ts';
import { forwardPoint } from '../../../src/flight/forward/forwardPoint.ts';
import { rangeAt } from '../../../src/flight/forward/rangeAt.ts';
import { type Levers, neutralLevers } from '../../../src/flight/types.ts';
import type { Outcome } from '../../../src/numerics/outcome.ts';
import { contextOf } from './crafts.ts';

const must = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(outcome.reason);
  return outcome.value;
};

const context = contextOf('cruiser/curlew');
const flight = context.flight!;
const drag = dragOf(context.craft);
const nominalAt = (levers: Levers): LevelNominal =>
  must(levelNominal(must(forwardOf(flight, drag, { levers, balanceShift: 0 })), 0.4));
const nominal = nominalAt(neutralLevers);
const figures = levelFigures(nominal, 6);

describe('level flight of the Curlew', () => {
  it('finds the speeds of least current and least current over ground speed (dense scan)', () => {
    const at = (speed: number) => must(forwardPoint(nominal.craft, speed, 0.5)).point.packCurrent;
    const speeds = Array.from({ length: 200 }, (_, k) => 4 + 0.15 * k);
    const least = (cost: (speed: number) => number) =>
      speeds.reduce((best, speed) => (cost(speed) < cost(best) ? speed : best));
    // Optima are flat: what counts is the cost at the speed found.
    const longest = least(at);
    expect(at(figures['best-endurance-speed']!) / at(longest)).toBeLessThan(1.003);
    const furthest = least((speed) => at(speed) / speed);
    expect(Math.abs(figures['best-range-speed']! - furthest)).toBeLessThan(0.8);
    const against = least((speed) => (speed > 6.5 ? at(speed) / (speed - 6) : Number.POSITIVE_INFINITY));
    expect(Math.abs(figures['best-range-speed-against']! - against)).toBeLessThan(0.8);
    const along = least((speed) => at(speed) / (speed + 6));
    expect(Math.abs(figures['best-range-speed-with']! - along)).toBeLessThan(0.8);
  });

  it('flies faster against the wind than with it, as every pilot of long flights knows', () => {
    expect(figures['best-range-speed-against']!).toBeGreaterThan(figures['best-range-speed']!);
    expect(figures['best-range-speed-with']!).toBeLessThan(figures['best-range-speed']!);
    expect(figures['range-against-wind']!).toBeLessThan(figures['best-range']!);
    expect(figures['range-with-wind']!).toBeGreaterThan(figures['best-range']!);
  });

  it('knows no against and with in no wind', () => {
    const still = levelFigures(nominal, 0);
    for (const id of ['best-range-speed-against', 'range-with-wind']) expect(still[id]).toBeUndefined();
    expect(still['best-range']).toBeCloseTo(figures['best-range']!, 9);
  });

  it('gives wind ranges as a pack flown down at that speed does, to 1 %', () => {
    const flown = must(
      rangeAt(nominal.craft, figures['best-range-speed-against']!, 6, flight.model.landingReserve),
    );
    expect(figures['range-against-wind']! / flown.distance).toBeCloseTo(1, 2);
  });

  it('leans as far as the camera is tilted at the speed it names', () => {
    const speed = figures['camera-level-speed']!;
    expect(must(forwardPoint(nominal.craft, speed, 0.5)).tilt).toBeCloseTo(0.4, 2);
  });

  it.each([
    ['thrustScale', 0.15],
    ['torqueScale', 0.15],
    ['massScale', 0.03],
    ['dragScale', 0.25],
    ['speedConstantScale', 0.03],
    ['windingResistanceScale', 0.2],
    ['packResistanceScale', 0.25],
    ['packCapacityScale', 0.05],
    ['noLoadCurrentScale', 0.2],
  ] as const)('tells what raising %s does nearly as a whole curve anew does', (lever, deviation) => {
    const levers = { ...neutralLevers, [lever]: 1 + deviation };
    const state = { levers, balanceShift: 0 };
    const raised = must(forwardOf(flight, drag, state));
    const quick = raisedFigures(nominal, raised, levers, onlyElectrical(state), 6);
    const whole = levelFigures(nominalAt(levers), 6);
    for (const id of ['top-speed', 'best-range', 'best-endurance-time', 'range-against-wind'] as const) {
      const [from, to, short] = [figures[id]!, whole[id]!, quick[id]!];
      // A tenth of the change, or 0.8 % where there is hardly any.
      const allowed = Math.max(0.1 * Math.abs(to - from), 0.008 * from);
      expect(Math.abs(short - to), `${id}: ${from} to ${to}, quick ${short}`).toBeLessThan(allowed);
    }
  });

  it('has a power curve that dips below hover and rises to the top speed', () => {
    const { data } = levelFlight.run(context);
    const powers = data!.powerCurve!.map(({ power }) => power);
    expect(Math.min(...powers)).toBeLessThan(0.97 * powers[0]!);
    expect(powers.at(-1)!).toBeGreaterThan(2 * powers[0]!);
  });
});

describe('reading a curve', () => {
  it('finds the vertex of a parabola and the tangent from the wind exactly', () => {
    const speeds = [0, 2, 4, 6, 8, 10];
    // I = 5 + (V - 5)2/10: least at 5; I/V least where V2 = 75.
    const currents = speeds.map((v) => 5 + (v - 5) ** 2 / 10);
    expect(bestSpeed(speeds, currents, 'longest')).toBeCloseTo(5, 12);
    expect(bestSpeed(speeds, currents, 0)!).toBeCloseTo(Math.sqrt(75), 0);
    expect(bestSpeed(speeds, currents, 12)).toBeUndefined();
  });

  // Told before: a place that leapt with a hair of any input, as a band without width, below 0, or from nowhere to everywhere.
  it('tells the flat bottom of a curve as a stretch of speeds, never without width and never below 0', () => {
    const speeds = [0, 2, 4, 6, 8, 10];
    const bowl = speeds.map((v) => 5 + (v - 4) ** 2 / 10);
    const [low, high] = flatStretch(speeds, bowl, 4, 0.01);
    expect(low).toBeCloseTo(4 - (2 * 0.05) / 0.4, 12);
    expect(high).toBeCloseTo(4 + (2 * 0.05) / 0.4, 12);
    const rising = speeds.map((v) => 5 + v);
    expect(flatStretch(speeds, rising, 0, 0.01)[0]).toBe(0);
    expect(flatStretch(speeds, rising, 0, 0.01)[1]).toBeCloseTo(0.05, 12);
    const flat = speeds.map(() => 5);
    expect(flatStretch(speeds, flat, 0, 0.01)).toEqual([0, 10]);
  });

  it('bands the speed that stays up longest by it', () => {
    const measure = levelFlight.run(context).measures.find(({ id }) => id === 'best-endurance-speed')!;
    const [low, high] = measure.band;
    expect(low).toBeGreaterThan(0);
    expect(low).toBeLessThan(measure.value - 0.5);
    expect(high).toBeGreaterThan(measure.value + 0.5);
    expect(high).toBeLessThan(figures['best-range-speed']! * 1.5);
    expect(measure.how).toMatch(/within 1 %/);
  });

  it('crosses a level by a straight line, rising only', () => {
    expect(crossing([0, 1, 2], [0, 4, 8], 6)).toBeCloseTo(1.5, 12);
    expect(crossing([0, 1, 2], [8, 4, 0], 6)).toBeUndefined();
  });

  it('goes through three points', () => {
    const f = throughThree([1, 2, 4], [1, 4, 16]);
    expect(f(3)).toBeCloseTo(9, 12);
    expect(throughThree([1, 1, 4], [1, 4, 16])(3)).toBe(4);
  });
});
