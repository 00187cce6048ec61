import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { busTransient } from '../../../src/drive/busTransient.ts';
import { bus, ceramic, electrolytic, motors } from './example.ts';

const whole = {
  ...bus,
  motors: [motors],
  drop: { duration: 0.02, idleDuty: 0.04 },
  pulseFrequency: 24e3,
};
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('peak volts of a bus', () => {
  it('tells its parts, and takes the higher of cut and braking', () => {
    const found = busTransient(whole);
    expect(found.governs).toBe('braking');
    expect(found.peak).toBe(found.braking.peak);
    expect(found.time).toBe(found.braking.time);
    expect(found.braking.mean + found.braking.ripple).toBeCloseTo(found.peak, 10);
    // Less comes back than with the rotor's speed held: 4 x 17.8^2/(4 x 25.2 x 0.2) = 62.7 A.
    expect(found.braking.returned).toBeGreaterThan(0.7 * 62.7);
    expect(found.braking.returned).toBeLessThan(62.7);
    expect(found.cut.peak).toBeLessThan(found.peak);
  });

  it('falls to the cut where motors have no speed to give', () => {
    // A pack without sag and motors that turn like flywheels of nothing: they slow with the duty.
    const light = { ...motors, rotatingInertia: 1e-8 };
    const found = busTransient({ ...whole, sourceResistance: 0.001, motors: [light], capacitors: [ceramic] });
    expect(found.governs).toBe('cut');
    expect(found.peak).toBe(found.cut.peak);
    expect(found.time).toBe(found.cut.time);
    const sagging = busTransient({ ...whole, sourceResistance: 0.1, motors: [light] });
    expect(sagging.peak).toBe(25.2);
    expect(sagging.time).toBeUndefined();
  });

  const anyBus = fc.record({
    sourceResistance: between(0.004, 0.1),
    leads: between(0.01, 0.5),
    pulseFrequency: between(16e3, 96e3),
    fitted: fc.option(fc.record({ capacitance: between(1e-4, 2e-3), resistance: between(0.01, 0.06) })),
    more: fc.record({ capacitance: between(2e-4, 2e-3), resistance: between(0.01, 0.06) }),
  });

  it('is never raised by one more electrolytic capacitor', () => {
    fc.assert(
      fc.property(anyBus, ({ sourceResistance, leads, pulseFrequency, fitted, more }) => {
        const capacitors = [ceramic, ...(fitted === null ? [] : [fitted])];
        const one = { ...whole, sourceResistance, inductance: 0.6e-6 * leads, pulseFrequency, capacitors };
        const lower = busTransient({ ...one, capacitors: [...capacitors, more] });
        expect(lower.peak).toBeLessThan(busTransient(one).peak);
      }),
    );
  });

  // Where they ring a longer lead may take them out of tune, and the peak falls.
  it('is never lowered by longer leads that stay out of tune with the pulses', () => {
    let rang = 0;
    fc.assert(
      fc.property(anyBus, ({ sourceResistance, leads, pulseFrequency, fitted }) => {
        const capacitors = [ceramic, ...(fitted === null ? [] : [fitted])];
        const one = { ...whole, sourceResistance, inductance: 0.6e-6 * leads, pulseFrequency, capacitors };
        const shorter = busTransient(one);
        const longer = busTransient({ ...one, inductance: 1.3 * one.inductance });
        if (shorter.ringing.gain > 1) rang++;
        else expect(longer.peak).toBeGreaterThan(shorter.peak - 1e-3);
      }),
    );
    expect(rang).toBeLessThan(80);
    const tuned = { ...whole, sourceResistance: 0.005, inductance: 250e-9, capacitors: [ceramic] };
    expect(busTransient(tuned).ringing.gain).toBeGreaterThan(2);
    expect(busTransient({ ...tuned, inductance: 500e-9 }).peak).toBeLessThan(busTransient(tuned).peak - 1);
  });

  // Nearly loss-free ones may bring leads and pulses into tune: not a rule without exception.
  it('can be raised by a capacitor without resistance, for it tunes the leads', () => {
    const sharp = { ...whole, sourceResistance: 0.003, inductance: 54e-9, pulseFrequency: 40e3 };
    const before = busTransient({ ...sharp, capacitors: [ceramic] });
    const after = busTransient({
      ...sharp,
      capacitors: [ceramic, { capacitance: 120e-6, resistance: 0.001 }],
    });
    expect(after.ringing.gain).toBeGreaterThan(before.ringing.gain);
    expect(after.peak).toBeGreaterThan(before.peak);
    expect(busTransient({ ...sharp, capacitors: [ceramic, electrolytic] }).peak).toBeLessThan(before.peak);
  });
});
