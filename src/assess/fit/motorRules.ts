import { controllerClassLow, speedConstantWindow } from '../windows.ts';
import { largestPropeller, perMotor, placeOf } from './perMotor.ts';
import { amps, celsius, fails, fits, inches, SLACK } from './say.ts';
import type { FitRule } from './types.ts';

const rpmPerVolt = Math.PI / 30;
/** What a fingertip bears for a moment, and magnets and glue for long [K]. */
const HOT_CASE = 353.15;

export const motorRules: readonly FitRule[] = [
  {
    id: 'motor-cells',
    title: 'motor against the pack',
    limit: "the cells the motor's maker tells",
    severities: ['stop', 'risk'],
    look: (context) =>
      perMotor(context, (motor, index) => {
        const range = context.craft.parts.motors[index]?.cells;
        if (range === undefined) return undefined; // not told; speed-constant-window judges instead
        const { cells } = context.craft.parts.pack;
        const number = { value: cells, limit: range.max, quantity: 'count' as const };
        const made = range.min === range.max ? `${range.min}S` : `${range.min}S to ${range.max}S`;
        if (cells > range.max) {
          return fails(
            'stop',
            `A ${cells}S pack on a motor made for ${made}: it overspeeds and burns.`,
            `Take a pack of at most ${range.max} cells or a motor of lower K_V.`,
            ['motors', 'pack'],
            { number, place: placeOf(motor) },
          );
        }
        return cells < range.min
          ? fails(
              'risk',
              `A ${cells}S pack on a motor made for ${made}: it will feel weak.`,
              `Take ${range.min}S or a motor of higher K_V.`,
              ['motors', 'pack'],
              { number: { ...number, limit: range.min } },
            )
          : fits(`${cells}S suits a motor made for ${made}.`, ['motors', 'pack'], { number });
      }),
  },
  {
    id: 'speed-constant-window',
    title: 'K_V for the propeller and pack',
    limit: '5 in 4S 2400 to 2700 rpm/V, 5 in 6S 1700 to 1950, 7 in 6S 1100 to 1500',
    severities: ['risk'],
    look: (context) =>
      perMotor(context, (motor) => {
        const rotor = context.craft.rotors[motor.rotor];
        if (rotor === undefined) return undefined;
        const { cells } = context.craft.parts.pack;
        const window = speedConstantWindow(rotor.blade.diameter, cells);
        if (window === undefined) return undefined; // the trade has settled on none for this size
        const { speedConstant } = motor.model;
        const kv = Math.round(speedConstant / rpmPerVolt);
        const low = Math.round(window.low / rpmPerVolt);
        const high = Math.round(window.high / rpmPerVolt);
        const number = { value: kv, limit: kv < low ? low : high, quantity: 'count' as const };
        const size = inches(rotor.blade.diameter);
        return kv < low || kv > high
          ? fails(
              'risk',
              `K_V ${kv} rpm/V with ${size} propellers on ${cells}S; the trade flies ${low} to ${high}.`,
              kv > high
                ? 'Lower K_V, fewer cells or less pitch keeps the currents down.'
                : 'Higher K_V or more cells.',
              ['motors', 'propellers', 'pack'],
              { number, place: placeOf(motor) },
            )
          : fits(`K_V ${kv} rpm/V is inside ${low} to ${high} for ${size} on ${cells}S.`, ['motors'], {
              number,
            });
      }),
  },
  {
    id: 'motor-current',
    title: 'motor current at full throttle',
    limit: "the motor's burst rating; stop over 1.25 times",
    severities: ['stop', 'risk'],
    look: ({ craft, figures }) => {
      const limit = craft.motors.reduce(
        (least, motor) => Math.min(least, motor.model.limits.current ?? Number.POSITIVE_INFINITY),
        Number.POSITIVE_INFINITY,
      );
      const peak = figures.peakMotorCurrent;
      if (peak === undefined || !Number.isFinite(limit)) return [];
      const number = { value: peak, limit, quantity: 'current' as const };
      return [
        peak > limit
          ? fails(
              peak > 1.25 * limit ? 'stop' : 'risk',
              `At full throttle a motor draws ${amps(peak)}; it is rated ${amps(limit)} for a burst.`,
              'Less pitch, a smaller propeller, fewer cells or a larger motor; short bursts only until then.',
              ['motors', 'propellers', 'pack'],
              { number },
            )
          : fits(`${amps(peak)} at full throttle of ${amps(limit)} rated.`, ['motors'], { number }),
      ];
    },
  },
  {
    id: 'motor-heat',
    title: 'motor case after a flight',
    limit: '80 degC in a settled hover',
    severities: ['risk'],
    look: ({ figures }) => {
      const value = figures.hoverCaseTemperature;
      if (value === undefined) return [];
      const number = { value, limit: HOT_CASE, quantity: 'temperature' as const };
      return [
        value > HOT_CASE + SLACK
          ? fails(
              'risk',
              `Hovering alone brings the hottest motor's case to ${celsius(value)}; over ${celsius(HOT_CASE)} glue and magnets suffer.`,
              'Less mass, a larger propeller or a larger motor; land and feel the motors after two minutes.',
              ['motors', 'propellers'],
              { number },
            )
          : fits(
              `Hover brings the hottest case to ${celsius(value)}. Feel the motors after hard flights.`,
              ['motors'],
              {
                number,
              },
            ),
      ];
    },
  },
  {
    id: 'controller-class',
    title: 'size of controller for the propeller',
    limit: '5 in 6S 45 A',
    severities: ['note'],
    look: (context) => {
      const { craft } = context;
      const diameter = largestPropeller(context);
      const { cells } = craft.parts.pack;
      const least = controllerClassLow(diameter, cells);
      if (least === undefined) return []; // the trade has settled on none for this size
      const value = craft.controllerModel.continuousCurrent;
      const number = { value, limit: least, quantity: 'current' as const };
      return [
        value < least
          ? fails(
              'note',
              `Controllers of ${amps(value)}; ${inches(diameter)} builds on ${cells}S carry ${amps(least)} to 55 A.`,
              `Take the next size up: it runs cooler and outlives a stuck propeller.`,
              ['controllers', 'propellers'],
              { number },
            )
          : fits(`Controllers of ${amps(value)} for ${inches(diameter)} on ${cells}S.`, ['controllers'], {
              number,
            }),
      ];
    },
  },
];
