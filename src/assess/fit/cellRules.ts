import { chemistries } from '../../drive/chemistry.ts';
import { amps, fails, fits, volts } from './say.ts';
import type { FitRule } from './types.ts';

const LEAST_CELL_VOLTAGE = 3.3;
/** Labels above this are to be measured, not believed. */
const BOLD_LABEL = 100;
const OLD_PACK = 150;

export const cellRules: readonly FitRule[] = [
  {
    id: 'pack-current',
    title: 'what the cells bear',
    limit:
      "half the label's C-number held, the label in bursts; round cells their amps times parallel count, stop over 1.3 times",
    severities: ['stop', 'risk', 'note'],
    look: ({ craft, figures }) => {
      const peak = figures.peakPackCurrent;
      if (peak === undefined) return [];
      const { pack } = craft.parts;
      const limit = craft.packModel.continuousCurrent;
      const number = { value: peak, limit, quantity: 'current' as const };
      const round = pack.chemistry === 'Li-ion';
      const label = pack.cRating === undefined ? 'a usual label' : `the label's ${pack.cRating} C`;
      const words = round ? `cell amps times ${pack.parallel} in parallel` : `half of ${label}`;
      if (peak <= limit) {
        return [
          fits(`${amps(peak)} at full throttle; the cells bear ${amps(limit)} (${words}).`, ['pack'], {
            number,
          }),
        ];
      }
      // Pouch cells give their honest current for long and twice that for seconds; round cells do not.
      const severity = round ? (peak > 1.3 * limit ? 'stop' : 'risk') : peak > 2 * limit ? 'risk' : 'note';
      return [
        fails(
          severity,
          `Full throttle asks ${amps(peak)} of a pack that honestly holds ${amps(limit)} (${words}).`,
          severity === 'note'
            ? 'Hold full throttle for seconds only; a pack that comes down hot was asked too much.'
            : 'More capacity, a better pack, or less pitch.',
          ['pack'],
          { number },
        ),
      ];
    },
  },
  {
    id: 'sag-at-full-throttle',
    title: 'cell voltage at full throttle',
    limit: '3.3 V a cell, the pack down to the landing reserve; round cells down to their own cut-off',
    severities: ['risk'],
    look: ({ craft, figures }) => {
      const voltage = figures.fullThrottleCellVoltage;
      if (voltage === undefined) return [];
      const limit =
        craft.parts.pack.chemistry === 'Li-ion' ? craft.packModel.cutOffCellVoltage : LEAST_CELL_VOLTAGE;
      const number = { value: voltage, limit, quantity: 'voltage' as const };
      return [
        voltage < limit
          ? fails(
              'risk',
              `At full throttle with the pack down to its reserve the cells sag to ${voltage.toFixed(2)} V${voltage <= chemistries[craft.packModel.chemistry].lowestVoltage ? ' or less: the pack gives out' : ''}.`,
              `A pack of lower resistance or larger capacity; under ${volts(limit)} per cell it ages fast and may cut out.`,
              ['pack'],
              { number },
            )
          : fits(`Cells hold ${voltage.toFixed(2)} V at full throttle, down to the reserve.`, ['pack'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'label-honesty',
    title: "the label's C-number",
    limit: '100 C on a pack whose resistance nobody tells',
    severities: ['note'],
    look: ({ craft }) => {
      const { cRating, capacity, cellResistance, chemistry } = craft.parts.pack;
      // A told resistance outweighs the label.
      if (cRating === undefined || chemistry === 'Li-ion' || cellResistance !== undefined) return [];
      const label = (cRating * capacity.value) / 3600;
      const number = { value: cRating, limit: BOLD_LABEL, quantity: 'count' as const };
      return [
        cRating >= BOLD_LABEL
          ? fails(
              'note',
              `The label promises ${amps(label)} (${cRating} C). It is held for ${amps(label / 2)} here, and its resistance is a guess.`,
              'Measure the resistance of your own pack and enter it: it says more than the label.',
              ['pack'],
              { number },
            )
          : fits(`${cRating} C on the label, held for half of it.`, ['pack'], { number }),
      ];
    },
  },
  {
    id: 'pack-wear',
    title: 'age of the pack',
    limit: '150 charges',
    severities: ['risk'],
    look: ({ craft }) => {
      const { cycles } = craft.build.pack;
      const number = { value: cycles, limit: OLD_PACK, quantity: 'count' as const };
      return cycles > OLD_PACK
        ? [
            fails(
              'risk',
              `${cycles} charges behind this pack: less capacity, more sag.`,
              'Measure its resistance; retire it when it swells or sags.',
              ['pack'],
              { number },
            ),
          ]
        : cycles === 0
          ? []
          : [fits(`${cycles} charges behind the pack.`, ['pack'], { number })];
    },
  },
];
