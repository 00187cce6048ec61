import type { PackSource } from '../../drive/types.ts';
import { secantRoot } from '../../numerics/secantRoot.ts';
import type { Circuit } from '../circuit.ts';
import { currentAtCutOff, cutOffVoltage } from '../cutOff.ts';
import { feed, type Supply } from '../feed.ts';
import type { Load } from '../load.ts';
import { currentOnBus } from '../throttle.ts';

/**
 * A burst that would pull the pack's terminals below its cut-off, as a pilot flies it: the stick eased to the largest
 * throttle, the same for all motors, that keeps them there. With the terminals' voltage known so are the pack's current
 * and the bus, and what the controllers draw from that bus rises with throttle.
 *
 * @param hover of the craft: when the pack cannot hold even this at its cut-off there is nothing left to ease to
 * @param load, supply written with the eased burst
 * @returns throttle of every motor, 0 to 1; undefined where the flight is over
 */
export function easedBurst(
  circuit: Circuit,
  source: PackSource,
  hover: Load,
  load: Load,
  supply: Supply,
): number | undefined {
  const { branches, mainResistance, avionicsPower } = circuit;
  const cutOff = cutOffVoltage(circuit.pack);
  if (feed(circuit, source, hover, supply) !== 'fed' || supply.packVoltage < cutOff) return undefined;
  const current = currentAtCutOff(circuit.pack, source);
  const bus = cutOff - mainResistance * current;
  if (!(bus > 0)) return undefined;
  const forMotors = current - avionicsPower / bus;
  const duties = new Float64Array(branches.length);
  const excess = (throttle: number): number => {
    branches.forEach(({ idleDuty }, i) => {
      duties[i] = idleDuty + (1 - idleDuty) * throttle;
    });
    return currentOnBus(circuit, duties, bus, 0, load, supply) - forMotors;
  };
  load.angularSpeed.set(hover.angularSpeed);
  const throttle = secantRoot(excess, 0, 1, 0.7);
  excess(throttle);
  supply.busVoltage = bus;
  supply.packVoltage = cutOff;
  supply.packCurrent = current;
  return throttle;
}
