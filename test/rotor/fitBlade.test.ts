import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { rotorBand } from '../../src/rotor/band.ts';
import { bladeFromNameplate, bladeFromTable } from '../../src/rotor/blade.ts';
import { anchorBlade, fitBlade } from '../../src/rotor/fitBlade.ts';
import { nextMeasurement } from '../../src/rotor/nextMeasurement.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import type { Blade, MeasuredPoint } from '../../src/rotor/types.ts';
import { sections } from './arbitrary.ts';

const air = standardAtmosphere({ height: 0 });
const plate = { diameter: 0.127, pitch: 0.0889, bladeCount: 3 };
const named = bladeFromNameplate(plate);

function measured(blade: Blade, angularSpeed: number, axialSpeed = 0): MeasuredPoint {
  const state = solveRotor(blade, sections, { angularSpeed, axialSpeed, air });
  if (!state.ok) throw new Error(state.reason);
  return { angularSpeed, axialSpeed, thrust: state.value.thrust, power: state.value.power, air };
}

describe('anchoring', () => {
  it('one point is met within 1.5 % by a propeller as odd as most', () => {
    const truth = { ...named, pitchOffset: 0.03, dragScale: 1.25 };
    const point = measured(truth, 1500);
    const fit = anchorBlade(named, sections, point);
    if (!fit.ok) throw new Error(fit.reason);
    expect(fit.value.anchored).toBe(true);
    const again = measured(fit.value, 1500);
    expect(Math.abs(again.thrust / point.thrust - 1)).toBeLessThan(0.015);
    expect(Math.abs(again.power / point.power - 1)).toBeLessThan(0.015);
  });

  it('many points find the pitch and drag they were made with', () => {
    const truth = { ...named, pitchOffset: 0.03, dragScale: 1.25 };
    const points = [900, 1500, 2200].flatMap((omega) =>
      [0, 0.1, 0.2].map((flow) => measured(truth, omega, flow * omega * 0.0635)),
    );
    const fit = fitBlade(named, sections, points);
    if (!fit.ok) throw new Error(fit.reason);
    expect(fit.value.pitchOffset).toBeCloseTo(0.03, 2);
    expect(fit.value.dragScale).toBeCloseTo(1.25, 1);
  });

  it('a point the blade already meets changes nothing', () => {
    const fit = anchorBlade(named, sections, measured(named, 1500));
    if (!fit.ok) throw new Error(fit.reason);
    expect(Math.abs(fit.value.pitchOffset)).toBeLessThan(1e-6);
    expect(fit.value.dragScale).toBeCloseTo(1, 6);
  });

  it('keeps its tightest band among its points and widens it away from them', () => {
    const truth = { ...named, pitchOffset: 0.03, dragScale: 1.25 };
    const fit = fitBlade(named, sections, [measured(truth, 1000), measured(truth, 1600)]);
    if (!fit.ok) throw new Error(fit.reason);
    const width = (angularSpeed: number) => {
      const condition = { angularSpeed, axialSpeed: 0, air };
      const state = solveRotor(fit.value, sections, condition);
      if (!state.ok) throw new Error(state.reason);
      const band = rotorBand(fit.value, sections, condition, state.value);
      if (!band.ok) throw new Error(band.reason);
      const [low, high] = band.value.thrustCoefficient;
      return (high - low) / state.value.thrustCoefficient;
    };
    expect(width(1300)).toBeLessThan(1.05 * width(1600));
    expect(width(500)).toBeGreaterThan(1.3 * width(1000));
    expect(width(2900)).toBeGreaterThan(1.3 * width(1600));
  });

  it('a reading of something else is refused in words', () => {
    const point = measured(named, 1500);
    const wrong = anchorBlade(named, sections, { ...point, thrust: 4 * point.thrust });
    expect(wrong.ok).toBe(false);
    if (!wrong.ok) expect(wrong.reason).toContain('check diameter');
    expect(() => fitBlade(named, sections, [])).toThrow(/at least one/);
    expect(() => anchorBlade(named, sections, { ...point, power: -1 })).toThrow(/power/);
  });
});

