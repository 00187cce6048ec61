import { inBox } from '../money/boxes.ts';
import { fullVoltage } from './fullVoltage.ts';
import { amps, fails, fits, mmSize, volts } from './say.ts';
import type { FitRule } from './types.ts';

/** 14 AWG, a hair under its 2.08 mm2, on a plug of 60 A; in proportion below [m2]. */
const AREA_AT_60_A = 2.05e-6;
/** Motors that brake throw spikes worth catching from this many cells on. */
const SPIKES_FROM_CELLS = 3;
/** 470 uF with its tolerance of a fifth would be 376; sold as 470 or 1000 [F]. */
const LEAST_CAPACITANCE = 440e-6;
const MOST_CAPACITANCE = 2200e-6;
/** Rating over full pack: 25 V for 4S, 35 V for 6S. */
const CAPACITOR_MARGIN = 1.25;

export const wiringRules: readonly FitRule[] = [
  {
    id: 'connector-match',
    title: 'pack plug against the lead',
    limit: 'the same plug',
    severities: ['stop'],
    look: ({ craft }) => {
      const own = craft.parts.pack.connector;
      const lead = craft.wiring.plug;
      if (lead === undefined) return []; // no plug told: it will be soldered to match
      return [
        own === lead
          ? fits(`Pack and lead both have the ${own}.`, ['pack'])
          : fails(
              'stop',
              `The pack has ${own}, the aircraft's lead ${lead}: they do not mate.`,
              'Solder the right plug on; no adapters in the main current.',
              ['pack', 'wiring'],
            ),
      ];
    },
  },
  {
    id: 'connector-current',
    title: 'current through the pack plug',
    limit: 'twice its continuous rating, for bursts',
    severities: ['risk'],
    look: ({ craft, figures }) => {
      const peak = figures.peakPackCurrent;
      if (peak === undefined) return [];
      const { burstCurrent, continuousCurrent } = craft.wiring.connector;
      const number = { value: peak, limit: burstCurrent, quantity: 'current' as const };
      return [
        peak > burstCurrent
          ? fails(
              'risk',
              `Full throttle draws ${amps(peak)} through a plug good for ${amps(burstCurrent)} in bursts (${amps(continuousCurrent)} held).`,
              'The next size of plug, or short bursts.',
              ['pack', 'wiring'],
              { number },
            )
          : fits(`${amps(peak)} at full throttle through a plug for ${amps(burstCurrent)}.`, ['wiring'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'main-wire',
    title: 'section of the pack lead',
    limit: '14 AWG (2.1 mm2) on a 60 A plug, in proportion below',
    severities: ['risk'],
    look: ({ craft }) => {
      if (craft.wiring.inferred.includes('pack lead')) return []; // our own guess is not judged
      const { area } = craft.wiring.main;
      const { continuousCurrent } = craft.wiring.connector;
      const least = (AREA_AT_60_A * Math.min(continuousCurrent, 60)) / 60;
      const number = { value: across(area), limit: across(least), quantity: 'length' as const };
      const says = `${(area * 1e6).toFixed(1)} mm2, ${mmSize(across(area))} of copper across`;
      return [
        area < least
          ? fails(
              'risk',
              `A pack lead of ${says}, on a ${amps(continuousCurrent)} plug; the custom is 12 to 14 AWG for 60 A, which here is ${(least * 1e6).toFixed(1)} mm2.`,
              'Use thicker wire: it costs a few grams and saves volts.',
              ['wiring'],
              { number },
            )
          : fits(`Pack lead of ${says}.`, ['wiring'], { number }),
      ];
    },
  },
  {
    id: 'capacitor-fitted',
    title: 'capacitor on the bus',
    limit: '470 to 1000 uF from 3S on',
    severities: ['risk', 'note'],
    look: ({ craft }) => {
      if (craft.parts.pack.cells < SPIKES_FROM_CELLS) return [];
      const total = craft.parts.extras.reduce(
        (sum, { part, count }) => sum + (part.kind === 'capacitor' ? part.capacitance.value * count : 0),
        0,
      );
      const says = `${(total * 1e6).toFixed(0)} uF`;
      if (total === 0) {
        return [
          inBox(craft.parts, 'capacitor')
            ? fits('A capacitor comes with the electronics.', ['controllers'])
            : fails(
                'risk',
                'No capacitor on the bus: braking motors throw spikes that break boards and snow the picture.',
                'Solder 470 to 1000 uF across the pack pads.',
                ['controllers', 'wiring'],
              ),
        ];
      }
      if (total < LEAST_CAPACITANCE) {
        return [
          fails('note', `A capacitor of ${says}; the custom is 470 to 1000 uF.`, 'Use a larger one.', [
            'controllers',
            'extras',
          ]),
        ];
      }
      return [
        total > MOST_CAPACITANCE
          ? fails(
              'note',
              `Capacitors of ${says}: the spark at every plug-in eats the plug.`,
              '1000 uF is enough; keep the leads short instead.',
              ['controllers', 'extras'],
            )
          : fits(`${says} across the bus.`, ['controllers']),
      ];
    },
  },
  {
    id: 'capacitor-voltage',
    title: "capacitor's voltage",
    limit: '1.25 times the full pack (25 V for 4S, 35 V for 6S); stop under the full pack',
    severities: ['stop', 'risk'],
    look: (context) =>
      context.craft.parts.extras.flatMap(({ part }) => {
        if (part.kind !== 'capacitor') return [];
        const full = fullVoltage(context);
        const wanted = CAPACITOR_MARGIN * full;
        const number = { value: part.voltage, limit: wanted, quantity: 'voltage' as const };
        return [
          part.voltage < wanted
            ? fails(
                part.voltage < full ? 'stop' : 'risk',
                `A ${volts(part.voltage)} capacitor on a pack of ${volts(full)}: spikes rise well above that.`,
                `Use one of ${volts(sold(wanted))}: 25 V for 4S, 35 V for 6S.`,
                ['controllers', 'pack'],
                { number },
              )
            : fits(`${volts(part.voltage)} capacitor on ${volts(full)}.`, ['controllers'], { number }),
        ];
      }),
  },
];

/** Diameter of a round conductor [m]. */
const across = (area: number) => 2 * Math.sqrt(area / Math.PI);

/** The next rating that is sold [V]. */
const sold = (voltage: number) => [16, 25, 35, 50, 63].find((rating) => rating >= voltage) ?? 100;
