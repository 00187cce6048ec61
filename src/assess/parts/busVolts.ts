import type { Craft, Unknown } from '../../build/craft.ts';
import { type BusTransient, busTransient } from '../../drive/busTransient.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import type { Uncertainty } from '../propagate.ts';
import type { Finding } from '../types.ts';
import { bandedMeasures, type MeasureForm, type Numbers } from './banded.ts';
import { BUS_AS_RECKONED, type BusScales, busOf } from './bus.ts';
import type { Flight, PartResult } from './types.ts';

/** Pulses that make half as much again of what leads or capacitors alone would let through (ours, no source). */
const RINGS = 1.5;

/** What chopping, cutting and braking do to the volts of the bus, on a full pack. */
export function busVolts(craft: Craft, flight: Flight): PartResult {
  const punch = {
    packCurrent: flight.told.story.punch.packCurrent,
    temperature: flight.model.airTemperature,
  };
  const at = (scales: BusScales) => busTransient(busOf(craft, punch, scales));
  const found = at(BUS_AS_RECKONED);
  const measures = bandedMeasures(forms(found), numbersOf(found), statesOf(craft), (scales) =>
    numbersOf(at(scales)),
  );
  return { measures, findings: ringing(craft, found) };
}

const numbersOf = ({ peak, cut, braking, ripple }: BusTransient): Numbers => ({
  'bus-peak-voltage': peak,
  'bus-cut-voltage': cut.peak,
  'bus-braking-voltage': braking.peak,
  'bus-braking-current': braking.returned,
  'bus-ripple': ripple.swing,
});

function statesOf(craft: Craft): readonly Uncertainty<BusScales>[] {
  const raised = (scales: Partial<BusScales>): BusScales => ({ ...BUS_AS_RECKONED, ...scales });
  const ours = (input: string, scales: Partial<BusScales>) => ({
    input,
    trust: 'inferred' as const,
    raised: raised(scales),
  });
  const lever = (name: Unknown['lever'], scale: keyof BusScales) =>
    craft.unknowns
      .filter(({ lever: own }) => own === name)
      .map(({ label, trust, deviation }) => ({
        input: label,
        trust,
        raised: raised({ [scale]: 1 + deviation }),
      }));
  return [
    ours('currents drawn', { current: 1.12 }),
    ours('how the leads lie', { inductance: 1.3 }),
    ours('resistance of the capacitors', { capacitorResistance: 1.5 }),
    ours('how quickly the throttle drops', { drop: 2 }),
    // It is a setting, commonly 24 to 48 kHz.
    ours('pulse frequency of the controllers', { pulseFrequency: 0.7 }),
    ...lever('packResistanceScale', 'packResistance'),
    ...lever('windingResistanceScale', 'windingResistance'),
    ...lever('runningResistanceScale', 'runningResistance'),
  ];
}

/** Leads and capacitors that the pulses find in tune. */
function ringing(craft: Craft, { ringing: { frequency, gain } }: BusTransient): readonly Finding[] {
  if (frequency === undefined || gain < RINGS) return [];
  const kilohertz = (hertz: number) => `${(hertz / 1000).toFixed(0)} kHz`;
  return [
    {
      id: 'bus-rings',
      sheet: 'heat',
      severity: 'note',
      says: `Pack lead and capacitors swing against each other at about ${kilohertz(frequency)}, and the controllers chop at ${kilohertz(craft.controllerModel.pulseFrequency)}: the bus rings, ${gain.toFixed(1)} times what leads or capacitors alone would let through.`,
      number: { value: gain, limit: RINGS, quantity: 'ratio' },
      remedy:
        'A large electrolytic capacitor beside the controllers: its own resistance damps it. More small ceramic ones do not.',
      source: 'impedance of leads and capacitors, docs/method/drive.md',
      parts: ['wiring', 'extras'],
    },
  ];
}

const SOURCE = 'Kirchhoff’s laws for pack, leads and capacitors, direct-current motors; docs/method/drive.md';

function forms({ governs, time, braking, ripple }: BusTransient): readonly MeasureForm[] {
  const base = { sheet: 'heat', better: 'less', quantity: 'voltage', source: SOURCE } as const;
  const when = time === undefined ? '' : `, ${formatQuantity(time, 'time')} after it began`;
  return [
    {
      ...base,
      id: 'bus-peak-voltage',
      label: 'bus voltage at most, throttle dropped',
      how: `The higher of cut and braking: here ${governs}${when}. Full pack, its quick resistance, leads, the controllers’ own capacitors and those fitted, side by side.`,
    },
    {
      ...base,
      id: 'bus-cut-voltage',
      label: 'bus voltage, full throttle cut (coasting)',
      how: 'Controllers that let their motors coast: the current of the leads charges the capacitors, from the sag before it; never under the full pack’s own voltage.',
    },
    {
      ...base,
      id: 'bus-braking-voltage',
      label: 'bus voltage at most, braked',
      how: `Duty falls straight in 20 ms, the propellers slow meanwhile. Highest at duty ${braking.duty.toFixed(2)}: the current that comes back through pack and leads lifts the mean to ${braking.mean.toFixed(1)} V, the pulses of all controllers in step another ${braking.ripple.toFixed(1)} V; seldom in step, so an upper bound.`,
    },
    {
      ...base,
      id: 'bus-braking-current',
      label: 'current back into the pack, braked',
      quantity: 'current',
      how: `Mean over a pulse, where it is most; at most e^2/(4 V R) a motor. In the winding up to ${braking.motorCurrent.toFixed(0)} A flow.`,
    },
    {
      ...base,
      id: 'bus-ripple',
      label: 'bus ripple at most, full current chopped',
      how: `From peak to peak, full throttle’s motor current in the pulses of all controllers in step, as when they spin up; at the worst duty, ${ripple.duty.toFixed(2)}.`,
    },
  ];
}
