import { describe, expect, it } from 'vitest';
import {
  packEnergy,
  packResistance,
  packSource,
  polarisationAfter,
  usableCapacity,
} from '../../src/drive/battery.ts';
import { chemistries, openCircuitVoltage } from '../../src/drive/chemistry.ts';
import { packFromNameplate } from '../../src/drive/packFromNameplate.ts';

const plate = { chemistry: 'LiPo', series: 6, parallel: 1, capacity: 4680, labelRate: 100 } as const;
const { model } = packFromNameplate(plate);

describe('pack', () => {
  it('is full at the top, empty at the bottom, and never rises on the way down', () => {
    for (const chemistry of ['LiPo', 'LiHV', 'Li-ion'] as const) {
      expect(openCircuitVoltage(chemistry, 1)).toBe(chemistries[chemistry].fullVoltage);
      for (let s = 0; s < 1; s += 0.01) {
        expect(openCircuitVoltage(chemistry, s + 0.01)).toBeGreaterThan(openCircuitVoltage(chemistry, s));
      }
    }
  });

  it('answers a punch out of a settled hover as the RC pair does', () => {
    const settled = packSource(model, { charge: 0.7, temperature: 298.15, settledCurrent: 20 });
    const steady = packSource(model, { charge: 0.7, temperature: 298.15 });
    // At the settled current both are the same pack.
    expect(settled.emf - 20 * settled.resistance).toBeCloseTo(steady.emf - 20 * steady.resistance, 10);
    const state = { charge: 0.7, temperature: 298.15 };
    const built = steady.resistance * model.slowShare * 20;
    expect(polarisationAfter(model, state, 0, 20, 1e4)).toBeCloseTo(built, 10);
    // One time constant: 1 - 1/e.
    expect(polarisationAfter(model, state, 0, 20, model.polarisationTime) / built).toBeCloseTo(0.632121, 5);
  });

  // Pouch cells about double their resistance between 25 and 0 degC (common practice, no source).
  it('stiffens when warm and weakens when cold and old', () => {
    const ratio = packResistance(model, 0.5, 273.15) / packResistance(model, 0.5, 298.15);
    expect(ratio).toBeGreaterThan(1.8);
    expect(ratio).toBeLessThan(2.6);
    expect(usableCapacity(model, 273.15)).toBeLessThan(usableCapacity(model, 298.15));
    expect(usableCapacity({ ...model, cycles: 250 }, 298.15) / 4680).toBeCloseTo(0.8, 10);
  });

  it('halves a pouch label and takes a round cell at its word', () => {
    expect(packFromNameplate(plate).continuousCurrent.value).toBeCloseTo(65, 10);
    const round = packFromNameplate({
      chemistry: 'Li-ion',
      series: 6,
      parallel: 2,
      capacity: 2 * 3 * 3600,
      labelRate: 5,
    });
    expect(round.continuousCurrent.value).toBeCloseTo(30, 10);
    // A 3 Ah, 15 A cell has about 23 mohm; six groups of two make 70.
    expect(round.resistance.value).toBeCloseTo(0.07, 10);
  });

  it('never believes a label beyond the best cells', () => {
    const bold = packFromNameplate({ ...plate, labelRate: 400 });
    expect(bold.resistance.value).toBeCloseTo((6 * 0.0045) / 1.3, 10);
    expect(bold.continuousCurrent.value).toBeLessThan(110);
  });

  // 6 x 3.7 V x 1.3 Ah = 28.9 Wh on the label; the curve's own integral is a little higher.
  it('holds about its nominal energy', () => {
    expect(packEnergy(model) / (6 * 3.7 * 4680)).toBeGreaterThan(1);
    expect(packEnergy(model) / (6 * 3.7 * 4680)).toBeLessThan(1.06);
    expect(packEnergy(model, 0.2)).toBeLessThan(packEnergy(model));
  });
});
