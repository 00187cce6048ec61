import { busSpike } from './busSpike.ts';
import { type Consumer, consumersOf, supplyOf } from './consumers.ts';
import { emptyVoltage, fullVoltage } from './fullVoltage.ts';
import { amps, countOf, fails, fits, volts } from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

/** What a regulator should carry at most of its rating. */
const REGULATOR_LOAD = 0.75;
export const supplyRules: readonly FitRule[] = [
  {
    id: 'flight-controller-cells',
    title: 'flight controller against the pack',
    limit: "the cells the board's maker tells",
    severities: ['stop', 'risk'],
    look: ({ craft }) => {
      const { cells } = craft.parts.flightController;
      const series = craft.parts.pack.cells;
      const over = series > cells.max;
      const number = { value: series, limit: over ? cells.max : cells.min, quantity: 'count' as const };
      return [
        over || series < cells.min
          ? fails(
              over ? 'stop' : 'risk',
              `A ${series}S pack on a flight controller made for ${cells.min}S to ${cells.max}S.`,
              'Take a pack inside that range, or another board.',
              ['flightController', 'pack'],
              { number },
            )
          : fits(`The flight controller takes ${series}S.`, ['flightController', 'pack'], {
              number: { ...number, limit: cells.max },
            }),
      ];
    },
  },
  {
    id: 'serial-ports',
    title: 'serial ports',
    limit: 'the ports the flight controller offers',
    severities: ['stop'],
    look: (context) => {
      const { parts } = context.craft;
      const wanted =
        consumersOf(context).reduce((sum, consumer) => sum + consumer.serialPorts, 0) +
        (parts.controllers?.telemetry ? 1 : 0);
      const offered = parts.flightController.serialPorts;
      const number = { value: wanted, limit: offered, quantity: 'count' as const };
      return [
        wanted > offered
          ? fails(
              'stop',
              `${countOf(wanted, 'serial port')} wanted by receiver, video, position and controller; the flight controller offers ${offered}.`,
              'Leave something out or take a board with more ports.',
              ['flightController'],
              { number },
            )
          : fits(`${wanted} of ${countOf(offered, 'serial port')} used.`, ['flightController'], { number }),
      ];
    },
  },
  {
    id: 'supply-voltage',
    title: 'supply voltage of each part',
    limit: "a regulator or the pack inside the part's range, full (4.2 V a cell, LiHV 4.35) and empty",
    severities: ['stop', 'risk'],
    // A part that draws nothing, or tells no range, has nothing to be held against.
    look: (context) =>
      consumersOf(context).flatMap((consumer): readonly FitVerdict[] => {
        const verdict = supplyVerdict(context, consumer);
        return verdict === undefined ? [] : [verdict];
      }),
  },
  {
    id: 'regulator-load',
    title: 'load on each regulator',
    limit: 'three quarters of its rating; stop over it',
    severities: ['stop', 'risk'],
    look: (context) =>
      context.craft.parts.flightController.regulators.map((regulator): FitVerdict => {
        const current =
          consumersOf(context)
            .filter((consumer) => supplyOf(context, consumer) === regulator)
            .reduce((sum, consumer) => sum + consumer.power, 0) / regulator.voltage.value;
        const rating = regulator.current.value;
        const limit = REGULATOR_LOAD * rating;
        const number = { value: current, limit, quantity: 'current' as const };
        const name = `${volts(regulator.voltage.value)} regulator`;
        return current > limit
          ? fails(
              current > rating ? 'stop' : 'risk',
              `The ${name} carries ${current.toFixed(2)} A of ${amps(rating)}; three quarters is the custom.`,
              'Feed something from the pack or from a regulator of its own.',
              ['flightController'],
              { number },
            )
          : fits(`The ${name} carries ${current.toFixed(2)} A of ${amps(rating)}.`, ['flightController'], {
              number,
            });
      }),
  },
  busSpike,
];

function supplyVerdict(context: FitContext, consumer: Consumer): FitVerdict | undefined {
  const source = supplyOf(context, consumer);
  const { seat, name, minVoltage, maxVoltage } = consumer;
  const full = fullVoltage(context);
  if (source === 'unknown') return undefined;
  if (source === 'none') {
    const limit = maxVoltage !== undefined && full > maxVoltage ? maxVoltage : (minVoltage ?? 0);
    return fails(
      'stop',
      `${name} takes ${rangeOf(consumer)}, which neither the pack (${volts(full)} full) nor a regulator gives.`,
      'Add a regulator for it, or take a part that bears the pack.',
      [seat, 'pack'],
      { number: { value: full, limit, quantity: 'voltage' } },
    );
  }
  if (source === 'pack until low') {
    return fails(
      'risk',
      `${name} wants ${volts(minVoltage ?? 0)} and hangs on the pack, which ends a flight at ${volts(emptyVoltage(context))}: it goes dark before you land.`,
      'Feed it from a regulator that lifts the voltage, or take a pack of another cell.',
      [seat, 'pack'],
      { number: { value: emptyVoltage(context), limit: minVoltage ?? 0, quantity: 'voltage' } },
    );
  }
  return source === 'pack'
    ? fits(`${name} runs straight from the pack.`, [seat], {
        number: { value: full, limit: maxVoltage ?? full, quantity: 'voltage' },
      })
    : fits(`${name} runs from the ${volts(source.voltage.value)} regulator.`, [seat]);
}

const rangeOf = ({ minVoltage, maxVoltage }: Consumer) =>
  `${minVoltage === undefined ? 'up' : volts(minVoltage)} to ${maxVoltage === undefined ? 'more' : volts(maxVoltage)}`;
