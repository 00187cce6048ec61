import { fails, fits, mm, mmList, volts } from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

const PATTERN_TOLERANCE = 0.3e-3;
const HEADROOM = 3e-3;
const PAD_CLEARANCE = 2e-3;

const seatWords = {
  controllers: 'speed controller',
  flightController: 'flight controller',
  videoLink: 'video link',
} as const;

export const stackRules: readonly FitRule[] = [
  {
    id: 'stack-pattern',
    title: 'boards on the stack holes',
    look: ({ craft }) =>
      craft.stack.flatMap((layer): readonly FitVerdict[] => {
        const { pattern } = layer;
        if (pattern === undefined) return [];
        const offered = craft.parts.frame.stackPatterns;
        const what = seatWords[layer.seat];
        const place = { x: layer.place[0], y: layer.place[1] };
        return [
          offered.some((each) => Math.abs(each - pattern) < PATTERN_TOLERANCE)
            ? fits(`The ${what} sits on the ${mm(pattern)} square.`, [layer.seat, 'frame'])
            : fails(
                layer.seat === 'videoLink' ? 'risk' : 'stop',
                `The ${what}'s holes are a ${mm(pattern)} square; the frame offers ${mmList(offered)}.`,
                "Take a board with one of the frame's patterns, or an adapter plate if there is headroom.",
                [layer.seat, 'frame'],
                { place },
              ),
        ];
      }),
  },
  {
    id: 'stack-headroom',
    title: 'height of the stack',
    look: ({ craft }) => {
      const top = Math.min(...craft.stack.map((layer) => layer.place[2] - layer.size.height / 2));
      if (!Number.isFinite(top)) return [];
      const { faceZ, headroom, place } = craft.frame.stack;
      const spare = headroom - (faceZ - top);
      const number = { value: spare, limit: HEADROOM, quantity: 'length' as const };
      if (spare >= HEADROOM)
        return [fits(`${mm(spare)} left above the stack.`, ['flightController'], { number })];
      return [
        fails(
          spare < 0 ? 'stop' : 'risk',
          spare < 0
            ? `The stack is ${mm(-spare)} taller than the room between the plates.`
            : `Only ${mm(spare)} left above the stack; wires and rubber want ${mm(HEADROOM)}.`,
          'Taller standoffs, flatter boards, or the video link elsewhere.',
          ['flightController', 'frame'],
          { number, place: { x: place[0], y: place[1] } },
        ),
      ];
    },
  },
  {
    id: 'pads-over-carbon',
    title: 'live pads over carbon',
    look: ({ craft }) => {
      if (!craft.frame.material.name.includes('carbon')) return [];
      const bottom = Math.max(...craft.stack.map((layer) => layer.place[2] + layer.size.height / 2));
      if (!Number.isFinite(bottom)) return [];
      const clearance = craft.frame.stack.faceZ - bottom;
      const number = { value: clearance, limit: PAD_CLEARANCE, quantity: 'length' as const };
      return [
        clearance < PAD_CLEARANCE - 1e-6
          ? fails(
              'risk',
              `The lowest board's pads stand ${mm(Math.max(clearance, 0))} over the carbon, which conducts: a short burns boards and pack.`,
              `Keep ${mm(PAD_CLEARANCE)} with spacers, and put insulating tape under it.`,
              ['controllers', 'frame'],
              { number },
            )
          : fits(`${mm(clearance)} of air between pads and carbon.`, ['controllers'], { number }),
      ];
    },
  },
  {
    id: 'gyro-mounting',
    title: 'gyro on soft mounts',
    look: ({ craft }) => {
      const mounting = craft.build.flightController.gyroMounting ?? craft.parts.flightController.gyroMounting;
      return [
        mounting === 'hard'
          ? fails(
              'risk',
              'The flight controller is screwed down hard: the gyro feels every nicked blade.',
              'Put rubber grommets under its corners.',
              ['flightController'],
            )
          : fits('The flight controller stands on rubber.', ['flightController']),
      ];
    },
  },
  {
    id: 'flight-controller-cells',
    title: 'flight controller against the pack',
    look: ({ craft }) => {
      const { cells } = craft.parts.flightController;
      const series = craft.parts.pack.cells;
      const number = { value: series, limit: cells.max, quantity: 'count' as const };
      return [
        series > cells.max || series < cells.min
          ? fails(
              series > cells.max ? 'stop' : 'risk',
              `A ${series}S pack on a flight controller made for ${cells.min}S to ${cells.max}S.`,
              'Take a pack inside that range, or another board.',
              ['flightController', 'pack'],
              { number },
            )
          : fits(`The flight controller takes ${series}S.`, ['flightController', 'pack'], { number }),
      ];
    },
  },
  {
    id: 'serial-ports',
    title: 'serial ports',
    look: (context) => {
      const { parts } = context.craft;
      const wanted =
        consumers(context).reduce((sum, consumer) => sum + consumer.serialPorts, 0) +
        (parts.controllers?.telemetry ? 1 : 0);
      const offered = parts.flightController.serialPorts;
      const number = { value: wanted, limit: offered, quantity: 'count' as const };
      return [
        wanted > offered
          ? fails(
              'stop',
              `${wanted} things want a serial port; the flight controller offers ${offered}.`,
              'Leave something out or take a board with more ports.',
              ['flightController'],
              { number },
            )
          : fits(`${wanted} of ${offered} serial ports used.`, ['flightController'], { number }),
      ];
    },
  },
  {
    id: 'supply-voltage',
    title: 'supply voltage of each part',
    look: (context) =>
      consumers(context).flatMap((consumer): readonly FitVerdict[] => {
        const source = supplyOf(context, consumer);
        if (source === 'unknown') return [];
        return [
          source === 'none'
            ? fails(
                'stop',
                `${consumer.name} takes ${range(consumer)}, which neither the pack (${volts(fullVoltage(context))} full) nor a regulator gives.`,
                'Add a regulator for it, or take a part that bears the pack.',
                [consumer.seat, 'pack'],
              )
            : fits(
                source === 'pack'
                  ? `${consumer.name} runs straight from the pack.`
                  : `${consumer.name} runs from the ${volts(source.voltage.value)} regulator.`,
                [consumer.seat],
              ),
        ];
      }),
  },
  {
    id: 'regulator-load',
    title: 'load on each regulator',
    look: (context) =>
      context.craft.parts.flightController.regulators.flatMap((regulator): readonly FitVerdict[] => {
        const current =
          consumers(context)
            .filter((consumer) => supplyOf(context, consumer) === regulator)
            .reduce((sum, consumer) => sum + consumer.power, 0) / regulator.voltage.value;
        const limit = 0.75 * regulator.current.value;
        const number = { value: current, limit, quantity: 'current' as const };
        const name = `${volts(regulator.voltage.value)} regulator`;
        return [
          current > limit
            ? fails(
                current > regulator.current.value ? 'stop' : 'risk',
                `The ${name} carries ${current.toFixed(2)} A of ${regulator.current.value.toFixed(1)} A; three quarters is the custom.`,
                'Feed something from the pack or from a regulator of its own.',
                ['flightController'],
                { number },
              )
            : fits(`The ${name} carries ${current.toFixed(2)} A.`, ['flightController'], { number }),
        ];
      }),
  },
  {
    id: 'usb-reach',
    title: 'USB within reach',
    look: ({ craft }) => {
      const side = craft.parts.flightController.usbSide;
      if (side === undefined) return [];
      return [
        side === 'front' || side === 'rear'
          ? fails(
              'note',
              `The USB socket looks to the ${side}, where standoffs and camera or antenna usually stand.`,
              'Turn the board a quarter and tell the firmware, or use a short angled lead.',
              ['flightController'],
            )
          : fits(`USB opens to the ${side}.`, ['flightController']),
      ];
    },
  },
];

