import { bandOf, propagate } from '../../assess/propagate.ts';
import { CHEMISTRIES } from '../../build/schema/common.ts';
import { packResistance, packSource, usableCapacity } from '../../drive/battery.ts';
import { cellState, cellWords } from '../../drive/cellState.ts';
import { packFromNameplate } from '../../drive/packFromNameplate.ts';
import type { Chemistry, PackModel } from '../../drive/types.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { roundedText } from '../../units/significance.ts';
import { loadShelf } from '../context.ts';
import { BadInput, type Io } from '../io.ts';
import { listOption, numberOption, quantityWithin, wholeOption } from '../options.ts';
import { bandedCell, bandedNumber } from '../print/bandedCell.ts';
import { narrowTable } from '../print/narrow.ts';
import { shelfPart } from '../shelfPart.ts';

export interface AskPackOptions {
  readonly part?: string;
  readonly chemistry: string;
  readonly cells?: string;
  readonly parallel: string;
  readonly capacity?: string;
  readonly rate?: string;
  readonly cycles: string;
  readonly current: string;
  readonly charge: string;
  readonly temperature: string;
  readonly shelf: readonly string[];
  readonly json?: boolean;
}

/** One state of the pack under one current. SI. */
interface SagPoint {
  readonly current: number;
  readonly charge: number;
  readonly temperature: number;
  readonly openCircuit: number;
  readonly resistance: number;
  /** At the terminals, everything settled; below nothing where the pack cannot carry it. */
  readonly voltage: number;
  readonly cellVoltage: number;
  readonly usableCapacity: number;
}

/** One way the pack may really be; factors about 1, and volts a cell. */
interface PackDoubt {
  readonly resistance: number;
  /** On how far resistance is off its value at 25 degC. */
  readonly cold: number;
  readonly openCircuit: number;
  readonly capacity: number;
}

const AS_TOLD: PackDoubt = { resistance: 1, cold: 1, openCircuit: 0, capacity: 1 };

/** One standard deviation of what no listing tells (ours, no source): activation, and the curve of one chemistry from cell to cell. */
const COLD_SPREAD = 0.25;
const CURVE_SPREAD = 0.015; // [V] a cell

/** `ask pack`: how a pack sags over charge, temperature and current. */
export function askPack(options: AskPackOptions, io: Io): void {
  const { model, deviation, capacityDeviation } = packOf(options, io);
  const currents = listOption('--current', options.current, (item) =>
    quantityWithin('--current', item, 'current', { low: 0, high: 1000, words: '0 A to 1000 A' }),
  );
  const charges = listOption('--charge', options.charge, (item) =>
    quantityWithin('--charge', item, 'share', { low: 0, high: 1, words: '0 % to 100 %' }),
  );
  const temperatures = listOption('--temperature', options.temperature, (item) =>
    quantityWithin('--temperature', item, 'temperature', {
      low: 243.15,
      high: 343.15,
      words: '-30 degC to 70 degC',
    }),
  );
  const points = temperatures.flatMap((temperature) =>
    charges.flatMap((charge) =>
      currents.map((current) => {
        const at = (doubt: PackDoubt) => sagOf(model, current, charge, temperature, doubt);
        const nominal = at(AS_TOLD);
        return { ...nominal, ...bandsOf(nominal, at, deviation / model.resistance, capacityDeviation) };
      }),
    ),
  );
  // Of the pack as old as it is asked for.
  const resistance = packResistance(model, 0.5, WARM);
  const band = bandOf(resistance, (deviation * resistance) / model.resistance);
  if (options.json) {
    const { continuousCurrent, capacity, series, parallel, chemistry } = model;
    io.writeOut(
      `${JSON.stringify({ pack: { chemistry, series, parallel, capacity, resistance, resistanceBand: band, continuousCurrent }, points: points.map((point) => heldOf(model, point)) }, null, 2)}\n`,
    );
    return;
  }
  const table = narrowTable(
    ['cells degC', 'charge %', 'current A', 'loaded V', 'a cell V', ''],
    points.map(({ temperature, charge, current, voltage, cellVoltage, band: bands }) => [
      (temperature - 273.15).toFixed(0),
      (100 * charge).toFixed(0),
      roundedText(current, undefined),
      ...(cellState(model, cellVoltage) === 'gives out'
        ? ['-', '-']
        : [
            bandedNumber({ value: voltage, band: bands.voltage }, (volts) => volts),
            bandedNumber({ value: cellVoltage, band: bands.cellVoltage }, (volts) => volts),
          ]),
      MARKS[cellState(model, cellVoltage)],
    ]),
    ['right', 'right', 'right', 'right', 'right', 'left'],
  );
  const marked = (['under cut-off', 'gives out'] as const).flatMap((state) => {
    const point = points.find(({ cellVoltage }) => cellState(model, cellVoltage) === state);
    return point === undefined ? [] : [`${MARKS[state]} ${cellWords(model, point.cellVoltage) ?? ''}`];
  });
  const atRest = charges.flatMap((charge) => {
    const point = points.find((each) => each.charge === charge);
    if (point === undefined) return [];
    const volts = bandedCell({ value: point.openCircuit, band: point.band.openCircuit }, 'voltage');
    return [`${volts} at ${formatQuantity(charge, 'share')}`];
  });
  const milliohm = bandedNumber({ value: resistance, band }, (ohm) => 1000 * ohm);
  io.writeOut(
    `${[table, ...marked].join('\n')}\n\nAt rest ${atRest.join(', ')}. Resistance of the whole pack ${milliohm} mohm at 25 degC and half charge; ` +
      `honest continuous current about ${model.continuousCurrent.toPrecision(2)} A. Everything settled: a burst of a second sags about ${Math.round(100 * model.slowShare)} % less. Bands are 10th to 90th percentile.\n`,
  );
}

