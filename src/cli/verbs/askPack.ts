import { bandOf } from '../../assess/propagate.ts';
import { CHEMISTRIES } from '../../build/schema/common.ts';
import { packSource, usableCapacity } from '../../drive/battery.ts';
import { packFromNameplate } from '../../drive/packFromNameplate.ts';
import type { Chemistry, PackModel } from '../../drive/types.ts';
import { loadShelf } from '../context.ts';
import { BadInput, type Io } from '../io.ts';
import { listOption, numberOption, quantityWithin, wholeOption } from '../options.ts';
import { printTable } from '../print/table.ts';
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

/** `ask pack`: how a pack sags over charge, temperature and current. */
export function askPack(options: AskPackOptions, io: Io): void {
  const { model, deviation } = packOf(options, io);
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
    charges.flatMap((charge) => currents.map((current) => sagOf(model, current, charge, temperature))),
  );
  const band = bandOf(model.resistance, deviation);
  if (options.json) {
    const { resistance, continuousCurrent, capacity, series, parallel, chemistry } = model;
    io.writeOut(
      `${JSON.stringify({ pack: { chemistry, series, parallel, capacity, resistance, resistanceBand: band, continuousCurrent }, points }, null, 2)}\n`,
    );
    return;
  }
  const table = printTable(
    ['cells degC', 'charge %', 'current A', 'at rest V', 'loaded V', 'a cell V'],
    points.map(({ temperature, charge, current, openCircuit, voltage, cellVoltage }) => [
      (temperature - 273.15).toFixed(0),
      (100 * charge).toFixed(0),
      current.toPrecision(3),
      openCircuit.toFixed(2),
      voltage > 0 ? voltage.toFixed(2) : 'gives out',
      voltage > 0 ? cellVoltage.toFixed(2) : '',
    ]),
    ['right', 'right', 'right', 'right', 'right', 'right'],
  );
  const milliohm = (ohm: number) => (1000 * ohm).toPrecision(3);
  io.writeOut(
    `${table}\n\nResistance of the whole pack ${milliohm(model.resistance)} mohm (${milliohm(band[0])} to ${milliohm(band[1])}) at 25 degC and half charge; ` +
      `honest continuous current ${model.continuousCurrent.toPrecision(3)} A. Everything settled: a burst of a second sags about ${Math.round(100 * model.slowShare)} % less.\n`,
  );
}

function sagOf(model: PackModel, current: number, charge: number, temperature: number): SagPoint {
  const { openCircuit, resistance } = packSource(model, { charge, temperature });
  const voltage = openCircuit - resistance * current;
  return {
    current,
    charge,
    temperature,
    openCircuit,
    resistance,
    voltage,
    cellVoltage: voltage / model.series,
    usableCapacity: usableCapacity(model, temperature),
  };
}

function packOf(options: AskPackOptions, io: Io): { readonly model: PackModel; readonly deviation: number } {
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
    if (cell === undefined) return { model: guess.model, deviation: guess.resistance.deviation };
    const resistance = (cell.value * part.cells) / part.parallel;
    const deviation = ((cell.deviation ?? 0.08 * cell.value) * part.cells) / part.parallel;
    return { model: { ...guess.model, resistance }, deviation };
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
  return { model: guess.model, deviation: guess.resistance.deviation };
}

function chemistryOf(text: string): Chemistry {
  const found = CHEMISTRIES.find((each) => each === text);
  if (found === undefined) {
    throw new BadInput(`--chemistry: found "${text}". Allowed: ${CHEMISTRIES.join(', ')}.`);
  }
  return found;
}