interface Consumer {
  readonly seat: string;
  readonly name: string;
  readonly power: number;
  readonly minVoltage: number | undefined;
  readonly maxVoltage: number | undefined;
  readonly serialPorts: number;
}

/** Everything that hangs on the flight controller's regulators or the pack. */
function consumers({ craft }: FitContext): readonly Consumer[] {
  const { parts } = craft;
  const extras = parts.extras.flatMap(({ part, count }) =>
    part.kind === 'positionReceiver' || part.kind === 'beeper'
      ? Array.from({ length: count }, () => ({ seat: 'extras', part }))
      : [],
  );
  const seats = [
    ...parts.cameras.map((part) => ({ seat: 'cameras', part })),
    ...(parts.videoLink === undefined ? [] : [{ seat: 'videoLink', part: parts.videoLink }]),
    ...(parts.receiver === undefined ? [] : [{ seat: 'receiver', part: parts.receiver }]),
    ...extras,
  ];
  return seats.map(({ seat, part }) => ({
    seat,
    name: part.name,
    power: part.power?.value ?? 0,
    minVoltage: part.minVoltage,
    maxVoltage: part.maxVoltage,
    serialPorts: part.serialPorts,
  }));
}

type Regulator = FitContext['craft']['parts']['flightController']['regulators'][number];

/** What a part would be fed from: the lowest regulator in its range, else the pack. */
function supplyOf(context: FitContext, consumer: Consumer): Regulator | 'pack' | 'none' | 'unknown' {
  const { minVoltage: low, maxVoltage: high } = consumer;
  if (consumer.power === 0 || (low === undefined && high === undefined)) return 'unknown';
  const within = (voltage: number) => voltage >= (low ?? 0) - 0.15 && voltage <= (high ?? 1e3) + 0.15;
  const regulator = [...context.craft.parts.flightController.regulators]
    .sort((a, b) => a.voltage.value - b.voltage.value)
    .find((each) => within(each.voltage.value));
  if (regulator !== undefined) return regulator;
  return within(fullVoltage(context)) ? 'pack' : 'none';
}

/** Of a full pack [V]. */
export function fullVoltage({ craft }: FitContext): number {
  const { cells, chemistry } = craft.parts.pack;
  return cells * (chemistry === 'LiHV' ? 4.35 : 4.2);
}

const range = ({ minVoltage, maxVoltage }: Consumer) =>
  `${minVoltage === undefined ? 'up' : volts(minVoltage)} to ${maxVoltage === undefined ? 'more' : volts(maxVoltage)}`;