/** Beside a row, told below the table. */
const MARKS = { holds: '', 'under cut-off': '*', 'gives out': '**' } as const;

/** A point for JSON: no voltage where the pack gives out. */
function heldOf(model: PackModel, point: SagPoint & ReturnType<typeof bandsOf>) {
  const cells = cellState(model, point.cellVoltage);
  if (cells !== 'gives out') return { ...point, cells };
  const { voltage: _, cellVoltage: __, band, ...rest } = point;
  const { voltage: ___, cellVoltage: ____, ...bands } = band;
  return { ...rest, band: bands, cells };
}

function sagOf(
  model: PackModel,
  current: number,
  charge: number,
  temperature: number,
  doubt: PackDoubt,
): SagPoint {
  const source = packSource(model, { charge, temperature });
  const openCircuit = source.openCircuit + doubt.openCircuit * model.series;
  const warm = packSource(model, { charge, temperature: WARM }).resistance;
  const resistance = doubt.resistance * (warm + doubt.cold * (source.resistance - warm));
  const voltage = openCircuit - resistance * current;
  return {
    current,
    charge,
    temperature,
    openCircuit,
    resistance,
    voltage,
    cellVoltage: voltage / model.series,
    usableCapacity: doubt.capacity * usableCapacity(model, temperature),
  };
}

const WARM = 298.15; // [K]

/** The point's numbers with their bands by name. */
function bandsOf(
  { openCircuit, resistance, voltage, cellVoltage, usableCapacity: usable }: SagPoint,
  at: (doubt: PackDoubt) => SagPoint,
  resistanceDeviation: number,
  capacityDeviation: number,
) {
  const nominal = { openCircuit, resistance, voltage, cellVoltage, usableCapacity: usable };
  const doubt = (input: string, raised: Partial<PackDoubt>) => ({
    input,
    trust: 'inferred' as const,
    raised: { ...AS_TOLD, ...raised },
  });
  const { banded } = propagate(
    nominal,
    [
      doubt('pack resistance', { resistance: 1 + resistanceDeviation }),
      doubt('how resistance grows in the cold', { cold: 1 + COLD_SPREAD }),
      doubt('voltage at rest over charge', { openCircuit: CURVE_SPREAD }),
      doubt('pack capacity', { capacity: 1 + capacityDeviation }),
    ],
    (state) => {
      const { openCircuit, resistance, voltage, cellVoltage, usableCapacity } = at(state);
      return { openCircuit, resistance, voltage, cellVoltage, usableCapacity };
    },
  );
  const bandOfName = (name: keyof typeof nominal) =>
    banded[name]?.band ?? ([nominal[name], nominal[name]] as const);
  return {
    band: {
      openCircuit: bandOfName('openCircuit'),
      resistance: bandOfName('resistance'),
      voltage: bandOfName('voltage'),
      cellVoltage: bandOfName('cellVoltage'),
      usableCapacity: bandOfName('usableCapacity'),
    },
  };
}

/** Of the label's capacity, one standard deviation (as for builds: docs/method/build.md). */
const CAPACITY_SPREAD = 0.04;

/** @returns deviations: of the resistance [ohm], of the capacity relative */
function packOf(
  options: AskPackOptions,
  io: Io,
): { readonly model: PackModel; readonly deviation: number; readonly capacityDeviation: number } {
  const cycles = wholeOption('--cycles', options.cycles, 0, 2000);
  if (options.part !== undefined) {
    const part = shelfPart(loadShelf(options.shelf, io), 'pack', options.part, '--part');
    const cell = part.cellResistance;
    const guess = packFromNameplate({
      chemistry: part.chemistry,
      series: part.cells,
      parallel: part.parallel,
      capacity: part.capacity.value,
      labelRate: part.cRating ?? (part.chemistry === 'Li-ion' ? 8 : 60),
      mass: part.mass.value,
      cycles,
    });
    const { value, deviation: told = CAPACITY_SPREAD * value } = part.capacity;
    const capacityDeviation = told / value;
    if (cell === undefined) {
      return { model: guess.model, deviation: guess.resistance.deviation, capacityDeviation };
    }
    const resistance = (cell.value * part.cells) / part.parallel;
    const deviation = ((cell.deviation ?? 0.08 * cell.value) * part.cells) / part.parallel;
    return { model: { ...guess.model, resistance }, deviation, capacityDeviation };
  }
  if (options.cells === undefined || options.capacity === undefined || options.rate === undefined) {
    throw new BadInput(
      'ask pack: give --part, or --cells, --capacity and --rate (the C-number on the label).',
    );
  }
  const guess = packFromNameplate({
    chemistry: chemistryOf(options.chemistry),
    series: wholeOption('--cells', options.cells, 1, 14),
    parallel: wholeOption('--parallel', options.parallel, 1, 10),
    capacity: quantityWithin('--capacity', options.capacity, 'charge', {
      low: 180,
      high: 180000,
      words: '50 mAh to 50 Ah',
    }),
    labelRate: numberOption('--rate', options.rate, 0.5, 300),
    cycles,
  });
  return {
    model: guess.model,
    deviation: guess.resistance.deviation,
    capacityDeviation: CAPACITY_SPREAD,
  };
}

function chemistryOf(text: string): Chemistry {
  const found = CHEMISTRIES.find((each) => each === text);
  if (found === undefined) {
    throw new BadInput(`--chemistry: found "${text}". Allowed: ${CHEMISTRIES.join(', ')}.`);
  }
  return found;
}
