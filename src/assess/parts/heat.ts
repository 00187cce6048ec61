import type { Craft } from '../../build/craft.ts';
import type { WireModel } from '../../drive/types.ts';
import { wireTemperatureRise } from '../../drive/wire.ts';
import { withUnit } from '../../units/formatQuantity.ts';
import type { Finding } from '../types.ts';
import { bandedMeasures, type MeasureForm, type Numbers } from './banded.ts';
import { busVolts } from './busVolts.ts';
import { type AssessPart, type Flight, NOTHING, type PartContext, type PartResult } from './types.ts';

/** Silicone over stranded copper: strands stand 15 % wider than a solid wire, the sleeve is 0.7 mm (common practice, no source). */
const STRANDED = 1.15;
const SLEEVE = 0.7e-3;
/** Too hot to hold a finger on, and tape and shrink tube soften (common practice, no source) [K]. */
const HOT_WIRE = 363.15;

/** Silicone rubber chars and solder has long run off (from memory): no balance of heat holds beyond [K]. */
const BURNT = 573.15;
const LEFT_OUT = `Over ${withUnit(300, 'degC')} its insulation is gone and this balance of heat with it: what it would come to is left out.`;

/** One way currents and cooling may really be; factors about 1. */
interface WiringState {
  readonly current: number;
  readonly cooling: number;
}

const AS_RECKONED: WiringState = { current: 1, cooling: 1 };

/** Wires, plug and the volts of the bus. Motors at speed are on the sheet by level flight. */
export const wiringHeat: AssessPart = {
  id: 'wiring-heat',
  label: 'wires, plug and bus',
  run: ({ craft, flight }: PartContext): PartResult => {
    if (flight === undefined) return NOTHING;
    const figures = wiringFigures(craft, flight, AS_RECKONED);
    const known = (input: string, raised: Partial<WiringState>) => ({
      input,
      trust: 'inferred' as const,
      raised: { ...AS_RECKONED, ...raised },
    });
    const measures = bandedMeasures(
      forms(),
      figures,
      [known('currents drawn', { current: 1.12 }), known('cooling of the wires', { cooling: 1.3 })],
      (state) => wiringFigures(craft, flight, state),
      flight.model.airTemperature,
    );
    const bus = busVolts(craft, flight);
    return {
      measures: [...measures, ...bus.measures],
      findings: [...wiringFindings(figures), ...bus.findings],
    };
  },
};

function wiringFigures(craft: Craft, flight: Flight, state: WiringState): Numbers {
  const { story } = flight.told;
  const flown = (story.styles[0]?.heatingCurrent ?? story.hover.packCurrent) * state.current;
  const air = flight.model.airTemperature;
  const { main, connector } = craft.wiring;
  const hardest = story.hover.stations.reduce((most, { motorCurrent }) => Math.max(most, motorCurrent), 0);
  // Pack current goes as thrust to the power 1.5, a motor's as thrust: the mean of a higher power errs to the hot side.
  const motorFlown = hardest * (flown / Math.max(story.hover.packCurrent, 1e-9)) ** (2 / 3);
  const motorLead = craft.motors[0]?.motorLead;
  return {
    'pack-lead-temperature': settledWire(main, flown, air, state.cooling),
    // Direct-current equivalent: two of three leads carry it, in truth all three take turns.
    'motor-lead-temperature':
      motorLead && settledWire(motorLead, motorFlown * Math.sqrt(2 / 3), air, state.cooling),
    'plug-load': flown / connector.continuousCurrent,
  };
}

/** Of the copper, its own resistance rising with it; undefined for no wire [K]. */
function settledWire(wire: WireModel, current: number, air: number, cooling: number): number | undefined {
  if (wire.length === 0) return undefined;
  const outer = STRANDED * Math.sqrt((4 * wire.area) / Math.PI) + 2 * SLEEVE;
  let temperature = air;
  for (let turn = 0; turn < 4; turn++) {
    const rise = wireTemperatureRise({ ...wire, temperature: Math.min(temperature, 600) }, outer, current);
    temperature = air + rise / cooling;
  }
  return temperature;
}

function wiringFindings(figures: Numbers): readonly Finding[] {
  const findings: Finding[] = [];
  for (const [id, what] of [
    ['pack-lead-temperature', 'pack lead'],
    ['motor-lead-temperature', 'motor leads'],
  ] as const) {
    const temperature = figures[id];
    if (temperature === undefined || temperature < HOT_WIRE) continue;
    findings.push({
      id: `hot-${id.replace('-temperature', '')}`,
      sheet: 'heat',
      severity: 'risk',
      says: `At the currents it is flown with (root mean square) the ${what} would ${temperature > BURNT ? `burn: over ${withUnit(300, 'degC')}, further than this balance of heat holds` : `settle at ${withUnit(Math.round(temperature - 273.15), 'degC')}`}.`,
      number: { value: Math.min(temperature, BURNT), limit: HOT_WIRE, quantity: 'temperature' },
      remedy: 'Thicker or shorter wire.',
      source: 'wire heat, docs/method/drive.md',
      parts: ['wiring'],
    });
  }
  const load = figures['plug-load'];
  if (load !== undefined && load > 1) {
    findings.push({
      id: 'plug-hot',
      sheet: 'heat',
      severity: 'risk',
      says: `The current of the flight that heats (root mean square) is ${Math.round(100 * load)} % of what the pack's plug bears for long.`,
      number: { value: load, limit: 1, quantity: 'share' },
      remedy: 'The next size of plug.',
      source: 'common practice, no source',
      parts: ['wiring', 'pack'],
    });
  }
  return findings;
}

function forms(): readonly MeasureForm[] {
  const WIRE = 'copper by IEC 60028, free convection from memory; docs/method/drive.md';
  const base = { sheet: 'heat', better: 'less' } as const;
  return [
    {
      ...base,
      id: 'pack-lead-temperature',
      label: 'pack lead, flown',
      quantity: 'temperature',
      bears: BURNT,
      how: `Current squared x resistance against 12 W/(m2 K) over its sleeve, settled at the root mean square of the current flown. ${LEFT_OUT}`,
      source: WIRE,
    },
    {
      ...base,
      id: 'motor-lead-temperature',
      label: 'motor leads, flown',
      quantity: 'temperature',
      bears: BURNT,
      how: `As the pack lead, at the hardest-worked motor; the wash cools them further. ${LEFT_OUT}`,
      source: WIRE,
    },
    {
      ...base,
      id: 'plug-load',
      label: "load on the pack's plug, flown",
      quantity: 'share',
      how: 'Root mean square of the current flown over the continuous rating of the plug.',
      source: 'common practice, no source',
    },
  ];
}
