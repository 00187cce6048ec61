import { amps, fails, fits, mm, volts } from './say.ts';
import { fullVoltage } from './stackRules.ts';
import type { FitRule } from './types.ts';

/** What a controller should have in hand over the peak. */
const CONTROLLER_MARGIN = 1.2;
/** A label's C-number, halved, is what the cells bear. */
const LABEL_SHARE = 0.5;
const LEAST_CELL_VOLTAGE = 3.3;
const SQUARE_MM = 1e-6;

export const powerRules: readonly FitRule[] = [
  {
    id: 'controller-cells',
    title: 'speed controller against the pack',
    look: ({ craft }) => {
      const controller = craft.parts.controllers ?? craft.parts.flightController;
      const seat = craft.parts.controllers === undefined ? 'flightController' : 'controllers';
      const series = craft.parts.pack.cells;
      const { min, max } = controller.cells;
      const number = { value: series, limit: max, quantity: 'count' as const };
      if (series > max) {
        return [
          fails(
            'stop',
            `A ${series}S pack on a controller rated to ${max}S: its switches break down at first plug-in.`,
            `Take at most ${max}S, or a controller rated for ${series}S.`,
            [seat, 'pack'],
            { number },
          ),
        ];
      }
      return [
        series < min
          ? fails(
              'risk',
              `A ${series}S pack on a controller made for ${min}S to ${max}S may not start.`,
              `Take ${min}S or another controller.`,
              [seat, 'pack'],
              { number },
            )
          : fits(`${series}S on a controller for ${min}S to ${max}S.`, [seat, 'pack'], { number }),
      ];
    },
  },
  {
    id: 'controller-full-voltage',
    title: 'full pack against the controller',
    look: (context) => {
      const limit = context.craft.controllerModel.maximumVoltage;
      const full = fullVoltage(context);
      const number = { value: full, limit, quantity: 'voltage' as const };
      return [
        full > limit + 1e-6
          ? fails(
              full > 1.05 * limit ? 'stop' : 'risk',
              `A full pack gives ${volts(full)}; the controller is rated ${volts(limit)}.`,
              'Charge to 4.2 V per cell, or take a controller rated for a cell more.',
              ['controllers', 'pack'],
              { number },
            )
          : fits(`${volts(full)} full on a controller rated ${volts(limit)}.`, ['controllers', 'pack'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'controller-current',
    title: 'controller current at full throttle',
    look: ({ craft, figures }) => {
      const peak = figures.peakMotorCurrent;
      if (peak === undefined) return [];
      const { continuousCurrent, burstCurrent } = craft.controllerModel;
      const wanted = CONTROLLER_MARGIN * peak;
      const number = { value: wanted, limit: continuousCurrent, quantity: 'current' as const };
      if (peak > burstCurrent) {
        return [
          fails(
            'stop',
            `At full throttle a motor draws ${amps(peak)}; the controller bears ${amps(burstCurrent)} for seconds.`,
            'A larger controller, less pitch or fewer cells.',
            ['controllers', 'propellers'],
            { number: { value: peak, limit: burstCurrent, quantity: 'current' } },
          ),
        ];
      }
      return [
        wanted > continuousCurrent
          ? fails(
              'risk',
              `Full throttle draws ${amps(peak)} a motor; with a fifth in hand that is ${amps(wanted)}, and the controller is rated ${amps(continuousCurrent)}.`,
              'Keep full throttle to bursts, or take the next size of controller.',
              ['controllers'],
              { number },
            )
          : fits(
              `${amps(peak)} a motor and a fifth in hand, of ${amps(continuousCurrent)}.`,
              ['controllers'],
              {
                number,
              },
            ),
      ];
    },
  },
  {
    id: 'connector-match',
    title: 'pack plug against the lead',
    look: ({ craft }) => {
      const own = craft.parts.pack.connector;
      const lead = craft.wiring.plug;
      if (lead === undefined) return [];
      return [
        own === lead
          ? fits(`${own} on both.`, ['pack'])
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
    look: ({ craft }) => {
      const { area } = craft.wiring.main;
      const { continuousCurrent } = craft.wiring.connector;
      // 12 to 14 AWG on a 60 A plug, in proportion below.
      const least = (2.05 * SQUARE_MM * Math.min(continuousCurrent, 60)) / 60;
      const number = { value: area / SQUARE_MM, limit: least / SQUARE_MM, quantity: 'ratio' as const };
      return [
        area < least
          ? fails(
              'risk',
              `A pack lead of ${(area / SQUARE_MM).toFixed(1)} mm2 on a ${amps(continuousCurrent)} plug; the custom is 12 to 14 AWG for 60 A.`,
              'Use thicker wire: it costs a few grams and saves volts.',
              ['wiring'],
              { number },
            )
          : fits(`Pack lead of ${(area / SQUARE_MM).toFixed(1)} mm2.`, ['wiring'], { number }),
      ];
    },
  },
  {
    id: 'capacitor-fitted',
    title: 'capacitor on the bus',
    look: ({ craft }) => {
      const own = craft.parts.extras.flatMap(({ part }) => (part.kind === 'capacitor' ? [part] : []));
      const boxed = inBox(craft.parts, 'capacitor');
      const total = own.reduce((sum, part) => sum + part.capacitance.value, 0);
      if (craft.parts.pack.cells < 3) return [];
      if (own.length === 0) {
        return [
          boxed
            ? fits('A capacitor comes with the electronics.', ['controllers'])
            : fails(
                'risk',
                'No capacitor on the bus: braking motors throw spikes that break boards and snow the picture.',
                'Solder 470 to 1000 uF across the pack pads.',
                ['controllers', 'wiring'],
              ),
        ];
      }
      return [
        total < 440e-6
          ? fails(
              'note',
              `A capacitor of ${(total * 1e6).toFixed(0)} uF; the custom is 470 to 1000 uF.`,
              'Use a larger one.',
              ['controllers'],
            )
          : fits(`${(total * 1e6).toFixed(0)} uF across the bus.`, ['controllers']),
      ];
    },
  },
  {
    id: 'capacitor-voltage',
    title: "capacitor's voltage",
    look: (context) =>
      context.craft.parts.extras.flatMap(({ part }) => {
        if (part.kind !== 'capacitor') return [];
        const full = fullVoltage(context);
        const wanted = 1.25 * full;
        const number = { value: part.voltage, limit: wanted, quantity: 'voltage' as const };
        return [
          part.voltage < wanted
            ? fails(
                part.voltage < full ? 'stop' : 'risk',
                `A ${volts(part.voltage)} capacitor on a pack of ${volts(full)}: spikes rise well above that.`,
                'Use 25 V for 4S and 35 V for 6S.',
                ['controllers', 'pack'],
                { number },
              )
            : fits(`${volts(part.voltage)} capacitor on ${volts(full)}.`, ['controllers'], { number }),
        ];
      }),
  },
  {
    id: 'pack-current',
    title: 'what the cells bear',
    look: ({ craft, figures }) => {
      const peak = figures.peakPackCurrent;
      if (peak === undefined) return [];
      const { pack } = craft.parts;
      const limit = craft.packModel.continuousCurrent;
      const number = { value: peak, limit, quantity: 'current' as const };
      const words =
        pack.chemistry === 'Li-ion'
          ? `cell amps times ${pack.parallel} in parallel`
          : `half of the label's ${pack.cRating ?? 'unknown'} C`;
      return [
        peak > limit
          ? fails(
              pack.chemistry === 'Li-ion' && peak > 1.3 * limit ? 'stop' : 'risk',
              `Full throttle asks ${amps(peak)} of a pack that honestly bears ${amps(limit)} (${words}).`,
              'More capacity, a better pack, or hold full throttle for seconds only.',
              ['pack'],
              { number },
            )
          : fits(`${amps(peak)} at full throttle; the cells bear ${amps(limit)} (${words}).`, ['pack'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'sag-at-full-throttle',
    title: 'cell voltage at full throttle',
    look: ({ craft, figures }) => {
      const voltage = figures.fullThrottleCellVoltage;
      if (voltage === undefined || craft.parts.pack.chemistry === 'Li-ion') return [];
      const number = { value: voltage, limit: LEAST_CELL_VOLTAGE, quantity: 'voltage' as const };
      return [
        voltage < LEAST_CELL_VOLTAGE
          ? fails(
              'risk',
              `At full throttle on a half-empty pack the cells sag to ${voltage.toFixed(2)} V.`,
              `A pack of lower resistance or larger capacity; under ${volts(LEAST_CELL_VOLTAGE)} per cell it ages fast and may cut out.`,
              ['pack'],
              { number },
            )
          : fits(`Cells hold ${voltage.toFixed(2)} V at full throttle, half empty.`, ['pack'], { number }),
      ];
    },
  },
  {
    id: 'lead-length-single',
    title: 'leads to single controllers',
    look: ({ craft }) => {
      const single = craft.parts.controllers?.form === 'single';
      const length = craft.build.wiring.supplyLead?.length;
      if (!single || length === undefined) return [];
      const number = { value: length, limit: 0.15, quantity: 'length' as const };
      return [
        length > 0.15
          ? fails(
              'risk',
              `Leads of ${mm(length)} to the controllers: long leads ring with every switching edge.`,
              'Shorten them, or add a capacitor at each controller.',
              ['wiring'],
              { number },
            )
          : fits(`Leads of ${mm(length)} to the controllers.`, ['wiring'], { number }),
      ];
    },
  },
  {
    id: 'label-honesty',
    title: "the label's C-number",
    look: ({ craft }) => {
      const { cRating, capacity } = craft.parts.pack;
      if (cRating === undefined || craft.parts.pack.chemistry === 'Li-ion') return [];
      const label = (cRating * capacity.value) / 3600;
      const honest = LABEL_SHARE * label;
      return cRating > 100
        ? [
            fails(
              'note',
              `The label promises ${amps(label)} (${cRating} C). It is held for ${amps(honest)} here.`,
              'Measure the resistance of your own pack and enter it: it says more than the label.',
              ['pack'],
            ),
          ]
        : [];
    },
  },
];

/** Whether any part of the aircraft brings an item in its box. */
export function inBox(parts: import('../../build/craft.ts').CraftParts, item: string): boolean {
  const all = [
    parts.frame,
    parts.controllers,
    parts.flightController,
    parts.videoLink,
    parts.receiver,
    parts.pack,
    ...parts.cameras,
    ...parts.motors,
  ];
  return all.some((part) => part?.inTheBox.some((each) => each.item === item) ?? false);
}
