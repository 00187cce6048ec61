import { largestPropeller, perPair, placeOf } from './perMotor.ts';
import { fails, fits, inches, mm, mmSize, SLACK } from './say.ts';
import type { FitRule } from './types.ts';

const PROP_GAP = 3e-3;
const OTHER_GAP = 5e-3;
/** Trade sizes round: 5.1 in flies on a frame sold for 5 in; the gaps have the last word. */
const ROUNDING = 1.03;
/** Holes and shafts are made to a tenth [m]. */
const BORE_TOLERANCE = 0.15e-3;

export const propellerRules: readonly FitRule[] = [
  {
    id: 'propeller-too-large',
    title: 'propeller against the frame',
    limit: 'the size the frame is sold for, and 3 %',
    severities: ['stop'],
    look: (context) => {
      const diameter = largestPropeller(context);
      const limit = context.craft.parts.frame.maxPropeller;
      const number = { value: diameter, limit, quantity: 'length' as const };
      return [
        diameter > limit * ROUNDING
          ? fails(
              'stop',
              `Propellers of ${inches(diameter)} on a frame sold for ${inches(limit)}.`,
              `Take ${inches(limit)} propellers or a larger frame.`,
              ['propellers', 'frame'],
              { number },
            )
          : fits(`${inches(diameter)} propellers on a frame for ${inches(limit)}.`, ['propellers', 'frame'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'propeller-to-propeller-gap',
    title: 'gap from propeller to propeller',
    limit: '3 mm; stop when they overlap',
    severities: ['stop', 'risk'],
    look: ({ gaps }) => {
      const nearest = gaps.find((gap) => gap.part === 'propellers');
      if (nearest === undefined) return [];
      const number = { value: nearest.gap, limit: PROP_GAP, quantity: 'length' as const };
      const place = { x: nearest.place[0], y: nearest.place[1] };
      if (nearest.gap >= PROP_GAP - SLACK) {
        return [fits(`${mm(nearest.gap)} between the nearest tips.`, ['propellers'], { number, place })];
      }
      return [
        fails(
          nearest.gap < 0 ? 'stop' : 'risk',
          nearest.gap < 0
            ? `The discs of ${nearest.motor} and ${nearest.to} overlap by ${mm(-nearest.gap)}: the blades hit each other.`
            : `Only ${mm(nearest.gap)} between the tips of ${nearest.motor} and ${nearest.to}; arms bend more than that.`,
          'Longer arms or smaller propellers.',
          ['propellers', 'frame'],
          { number, place },
        ),
      ];
    },
  },
  {
    id: 'propeller-to-body-gap',
    title: 'gap from propeller to everything else',
    limit: '5 mm; stop when they touch',
    severities: ['stop', 'risk'],
    look: ({ gaps, craft }) => {
      // The ring of its own guard is judged by guard-tip-gap.
      const guarded = craft.frame.guards.length > 0;
      const nearest = gaps.find((gap) => gap.part !== 'propellers' && !(guarded && gap.part === 'guards'));
      if (nearest === undefined) return [];
      const number = { value: nearest.gap, limit: OTHER_GAP, quantity: 'length' as const };
      const place = { x: nearest.place[0], y: nearest.place[1] };
      if (nearest.gap >= OTHER_GAP - SLACK) {
        return [
          fits(`${mm(nearest.gap)} to the nearest thing, ${nearest.to}.`, ['propellers'], { number, place }),
        ];
      }
      return [
        fails(
          nearest.gap < 0 ? 'stop' : 'risk',
          nearest.gap < 0
            ? `The ${nearest.motor} propeller strikes ${nearest.to} by ${mm(-nearest.gap)}.`
            : `Only ${mm(nearest.gap)} from the ${nearest.motor} propeller to ${nearest.to}; at least ${mm(OTHER_GAP)} is wanted.`,
          'Move or narrow what is in the way, or take smaller propellers.',
          ['propellers', nearest.part],
          { number, place },
        ),
      ];
    },
  },
  {
    id: 'propeller-bore',
    title: "propeller's hole on the shaft",
    limit: 'equal to 0.15 mm: 5 mm with a nut, 1.5 or 2 mm with screws',
    severities: ['stop', 'risk'],
    look: (context) =>
      perPair(context, (motor, rotor) => {
        const { shaftDiameter } = motor.fit;
        const number = { value: rotor.bore, limit: shaftDiameter, quantity: 'length' as const };
        const guessed = motor.fit.inferred.includes('shaft') || rotor.inferred.includes('bore');
        return Math.abs(rotor.bore - shaftDiameter) > BORE_TOLERANCE
          ? fails(
              rotor.bore < shaftDiameter && !guessed ? 'stop' : 'risk',
              `A ${mmSize(rotor.bore)} hole on a ${mmSize(shaftDiameter)} shaft${guessed ? ', one of them guessed from the size' : ''}.`,
              rotor.bore > shaftDiameter
                ? 'Use the centring ring for that shaft, or another propeller: off-centre it shakes.'
                : 'Take a propeller with the right hole; never drill one out.',
              ['propellers', 'motors'],
              { number, place: placeOf(motor) },
            )
          : fits(
              `${mmSize(rotor.bore)} hole on a ${mmSize(shaftDiameter)} shaft.`,
              ['propellers', 'motors'],
              {
                number,
              },
            );
      }),
  },
  {
    id: 'propeller-fixing',
    title: 'how the propeller is held',
    limit: 'the same on propeller and motor: nut, screws or press fit',
    severities: ['stop', 'risk'],
    look: (context) =>
      perPair(context, (motor, rotor) => {
        const guessed = motor.fit.inferred.includes('fixing') || rotor.inferred.includes('fixing');
        return rotor.fixing === motor.fit.fixing
          ? fits(`Held by ${inWords(rotor.fixing)}, both.`, ['propellers', 'motors'])
          : fails(
              guessed ? 'risk' : 'stop',
              `The propeller is held by ${inWords(rotor.fixing)}, the motor is made for ${inWords(motor.fit.fixing)}.`,
              'Take the propeller made for that shaft.',
              ['propellers', 'motors'],
              { place: placeOf(motor) },
            );
      }),
  },
  {
    id: 'propeller-hands',
    title: 'as many propellers of either hand',
    limit: 'half clockwise, half the other way; one more with a tilting tail',
    severities: ['stop'],
    look: ({ craft }) => {
      const clockwise = craft.motors.filter((motor) => motor.place.spin === 1).length;
      const other = craft.motors.length - clockwise;
      const allowed = craft.motors.some(({ place }) => place.tilts) ? 1 : 0;
      const number = { value: clockwise, limit: craft.motors.length / 2, quantity: 'count' as const };
      return [
        Math.abs(clockwise - other) > allowed
          ? fails(
              'stop',
              `${clockwise} motors turn clockwise and ${other} the other way: it cannot stop turning about itself.`,
              'Let half of the motors turn each way.',
              ['motors'],
              { number },
            )
          : fits(`${clockwise} clockwise and ${other} counterclockwise: order both hands.`, ['propellers'], {
              number,
            }),
      ];
    },
  },
];

const inWords = (fixing: string) => (fixing === 'press' ? 'press fit' : fixing === 'nut' ? 'a nut' : fixing);
