import { fullVoltage } from './fullVoltage.ts';
import { amps, countOf, fails, fits, mm, SLACK, volts } from './say.ts';
import type { FitRule } from './types.ts';

/** What a controller should have in hand over the peak. */
const CONTROLLER_MARGIN = 1.2;
/** Of one board with four bridges on it. */
const MOTORS_A_BOARD = 4;
/** Leads from bus to a single controller [m]. */
const SUPPLY_LEAD = 0.15;

export const controllerRules: readonly FitRule[] = [
  {
    id: 'controller-count',
    title: 'a controller for every motor',
    limit: 'four motors to a four-in-one board',
    severities: ['stop'],
    look: ({ craft }) => {
      const motors = craft.motors.length;
      const single = craft.parts.controllers?.form === 'single';
      const seat = craft.parts.controllers === undefined ? 'flightController' : 'controllers';
      const number = { value: motors, limit: MOTORS_A_BOARD, quantity: 'count' as const };
      if (single) return [fits(`One controller for each of ${motors} motors.`, [seat])];
      return [
        motors > MOTORS_A_BOARD
          ? fails(
              'stop',
              `One board drives four motors; this craft has ${motors}.`,
              'Take single controllers, one for each motor, or a second board and the height for it.',
              [seat, 'motors'],
              { number },
            )
          : fits(`One board for ${countOf(motors, 'motor')}.`, [seat], { number }),
      ];
    },
  },
  {
    id: 'controller-cells',
    title: 'speed controller against the pack',
    limit: "the cells the controller's maker tells",
    severities: ['stop', 'risk'],
    look: ({ craft }) => {
      // A controller on the flight controller's board shares its rating: flight-controller-cells.
      const controller = craft.parts.controllers;
      if (controller === undefined) return [];
      const series = craft.parts.pack.cells;
      const { min, max } = controller.cells;
      const number = { value: series, limit: max, quantity: 'count' as const };
      if (series > max) {
        return [
          fails(
            'stop',
            `A ${series}S pack on a controller rated to ${max}S: its switches break down at first plug-in.`,
            `Take at most ${max}S, or a controller rated for ${series}S.`,
            ['controllers', 'pack'],
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
              ['controllers', 'pack'],
              { number: { ...number, limit: min } },
            )
          : fits(`${series}S on a controller for ${min}S to ${max}S.`, ['controllers', 'pack'], { number }),
      ];
    },
  },
  {
    id: 'board-full-voltage',
    title: 'full pack against the boards',
    limit: '4.2 V for each cell a board is rated for; stop over 1.05 times',
    severities: ['stop', 'risk'],
    look: (context) => {
      const { controllers, flightController } = context.craft.parts;
      const full = fullVoltage(context);
      const boards = [
        ...(controllers === undefined ? [] : [{ seat: 'controllers', part: controllers }]),
        { seat: 'flightController', part: flightController },
      ];
      return boards.map(({ seat, part }) => {
        const limit = 4.2 * part.cells.max;
        const number = { value: full, limit, quantity: 'voltage' as const };
        return full > limit + SLACK
          ? fails(
              full > 1.05 * limit ? 'stop' : 'risk',
              `A full pack gives ${volts(full)}; ${part.name} is rated ${volts(limit)}.`,
              'Charge to 4.2 V per cell, or take a board rated for a cell more.',
              [seat, 'pack'],
              { number },
            )
          : fits(`${volts(full)} full on ${part.name}, rated ${volts(limit)}.`, [seat, 'pack'], { number });
      });
    },
  },
  {
    id: 'controller-current',
    title: 'controller current at full throttle',
    limit: '1.2 times the peak under the continuous rating; stop over the burst rating',
    severities: ['stop', 'risk'],
    look: ({ craft, figures }) => {
      const peak = figures.peakMotorCurrent;
      if (peak === undefined) return [];
      const { continuousCurrent, burstCurrent } = craft.controllerModel;
      const wanted = CONTROLLER_MARGIN * peak;
      const number = { value: wanted, limit: continuousCurrent, quantity: 'current' as const };
      const seat = craft.parts.controllers === undefined ? 'flightController' : 'controllers';
      if (peak > burstCurrent) {
        return [
          fails(
            'stop',
            `At full throttle a motor draws ${amps(peak)}; the controller bears ${amps(burstCurrent)} for seconds.`,
            'A larger controller, less pitch or fewer cells.',
            [seat, 'propellers'],
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
              [seat],
              { number },
            )
          : fits(`${amps(peak)} a motor and a fifth in hand, of ${amps(continuousCurrent)}.`, [seat], {
              number,
            }),
      ];
    },
  },
  {
    id: 'lead-length-single',
    title: 'leads to single controllers',
    limit: '150 mm',
    severities: ['risk'],
    look: ({ craft }) => {
      const length = craft.build.wiring.supplyLead?.length;
      // Untold leads are our own guess, not to be judged.
      if (craft.parts.controllers?.form !== 'single' || length === undefined) return [];
      const number = { value: length, limit: SUPPLY_LEAD, quantity: 'length' as const };
      return [
        length > SUPPLY_LEAD + SLACK
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
];
