import { type BusTransient, busTransient } from '../../drive/busTransient.ts';
import { airOf } from '../dayOf.ts';
import { busOf } from '../parts/bus.ts';
import { busRemedies } from '../parts/busRemedies.ts';
import { consumersOf, supplyOf } from './consumers.ts';
import { amps, fails, fits, volts } from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

/** Silent where nothing on the bus tells a rating in volts, and without a hover. */
export const busSpike: FitRule = {
  id: 'bus-spike',
  title: 'voltage spike when the throttle is dropped',
  limit: 'the lowest rating on the bus that is told',
  severities: ['risk'],
  source: 'braking into a full pack and the current of the leads, docs/method/drive.md',
  look,
};

/** The bus at its highest against what is told of it: capacitors, and parts fed from the pack itself. */
function look(context: FitContext): readonly FitVerdict[] {
  const { craft, brief, figures } = context;
  const packCurrent = figures.peakPackCurrent;
  const own = craft.parts.extras.flatMap(({ part, count }) =>
    part.kind === 'capacitor' ? Array.from({ length: count }, () => part) : [],
  );
  if (packCurrent === undefined) return [];
  const ratings = [
    ...own.map((part) => ({
      name: part.name,
      seat: 'extras',
      voltage: part.voltage,
      instead: 'take one that bears more',
    })),
    ...consumersOf(context).flatMap((consumer) => {
      const supply = supplyOf(context, consumer);
      const fed = supply === 'pack' || supply === 'pack until low';
      const { name, seat, maxVoltage } = consumer;
      return fed && maxVoltage !== undefined
        ? [{ name, seat, voltage: maxVoltage, instead: 'feed that part from a regulator' }]
        : [];
    }),
  ].sort((a, b) => a.voltage - b.voltage);
  const weakest = ratings[0];
  if (weakest === undefined) return []; // nothing on the bus tells a rating in volts
  const bus = busOf(craft, { packCurrent, temperature: airOf(brief).temperature });
  const found = busTransient(bus);
  const number = { value: found.peak, limit: weakest.voltage, quantity: 'voltage' as const };
  const happened = whatHappened(found);
  if (found.peak <= weakest.voltage) {
    return [fits(`${happened}; ${weakest.name} bears ${volts(weakest.voltage)}.`, ['wiring'], { number })];
  }
  const helping = busRemedies(craft, bus);
  const enough = helping.filter(({ peak }) => peak <= weakest.voltage);
  const best = [...helping].sort((a, b) => a.peak - b.peak).slice(0, 1);
  const told = (enough.length > 0 ? enough : best).map(({ says, peak }) => `${says} (${volts(peak)})`);
  const short = enough.length > 0 ? '' : ': it helps most and is not enough';
  const first = told.length === 0 ? '' : `${told.join(', or ')}${short}; or `;
  return [
    fails(
      'risk',
      `${happened}; ${weakest.name} is rated ${volts(weakest.voltage)}.`,
      capital(`${first}${weakest.instead}.`),
      [weakest.seat, 'wiring'],
      { number },
    ),
  ];
}

/** What lifts the bus to its peak, in words. */
function whatHappened({ governs, peak, cut, braking }: BusTransient): string {
  if (governs === 'braking') {
    return `Dropped from full throttle on a full pack, controllers that brake put ${amps(braking.returned)} back and, should their pulses fall in step, lift the bus to ${volts(peak)}`;
  }
  return cut.time === undefined
    ? `Dropped from full throttle on a full pack, the bus comes back to ${volts(peak)} and not over it`
    : `Cutting ${amps(cut.current)} on a full pack lifts the bus to ${volts(peak)}`;
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
