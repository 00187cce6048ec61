import type { Purpose } from '../build/schema/brief.ts';
import type { StyleFlight } from '../flight/styleFlight.ts';
import { easingOf } from './easing.ts';
import type { FigureName } from './figures.ts';
import type { Direction, Quantity, Sheet } from './types.ts';
import { hoverThrottleWindowOf, thrustToWeightWindow, type Window } from './windows.ts';

/** How a figure of the hover story is shown. */
export interface MeasureForm {
  readonly id: FigureName;
  readonly label: string;
  readonly sheet: Sheet;
  readonly quantity: Quantity;
  readonly better: Direction;
  readonly window?: Window;
  readonly how: string;
  readonly source: string;
}

const ROTOR = 'Ning 2014 (blade elements); Drela 2007 (motor); see docs/method';
const PACK = 'Chen and Rincon-Mora 2006 (form of the battery model); see docs/method/drive.md';
const HEAT =
  'two-lump heat balance; common practice, no source for the conductances; see docs/method/drive.md';

/** The style of the minutes flown. */
type HowFlown = Pick<StyleFlight, 'style' | 'easedFrom'>;

/** The measures of the hover story, in the order of the sheets. */
export function hoverMeasureForms(purpose: Purpose, flown: HowFlown): readonly MeasureForm[] {
  return [
    {
      id: 'thrust-to-weight',
      label: 'thrust to weight',
      sheet: 'lift',
      quantity: 'ratio',
      better: 'window',
      window: thrustToWeightWindow(purpose),
      how: 'Net static thrust of all motors at full throttle, the pack at 90 % and sagging under its own current, over weight.',
      source: ROTOR,
    },
    {
      id: 'thrust-to-weight-at-reserve',
      label: 'thrust to weight, last minute',
      sheet: 'lift',
      quantity: 'ratio',
      better: 'more',
      how: 'As thrust to weight, with the pack down to the landing reserve.',
      source: ROTOR,
    },
    {
      id: 'full-throttle-thrust',
      label: 'full-throttle thrust',
      sheet: 'lift',
      quantity: 'force',
      better: 'more',
      how: 'Every motor at full throttle out of a hover: shaft torque of the motor at its loaded voltage equals the propeller torque.',
      source: ROTOR,
    },
    {
      id: 'hover-throttle',
      label: 'hover throttle',
      sheet: 'lift',
      quantity: 'share',
      better: 'window',
      window: hoverThrottleWindowOf(purpose),
      how: 'Mean throttle that carries the weight on a half-full pack: duty = (back-EMF + current x resistance) over loaded voltage, less the idle duty.',
      source: ROTOR,
    },
    {
      id: 'hardest-motor-load',
      label: 'hardest-worked motor in hover',
      sheet: 'lift',
      quantity: 'ratio',
      better: 'less',
      how: 'Largest motor thrust over the mean: thrusts that balance weight, roll, pitch and yaw about the true centre of gravity.',
      source: 'static equilibrium',
    },
    {
      id: 'hover-speed',
      label: 'propeller speed in hover',
      sheet: 'lift',
      quantity: 'angularSpeed',
      better: 'neither',
      how: 'Speed at which blade-element thrust, less the download on the arm, carries each share of the weight.',
      source: ROTOR,
    },
    {
      id: 'hover-power',
      label: 'power in hover',
      sheet: 'lift',
      quantity: 'power',
      better: 'less',
      how: 'Pack voltage under load x current: shaft power, motor, controller and wire losses, and the electronics.',
      source: ROTOR,
    },
    {
      id: 'hover-current',
      label: 'pack current in hover',
      sheet: 'lift',
      quantity: 'current',
      better: 'less',
      how: 'Power in hover over the loaded pack voltage at half charge.',
      source: ROTOR,
    },
    {
      id: 'flown-time',
      label: `minutes flown, ${flown.style}`,
      sheet: 'flight',
      quantity: 'time',
      better: 'more',
      how: `The style as a histogram of thrust over weight, its mean current drawn from the full pack down to the reserve, or where a hover cannot be held at the cut-off voltage. ${easingOf(flown)}`,
      source: `${PACK}; histogram: common practice, no source`,
    },
    {
      id: 'hover-endurance',
      label: 'hover only, an upper bound',
      sheet: 'flight',
      quantity: 'time',
      better: 'more',
      how: 'Charge over hover current, integrated over the falling voltage down to the reserve. Nobody flies like this: see the minutes flown.',
      source: PACK,
    },
    {
      id: 'full-throttle-pack-current',
      label: 'pack current at full throttle',
      sheet: 'heat',
      quantity: 'current',
      better: 'less',
      how: 'All motors at full throttle on one sagging pack: voltages and currents solved together.',
      source: ROTOR,
    },
    {
      id: 'full-throttle-motor-current',
      label: 'motor current at full throttle',
      sheet: 'heat',
      quantity: 'current',
      better: 'less',
      how: 'Largest of the motors: propeller torque over the torque constant, plus the no-load current.',
      source: ROTOR,
    },
    {
      id: 'full-throttle-cell-voltage',
      label: 'cell voltage, last full throttle',
      sheet: 'heat',
      quantity: 'voltage',
      better: 'more',
      how: 'Open-circuit voltage at the landing reserve less resistance x full-throttle current, per cell.',
      source: PACK,
    },
    {
      id: 'hover-winding-temperature',
      label: 'hottest winding, settled hover',
      sheet: 'heat',
      quantity: 'temperature',
      better: 'less',
      how: 'Copper and iron loss against cooling in the propeller wash, winding and case as two lumps.',
      source: HEAT,
    },
    {
      id: 'hover-case-temperature',
      label: 'hottest case, settled hover',
      sheet: 'heat',
      quantity: 'temperature',
      better: 'less',
      how: 'The case lump of the same balance: what a fingertip feels.',
      source: HEAT,
    },
    {
      id: 'full-throttle-time-to-limit',
      label: 'full throttle until a motor is too hot',
      sheet: 'heat',
      quantity: 'time',
      better: 'more',
      how: 'From hover temperatures, held at full throttle, until winding or case reaches its limit.',
      source: HEAT,
    },
  ];
}
