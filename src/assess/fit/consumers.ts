import { emptyVoltage, fullVoltage } from './fullVoltage.ts';
import type { FitContext } from './types.ts';

/** Something that hangs on the flight controller's regulators or the pack. */
export interface Consumer {
  readonly seat: string;
  readonly name: string;
  /** [W]; 0 when it draws nothing from the aircraft */
  readonly power: number;
  /** [V] */
  readonly minVoltage: number | undefined;
  readonly maxVoltage: number | undefined;
  readonly serialPorts: number;
}

export type Regulator = FitContext['craft']['parts']['flightController']['regulators'][number];

/**
 * What feeds a part: a regulator, the pack, the pack until it is nearly empty, nothing in its range, or
 * not to be known because the part tells no range.
 */
export type Supply = Regulator | 'pack' | 'pack until low' | 'none' | 'unknown';

/** Regulators are off by this much, and parts bear it [V] (common practice, no source). */
const REGULATOR_TOLERANCE = 0.15;

export function consumersOf({ craft }: FitContext): readonly Consumer[] {
  const { parts } = craft;
  const seats = [
    ...parts.cameras.map((part) => ({ seat: 'cameras', part })),
    ...(parts.videoLink === undefined ? [] : [{ seat: 'videoLink', part: parts.videoLink }]),
    ...(parts.receiver === undefined ? [] : [{ seat: 'receiver', part: parts.receiver }]),
    ...parts.extras.flatMap(({ part, count }) =>
      part.kind === 'positionReceiver' || part.kind === 'beeper'
        ? Array.from({ length: count }, () => ({ seat: 'extras', part }))
        : [],
    ),
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

/** The lowest regulator in a part's range, else the pack. */
export function supplyOf(context: FitContext, consumer: Consumer): Supply {
  const { minVoltage, maxVoltage } = consumer;
  if (consumer.power === 0 || (minVoltage === undefined && maxVoltage === undefined)) return 'unknown';
  const low = minVoltage ?? 0;
  const high = maxVoltage ?? Number.POSITIVE_INFINITY;
  const regulator = [...context.craft.parts.flightController.regulators]
    .sort((a, b) => a.voltage.value - b.voltage.value)
    .find(
      ({ voltage }) =>
        voltage.value >= low - REGULATOR_TOLERANCE && voltage.value <= high + REGULATOR_TOLERANCE,
    );
  if (regulator !== undefined) return regulator;
  const full = fullVoltage(context);
  if (full > high || full < low) return 'none';
  return emptyVoltage(context) < low ? 'pack until low' : 'pack';
}
