import type { Quantity, Sheet } from '../../types.ts';
import type { MeasureForm } from '../banded.ts';

const SET = 'attainable moments by linear programming (Durham 1993); docs/method/reserve.md';
const SPIN = 'first-order motor and propeller (Drela 2007); docs/method/reserve.md';
const TURN = 'yaw balance of Mueller and D’Andrea 2014; docs/method/reserve.md';
const HEAT =
  'two-lump heat balance; common practice, no source for the conductances; see docs/method/drive.md';
const COUNTED = 'rates add; the rate of one motor is a placeholder: common practice, no source';

/** The measures of control in reserve. */
export function reserveForms(): readonly MeasureForm[] {
  const form = (
    id: string,
    label: string,
    quantity: Quantity,
    better: MeasureForm['better'],
    how: string,
    source = SET,
    sheet: Sheet = 'flight',
  ): MeasureForm => ({ id, label, sheet, quantity, better, how, source });
  const moment = (axis: string): MeasureForm =>
    form(
      `${axis}-moment`,
      `${axis} moment in reserve`,
      'torque',
      'more',
      'Largest either way in hover, the smaller of the two, the other moments nothing and the weight carried, on the sagging pack at half charge.',
    );
  const last = (axis: string): MeasureForm =>
    form(
      `last-${axis}-moment`,
      `${axis} moment, last minute`,
      'torque',
      'more',
      `As the ${axis} moment, with the pack down to the landing reserve.`,
    );
  const acceleration = (axis: string): MeasureForm =>
    form(
      `${axis}-acceleration`,
      `${axis} acceleration`,
      'angularAcceleration',
      'more',
      'Largest moment in reserve against the inertia, the other moments nothing; the other axes may drift a little.',
    );
  return [
    moment('roll'),
    moment('pitch'),
    moment('yaw'),
    last('roll'),
    last('pitch'),
    last('yaw'),
    acceleration('roll'),
    acceleration('pitch'),
    acceleration('yaw'),
    form(
      'combined-control',
      'roll, pitch and yaw all at once',
      'share',
      'more',
      'Share of each largest moment that can be had together in the worst combination; a third is usual.',
    ),
    form(
      'motor-lag',
      'motor lag',
      'time',
      'less',
      'Inertia of bell and propeller over back-EMF and propeller damping, at hover speed, fixed duty.',
      SPIN,
    ),
    form(
      'full-throttle-lag',
      'hover to full throttle',
      'time',
      'less',
      'To 95 % of full speed at full voltage: closed integral of torque over inertia.',
      SPIN,
    ),
    form(
      'roll-bank-time',
      'to roll through 90 deg',
      'time',
      'less',
      'Full moment through the motor lag, integrated twice; the damping of the rotors is left out.',
      SPIN,
    ),
    form(
      'pitch-bank-time',
      'to pitch through 90 deg',
      'time',
      'less',
      'As the roll, about the pitch axis.',
      SPIN,
    ),
    form(
      'roll-stop-time',
      'to roll to 90 deg and stop there',
      'time',
      'less',
      'Full moment one way and then the other.',
      SPIN,
    ),
    form(
      'gyroscopic-share',
      'gyroscopic pitch in a roll with full yaw',
      'share',
      'less',
      'Angular momentum left over by unequal rotors x a roll of 10 rad/s, over the pitch moment in reserve.',
    ),
    form(
      'borne-thrust',
      'thrust that any motor bears for good',
      'force',
      'more',
      'The least of the motors, standing still: its winding or case settles at its limit. At most full throttle.',
      HEAT,
      'heat',
    ),
    form(
      'left-after-motor-hot',
      'control left with one motor held to what it bears hot',
      'share',
      'more',
      'Smallest moment left over the same before, for the worst motor; nothing when it cannot be held still. A craft whose motors reach less than that to steer a hover loses nothing.',
    ),
    form(
      'left-after-motor-out',
      'control left after one motor is out',
      'share',
      'more',
      'Smallest moment left over the same before, for the worst motor; nothing when it cannot be held still. Physics only: common flight controllers do not share the load anew.',
    ),
    form(
      'turning-after-motor-out',
      'turning after one motor is out, if it settles',
      'angularSpeed',
      'less',
      'Yaw moment left over against the in-plane drag of the rotors on the turning craft, for the fastest motor; the drag of arms and motors is left out. Common gyros read to 2000 deg/s.',
      TURN,
    ),
    form(
      'motor-failures',
      'single-motor failures in 100 flight hours',
      'ratio',
      'less',
      'Motors x 0.2 each in 100 hours.',
      COUNTED,
    ),
    form(
      'failures-without-control',
      'of which full control is lost',
      'ratio',
      'less',
      'Failures of motors whose loss leaves roll, pitch, yaw or lift without reserve.',
      COUNTED,
    ),
  ];
}
