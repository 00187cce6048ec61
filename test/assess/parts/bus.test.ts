import { describe, expect, it } from 'vitest';
import { BUS_AS_RECKONED, busOf } from '../../../src/assess/parts/bus.ts';
import { busRemedies } from '../../../src/assess/parts/busRemedies.ts';
import { busVolts } from '../../../src/assess/parts/busVolts.ts';
import { busTransient } from '../../../src/drive/busTransient.ts';
import { contextOf } from './crafts.ts';

const { craft, flight } = contextOf('first-freestyle/turnstone');
const { story } = flight!.told;
const punch = { packCurrent: story.punch.packCurrent, temperature: flight!.model.airTemperature };

const bare = {
  ...craft,
  parts: { ...craft.parts, extras: craft.parts.extras.filter(({ part }) => part.kind !== 'capacitor') },
};

describe('bus of a whole craft', () => {
  // Turnstone: 6S full 25.2 V, 90 mm of lead at 0.6 uH/m, a 1000 uF capacitor of 30 mohm, 4 x 40 uF on the controllers.
  it('is put together from its parts', () => {
    const bus = busOf(craft, punch);
    expect(bus.packVoltage).toBeCloseTo(25.2, 10);
    expect(bus.inductance).toBeCloseTo(54e-9, 12);
    expect(bus.capacitors).toEqual([
      { capacitance: 160e-6, resistance: 0.005 },
      { capacitance: 1000e-6, resistance: 0.03 },
    ]);
    expect(bus.motors).toHaveLength(1);
    expect(bus.motors[0]!.count).toBe(4);
  });

  // The full pack stands about 3 % over the one of the punch: the speed follows by a little less.
  it('turns a little faster on a full pack than in the punch', () => {
    const speed = busOf(craft, punch).motors[0]!.angularSpeed;
    const punched = story.punch.stations[0]!.angularSpeed;
    expect(speed / punched).toBeGreaterThan(1);
    expect(speed / punched).toBeLessThan(1.05);
  });

  it('stays whole under a current beyond all reason', () => {
    const found = busTransient(busOf(craft, { ...punch, packCurrent: 5000 }));
    expect(found.peak).toBeGreaterThan(25.1);
    expect(found.peak).toBeLessThan(30);
  });
});

describe('bus spike', () => {
  it('is lower with its capacitor than with what the controllers have of their own', () => {
    const own = busTransient(busOf(craft, punch));
    const without = busTransient(busOf(bare, punch));
    expect(own.peak).toBeLessThan(without.peak - 1);
    // Parts of 30 V on six cells: inside with a capacitor, over it without (common practice, no source).
    expect(own.peak).toBeLessThan(30);
    expect(without.peak).toBeGreaterThan(30);
  });

  it('stands higher on a cold pack, whose resistance is higher', () => {
    const at = (temperature: number) => busTransient(busOf(craft, { ...punch, temperature })).braking;
    expect(at(273).mean).toBeGreaterThan(at(303).mean);
  });

  it('names remedies that help', () => {
    const bus = busOf(bare, punch);
    const peak = busTransient(bus).peak;
    const remedies = busRemedies(bare, bus);
    expect(remedies.map(({ says }) => says)).toContain('another 1000 uF capacitor beside the controllers');
    for (const each of remedies) expect(each.peak).toBeLessThan(peak);
    expect(remedies.at(-1)!.says).toContain('coast');
    // What it promises for one more is what the craft with one more has.
    const fitted = busTransient(busOf(craft, punch)).peak;
    expect(remedies.find(({ says }) => says.startsWith('another'))!.peak).toBeCloseTo(fitted, 10);
  });

  it('leans on every scale the way physics says', () => {
    const peak = (scales: Partial<typeof BUS_AS_RECKONED>) =>
      busTransient(busOf(craft, punch, { ...BUS_AS_RECKONED, ...scales })).peak;
    const now = peak({});
    expect(peak({ inductance: 1.3 })).toBeGreaterThan(now);
    expect(peak({ capacitorResistance: 1.5 })).toBeGreaterThan(now);
    expect(peak({ packResistance: 1.3 })).toBeGreaterThan(now);
    expect(peak({ windingResistance: 1.3 })).toBeLessThan(now);
    expect(peak({ runningResistance: 1.4 })).toBeLessThan(now);
    expect(peak({ drop: 2 })).toBeLessThan(now);
    expect(peak({ pulseFrequency: 0.7 })).toBeGreaterThan(now);
  });
});

describe('volts of the bus as measures', () => {
  it('shows cut, braking and ripple apart, each banded', () => {
    const { measures, findings } = busVolts(craft, flight!);
    const of = (id: string) => measures.find((each) => each.id === id)!;
    for (const id of ['bus-peak-voltage', 'bus-braking-voltage', 'bus-braking-current', 'bus-ripple']) {
      const { value, band } = of(id);
      expect(band[0]).toBeLessThan(value);
      expect(band[1]).toBeGreaterThan(value);
    }
    expect(of('bus-peak-voltage').value).toBe(of('bus-braking-voltage').value);
    expect(of('bus-peak-voltage').how).toContain('here braking');
    // The sag of full throttle outweighs the leads in every state: the cut never lifts it over the full pack.
    expect(of('bus-cut-voltage').value).toBeCloseTo(25.2, 10);
    expect(of('bus-peak-voltage').leansOn.map(({ input }) => input)).toContain('motor losses at speed');
    expect(findings).toEqual([]);
  });

  // 150 mm of lead is 90 nH; with 160 uF that swings at 42 kHz, and the controllers chop at 48 kHz.
  it('tells leads and capacitors in tune with the pulses, and that a capacitor damps them', () => {
    const wiring = { ...craft.wiring, main: { ...craft.wiring.main, area: 8e-6, length: 0.3 } };
    const packModel = { ...craft.packModel, resistance: 0.2 * craft.packModel.resistance };
    const controllerModel = { ...craft.controllerModel, pulseFrequency: 48e3 };
    const [ringing] = busVolts({ ...bare, wiring, packModel, controllerModel }, flight!).findings;
    expect(ringing!.severity).toBe('note');
    expect(ringing!.says).toContain('about 42 kHz, and the controllers chop at 48 kHz');
    expect(busVolts({ ...craft, wiring, packModel, controllerModel }, flight!).findings).toEqual([]);
  });
});
