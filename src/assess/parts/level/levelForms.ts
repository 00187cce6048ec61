import { WINDING_BEARS } from '../../../drive/insulation.ts';
import { withUnit } from '../../../units/formatQuantity.ts';
import type { Quantity, Sheet } from '../../types.ts';
import type { MeasureForm } from '../banded.ts';

const LEVEL = 'Glauert 1926 (rotor), Hoerner 1965 (body drag); see docs/method/flight.md';
const PACK = 'Chen and Rincon-Mora 2006 (form of the battery model); see docs/method/drive.md';
const HEAT =
  'two-lump heat balance; common practice, no source for the conductances; see docs/method/drive.md';

/**
 * The measures of level flight.
 *
 * @param limit what stands in the way of more speed, in words
 * @param wind the brief's [m/s]
 * @param longest speed of least current [m/s]; 0 is the hover
 */
export function levelForms(limit: string, wind: number, longest: number): readonly MeasureForm[] {
  const blows = withUnit(Number(wind.toFixed(1)), 'm/s');
  const form = (
    id: string,
    label: string,
    sheet: Sheet,
    quantity: Quantity,
    better: MeasureForm['better'],
    how: string,
    source = LEVEL,
  ): MeasureForm => ({
    ...{ id, label, sheet, quantity, better, how, source },
    ...(quantity === 'temperature' ? { bears: WINDING_BEARS } : {}),
  });
  return [
    form(
      'top-speed',
      'top speed, level',
      'flight',
      'speed',
      'more',
      `Fastest level flight on a pack at 90 %: weight x sine of the tilt = drag of body and propellers along the tilted craft. Beyond it ${limit}.`,
    ),
    form(
      'held-speed',
      'fastest that can be held',
      'flight',
      'speed',
      'more',
      'Speed at which the hottest winding or case settles at its limit; faster than this only for a while.',
      HEAT,
    ),
    form(
      'best-endurance-speed',
      longest > 0 ? 'speed that stays up longest' : 'speed that stays up longest: hover',
      'flight',
      'speed',
      'neither',
      `Least pack current over airspeed, half charge: ${longest > 0 ? 'forward flight needs less induced power than hover until drag takes over' : 'here no speed needs less than the hover'}. The band is all speeds within 1 % of the least, in the likely case or with one input a step off it.`,
    ),
    form(
      'best-endurance-time',
      'longest in the air, gliding along',
      'flight',
      'time',
      'more',
      'Charge over current at that speed, integrated from full down to the reserve or the cut-off. An upper bound, as the hover.',
      PACK,
    ),
    form(
      'best-range-speed',
      'speed that gets furthest, still air',
      'flight',
      'speed',
      'neither',
      'Least pack current over ground speed.',
    ),
    form(
      'cruise-power',
      'power at that speed',
      'flight',
      'power',
      'less',
      'Pack voltage under load x current, half charge: induced, profile and body drag power, and every loss behind it.',
    ),
    form(
      'best-range',
      'range in still air',
      'flight',
      'length',
      'more',
      'Ground speed x time at the best range speed, down to the reserve; one way.',
      PACK,
    ),
    form(
      'best-range-speed-against',
      `speed that gets furthest against ${blows}`,
      'flight',
      'speed',
      'neither',
      'Through the air: least pack current over what is left of it over the ground; faster than in still air.',
    ),
    form(
      'range-against-wind',
      `range against ${blows} of wind`,
      'flight',
      'length',
      'more',
      'As the range, at the airspeed that gets furthest into that wind.',
      PACK,
    ),
    form(
      'best-range-speed-with',
      `speed that gets furthest with ${blows}`,
      'flight',
      'speed',
      'neither',
      'Through the air: least pack current over it and the wind together; slower than in still air. The speed that stays up longest is the same in any wind.',
    ),
    form(
      'range-with-wind',
      `range with ${blows} of wind`,
      'flight',
      'length',
      'more',
      'As the range, at the airspeed that gets furthest before that wind. There is a way back to be flown.',
      PACK,
    ),
    form(
      'camera-level-speed',
      'speed at which the camera looks level',
      'flight',
      'speed',
      'neither',
      "Where trim pitch equals the flying camera's tilt: the speed it wants to be flown at.",
    ),
    form(
      'cruise-front-winding',
      'front windings, cruise',
      'heat',
      'temperature',
      'less',
      'Settled at the best range speed: copper and iron loss against the propeller wash and the wind of flight.',
      HEAT,
    ),
    form(
      'cruise-rear-winding',
      'rear windings, cruise',
      'heat',
      'temperature',
      'less',
      'As the front. Body drag and where the weight lies decide which pair works harder.',
      HEAT,
    ),
    form(
      'top-speed-front-winding',
      'front windings, top speed held',
      'heat',
      'temperature',
      'less',
      'As at cruise, if the top speed were held until temperatures settle.',
      HEAT,
    ),
    form(
      'top-speed-rear-winding',
      'rear windings, top speed held',
      'heat',
      'temperature',
      'less',
      'As the front.',
      HEAT,
    ),
    form(
      'top-speed-time-to-limit',
      'top speed until a motor is too hot',
      'heat',
      'time',
      'more',
      'From the temperature of the air, held at top speed, until winding or case reaches its limit.',
      HEAT,
    ),
  ];
}
