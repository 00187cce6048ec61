import type { Cause } from './lesson.ts';

/** What a seat is to the machine: why the figures under it move. */
export const WHY: Readonly<Record<Cause, string>> = {
  layout:
    'The same parts stand elsewhere. How far each rotor is from the middle sets the lever it turns the craft with and, squared, the moments of inertia; where the discs lie decides what the camera sees and whose wake meets whom. Thrust and minutes follow only where discs overlap or arms grow in weight.',
  mass: 'Nothing else changes. Every gram is lifted all the time: hover needs more thrust, and power goes with thrust to the power of one and a half, so minutes fall faster than mass grows.',
  balance:
    'Nothing else changes. Off the middle, the motors on the heavy side work harder in every hover, get hotter and have less left to steer with.',
  frame:
    "The frame brings its own mass, stiffness and price, and its arms' sections decide which rotor speeds shake it and what a knock breaks.",
  motors:
    'Speed constant and winding decide how fast the propellers turn at full throttle and what current that takes. Motor mass sits at the ends of the arms, where it counts most for inertia.',
  propellers:
    'Diameter and pitch decide how much air is moved and how fast. A larger disc hovers on less power; more pitch lifts the top speed and the current with it.',
  controllers: 'Its resistance turns current into heat, and its rating is what the motors may draw.',
  flightController: 'A few grams and watts; its gyro mounting and its ports are matters of fit.',
  pack: 'Cells in series set the voltage and so the speed of the motors; capacity sets the minutes and most of the mass; resistance sets how far the voltage sags.',
  cameras: 'Mass far forward, watts from the pack, and what is in the picture.',
  videoLink: 'A few grams, watts all flight long, and how far the picture reaches.',
  receiver: 'A gram or two, and how far the radio reaches.',
  antennas: 'A gram or two, and how far radio and picture reach.',
  extras:
    'What else is on board counts by its mass and where it sits; a capacitor takes the peaks off the bus.',
  wiring: 'Thin or long leads lose volts at full throttle and get warm; the plug has a rating of its own.',
  screws: 'Length decides whether they hold, or touch a winding.',
  measured: 'A figure from the scale takes the place of the one added up.',
};

export const CAUSE_WORDS: Readonly<Record<Cause, string>> = {
  layout: 'layout only',
  mass: 'mass only',
  balance: 'balance only',
  frame: 'frame',
  motors: 'motors',
  propellers: 'propellers',
  controllers: 'controllers',
  flightController: 'flight controller',
  pack: 'pack',
  cameras: 'cameras',
  videoLink: 'video link',
  receiver: 'receiver',
  antennas: 'antennas',
  extras: 'everything else on board',
  wiring: 'wiring',
  screws: 'screws',
  measured: 'measured values',
};
