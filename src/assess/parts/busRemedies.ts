import type { Craft } from '../../build/craft.ts';
import { type BusTransientRequest, busTransient } from '../../drive/busTransient.ts';
import { wireResistance } from '../../drive/wire.ts';
import { CAPACITOR_RESISTANCE } from './bus.ts';

/** The usual size of one capacitor more [F] (common practice, no source). */
const ONE_MORE = 1000e-6;

/** A change of the bus, in words, and the peak that it leaves [V]. */
export interface BusRemedy {
  readonly says: string;
  readonly peak: number;
}

/** What could lower the peak of a bus, each worked out anew, the most helpful first; a setting that costs crispness last. */
export function busRemedies(craft: Craft, bus: BusTransientRequest): readonly BusRemedy[] {
  const now = busTransient(bus);
  const shorter = busTransient({
    ...bus,
    inductance: bus.inductance / 2,
    sourceResistance: bus.sourceResistance - wireResistance(craft.wiring.main) / 2,
  });
  const more = busTransient({
    ...bus,
    capacitors: [...bus.capacitors, { capacitance: ONE_MORE, resistance: CAPACITOR_RESISTANCE }],
  });
  const parts = [
    { says: 'another 1000 uF capacitor beside the controllers', peak: more.peak },
    { says: 'half the pack lead', peak: shorter.peak },
  ].sort((a, b) => a.peak - b.peak);
  const coasting = {
    says: 'controllers set to let the motors coast, which steers less crisply',
    peak: now.cut.peak,
  };
  return [...parts, coasting].filter(({ peak }) => peak < now.peak);
}
