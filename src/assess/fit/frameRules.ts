import { layoutOf } from '../../build/resolve/layoutOf.ts';
import { armThicknessLow } from '../windows.ts';
import { armThickness, largestPropeller } from './perMotor.ts';
import { fails, fits, inches, mm, mmSize, SLACK } from './say.ts';
import type { FitContext, FitRule } from './types.ts';

/** Room a blade wants over the ground the aircraft stands on [m]. */
const BLADE_OVER_GROUND = 5e-3;

/** Drawn on a sheet rather than measured on a plate: less than this is no other frame [m]. */
const SAME_PLACE = 1e-3;

export const frameRules: readonly FitRule[] = [
  {
    id: 'frame-as-sold',
    title: 'motors where the frame has them',
    limit: 'a motor over 1 mm from its place on the frame that is bought',
    severities: ['note'],
    look: ({ craft }) => {
      const { motors } = layoutOf(craft.parts.frame.layout, 'above');
      const moves = craft.layout.motors.map(({ position: [x, y] }, i) => {
        const [ownX, ownY] = motors[i]?.position ?? [x, y];
        return Math.hypot(x - ownX, y - ownY);
      });
      const farthest = Math.max(...moves);
      const alike = motors.length === craft.layout.motors.length;
      if (alike && farthest <= SAME_PLACE) return [];
      return [
        fails(
          'note',
          alike
            ? `Motors stand up to ${mm(farthest)} from where this frame has them: it is no longer the frame that is sold, and its price and mass are still the sold one's.`
            : 'The layout has another number of motors than this frame: its price and mass are still those of the frame that is sold.',
          'Look for a frame with these distances, have arms cut, or put the motors back.',
          ['frame', 'motors'],
        ),
      ];
    },
  },
  {
    id: 'arm-thickness',
    title: 'arm thickness for the propeller',
    limit: '2 in 2 mm, 3 in 3 mm, 5 in 5 mm, 7 in 6 mm, between in proportion; risk from 1 mm short',
    severities: ['risk', 'note'],
    look: (context) => {
      const { craft } = context;
      // Moulded and guarded frames carry the load in their rings.
      if (craft.frame.guards.length > 0) return [];
      const thickness = Math.min(...craft.motors.map((motor) => armThickness(context, motor)));
      const diameter = largestPropeller(context);
      const least = armThicknessLow(diameter);
      const number = { value: thickness, limit: least, quantity: 'length' as const };
      return [
        thickness < least - SLACK
          ? fails(
              thickness <= least - 1e-3 + SLACK ? 'risk' : 'note',
              `Arms of ${mmSize(thickness)} under ${inches(diameter)} propellers; the trade cuts ${mmSize(least)} or more.`,
              'Take thicker arms, or keep spares and expect more shake.',
              ['frame'],
              { number },
            )
          : fits(`Arms of ${mmSize(thickness)} for ${inches(diameter)} propellers.`, ['frame'], { number }),
      ];
    },
  },
  {
    id: 'servo-tail',
    title: 'tail servo',
    limit: 'any tilting tail motor',
    severities: ['note'],
    look: ({ craft }) =>
      craft.motors.some(({ place }) => place.tilts)
        ? [
            fails(
              'note',
              'Three motors yaw by tilting the tail motor with a servo: a part that wears and is on no list here.',
              'Choose a metal-geared servo, add its price and mass, and keep one in the box.',
              ['frame', 'motors'],
            ),
          ]
        : [],
  },
  {
    id: 'more-motors-no-safety',
    title: 'more motors taken for safety',
    limit: 'more than four motors',
    severities: ['note'],
    source: 'Du, Quan et al. 2015 (controllability of degraded multirotors)',
    look: ({ craft }) => {
      const count = craft.motors.length;
      if (count <= 4) return [];
      return [
        fails(
          'note',
          `${count} motors are no safety by themselves: a flat six with alternating spin cannot hold full hover control with one out, and common controllers do not share its work out anew.`,
          'Count on a landing, not on flying home; see what is left after a motor is lost on the flight sheet.',
          ['motors', 'flightController'],
          { number: { value: count, limit: 4, quantity: 'count' } },
        ),
      ];
    },
  },
  {
    id: 'ground-clearance',
    title: 'what touches the ground first',
    limit: 'blades 5 mm over whatever it stands on; no lens lowest',
    severities: ['risk'],
    look: (context) => groundClearance(context),
  },
  {
    id: 'spare-arm',
    title: 'a spare arm',
    limit: 'one in the box or for sale',
    severities: ['note'],
    look: ({ craft }) => {
      const { frame } = craft.parts;
      const boxed = frame.inTheBox.some((each) => each.item === 'spare arm');
      const sold = frame.arms.sparePrice !== undefined;
      const piece = frame.arms.construction === 'one-piece plate' ? 'plate' : 'arm';
      return [
        boxed || sold
          ? fits(boxed ? 'A spare arm comes in the box.' : `A spare ${piece} is on the buying list.`, [
              'frame',
            ])
          : fails(
              'note',
              `No price is told for a spare ${piece}, and none is in the box: the first hard hit ends the season.`,
              `Ask whether a spare ${piece} is sold before buying the frame, and give arms.sparePrice.`,
              ['frame'],
            ),
      ];
    },
  },
];

/** Standing on the ground, z down: the lowest solid is what it stands on. There are no legs in a build file. */
function groundClearance({ craft }: FitContext) {
  const plates = craft.frame.plates.map(({ z, thickness }) => z + thickness / 2);
  const guards = craft.frame.guards.map(({ z, height }) => z + height / 2);
  const pack = craft.pack.place[2] + craft.pack.size.height / 2;
  const body = Math.max(...plates, ...guards, pack);
  const lens = craft.cameras
    .map(({ place, size }) => ({ bottom: place[2] + size.height / 2, place }))
    .find(({ bottom }) => bottom > body - SLACK);
  if (lens !== undefined) {
    return [
      fails(
        'risk',
        `A camera hangs ${mm(lens.bottom - body)} below everything else: it takes every landing on its lens.`,
        'Move it up, or give the frame feet that stand lower.',
        ['cameras', 'frame'],
        {
          number: { value: body - lens.bottom, limit: 0, quantity: 'length' },
          place: { x: lens.place[0], y: lens.place[1] },
        },
      ),
    ];
  }
  const discs = craft.motors.map((motor) => ({
    name: motor.place.name,
    place: { x: motor.place.position[0], y: motor.place.position[1] },
    bottom: motor.discPlace[2] + (craft.rotors[motor.rotor]?.hubThickness ?? 0) / 2,
  }));
  const lowest = discs.reduce((a, b) => (b.bottom > a.bottom ? b : a), discs[0] ?? NO_DISC);
  const clearance = body - lowest.bottom;
  const number = { value: clearance, limit: BLADE_OVER_GROUND, quantity: 'length' as const };
  return [
    clearance < BLADE_OVER_GROUND - SLACK
      ? fails(
          'risk',
          `The ${lowest.name} propeller turns ${mm(Math.abs(clearance))} ${clearance < 0 ? 'below' : 'above'} what the aircraft would stand on.`,
          'Start and land from a stand, or fit legs and count their mass; the build file knows none.',
          ['propellers', 'frame'],
          { number, place: lowest.place },
        )
      : fits(`Blades turn ${mm(clearance)} above what it stands on.`, ['propellers'], { number }),
  ];
}

const NO_DISC = { name: '', place: { x: 0, y: 0 }, bottom: Number.NEGATIVE_INFINITY };