describe('bands', () => {
  const width = (blade: Blade, angularSpeed: number, axialSpeed = 0) => {
    const condition = { angularSpeed, axialSpeed, air };
    const state = solveRotor(blade, sections, condition);
    if (!state.ok) throw new Error(state.reason);
    const band = rotorBand(blade, sections, condition, state.value);
    if (!band.ok) throw new Error(band.reason);
    const [low, high] = band.value.thrustCoefficient;
    expect(low).toBeLessThan(state.value.thrustCoefficient);
    expect(Math.abs(band.value.correlation)).toBeLessThanOrEqual(1);
    return (high - low) / state.value.thrustCoefficient;
  };

  it('each step of knowledge narrows the band', () => {
    const chord = bladeFromNameplate({ ...plate, chordAt75: 0.0115 });
    const table = bladeFromTable({ ...plate, ...named });
    const anchor = anchorBlade(named, sections, measured(named, 1500));
    if (!anchor.ok) throw new Error(anchor.reason);
    expect(width(chord, 1500)).toBeLessThan(width(named, 1500));
    expect(width(table, 1500)).toBeLessThan(width(named, 1500));
    expect(width(anchor.value, 1500)).toBeLessThan(0.5 * width(table, 1500));
  });

  it('widens towards zero thrust and beyond the measured tip speeds', () => {
    expect(width(named, 1500, 15)).toBeGreaterThan(1.7 * width(named, 1500));
    expect(width(named, 4000)).toBeGreaterThan(width(named, 1500));
  });

  it('points that contradict each other, or are known badly, leave it wider, one among good ones less', () => {
    // A table and a stand 28 % apart in power once gave a drag of 2.95 and the band of a good stand.
    const [slow, fast] = [measured(named, 1000), measured(named, 1600)];
    const fitted = (points: readonly MeasuredPoint[]) => {
      const fit = fitBlade(named, sections, points);
      if (!fit.ok) throw new Error(fit.reason);
      return width(fit.value, 1300);
    };
    const good = fitted([slow, fast]);
    const torn = fitted([slow, { ...slow, thrust: 1.15 * slow.thrust, power: 1.28 * slow.power }, fast]);
    expect(torn).toBeGreaterThan(1.3 * good);
    const rough = { thrustSpread: 0.1, powerSpread: 0.1 };
    const unsure = fitted([
      { ...slow, ...rough },
      { ...fast, ...rough },
    ]);
    expect(unsure).toBeGreaterThan(1.3 * good);
    expect(fitted([slow, { ...fast, ...rough }])).toBeLessThan(unsure);
    // However badly known, never worse than without them.
    const useless = { thrustSpread: 9, powerSpread: 9 };
    expect(fitted([{ ...slow, ...useless }])).toBeLessThan(1.1 * width(named, 1300));
  });

  it('a point at a fast tip tells about fast tips, and not about slow ones', () => {
    const fit = anchorBlade(named, sections, measured(named, 3200));
    const slow = anchorBlade(named, sections, measured(named, 1400));
    if (!fit.ok || !slow.ok) throw new Error('no fit');
    expect(width(fit.value, 3200)).toBeLessThan(0.6 * width(slow.value, 3200));
    expect(width(fit.value, 1400)).toBeGreaterThan(width(slow.value, 1400));
  });

  it('weighs points by their spreads', () => {
    const low = measured(named, 1500);
    const high = { ...low, power: 1.2 * low.power };
    const drag = (points: readonly MeasuredPoint[]) => {
      const fit = fitBlade(named, sections, points);
      if (!fit.ok) throw new Error(fit.reason);
      return fit.value.dragScale;
    };
    const middle = drag([low, high]);
    expect(drag([{ ...low, powerSpread: 0.2 }, high])).toBeGreaterThan(middle);
    expect(drag([low, { ...high, powerSpread: 0.2 }])).toBeLessThan(middle);
    expect(() => drag([{ ...low, powerSpread: 0 }])).toThrow(/powerSpread/);
  });

  it('says that a point on the stand pays most, and nothing once it is there', () => {
    const next = nextMeasurement(named, sections, { angularSpeed: 1500, axialSpeed: 0, air });
    if (!next.ok) throw new Error(next.reason);
    expect(next.value[0]!.measurement).toBe('static thrust and power at the rpm asked');
    expect(next.value).toHaveLength(3);
    for (const gain of next.value) expect(gain.thrustBand).toBeLessThan(1.02);
    const done = nextMeasurement({ ...named, anchored: true }, sections, {
      angularSpeed: 1500,
      axialSpeed: 0,
      air,
    });
    expect(done.ok && done.value).toEqual([]);
  });
});
