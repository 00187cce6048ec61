import { fails, fits, inches, mm } from './say.ts';
import type { FitRule } from './types.ts';

const PROP_GAP = 3e-3;
const OTHER_GAP = 5e-3;

export const propellerRules: readonly FitRule[] = [
  {
    id: 'propeller-too-large',
    title: 'propeller against the frame',
    look: ({ craft }) => {
      const diameter = Math.max(...craft.rotors.map((rotor) => rotor.blade.diameter));
      const limit = craft.parts.frame.maxPropeller;
      const number = { value: diameter, limit, quantity: 'length' as const };
      // Trade sizes round: 5.1 in flies on a frame sold for 5 in; the gaps have the last word.
      return [
        diameter > limit * 1.03
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
    look: ({ gaps }) => {
      const nearest = gaps.find((gap) => gap.part === 'propellers');
      if (nearest === undefined) return [];
      const number = { value: nearest.gap, limit: PROP_GAP, quantity: 'length' as const };
      const place = { x: nearest.place[0], y: nearest.place[1] };
      if (nearest.gap >= PROP_GAP) {
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
    look: ({ gaps, craft }) => {
      const guarded = craft.frame.guards.length > 0;
      const nearest = gaps.find((gap) => gap.part !== 'propellers' && !(guarded && gap.part === 'guards'));
      if (nearest === undefined) return [];
      const number = { value: nearest.gap, limit: OTHER_GAP, quantity: 'length' as const };
      const place = { x: nearest.place[0], y: nearest.place[1] };
      if (nearest.gap >= OTHER_GAP) {
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
    id: 'guard-tip-gap',
    title: 'gap inside the guards',
    look: ({ gaps, craft }) => {
      const ring = gaps.find((gap) => gap.part === 'guards');
      const rotor = craft.rotors[0];
      if (ring === undefined || rotor === undefined) return [];
      const radius = rotor.blade.diameter / 2;
      const share = ring.gap / radius;
      const number = { value: ring.gap, limit: 0.02 * radius, quantity: 'length' as const };
      if (ring.gap < 1e-3) {
        return [
          fails(
            'stop',
            `Only ${mm(Math.max(ring.gap, 0))} between blade and guard: they touch in the first hard turn.`,
            'Smaller propellers, or rings of larger diameter.',
            ['propellers', 'frame'],
            { number },
          ),
        ];
      }
      return [
        share > 0.02
          ? fails(
              'note',
              `The guard stands ${(share * 100).toFixed(1)} % of the radius off the tips: it protects, and adds no thrust.`,
              'Only a gap of 1 to 2 % with a rounded lip gives thrust back.',
              ['frame'],
              { number },
            )
          : fits(`Guard gap ${mm(ring.gap)}, ${(share * 100).toFixed(1)} % of the radius.`, ['frame'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'propeller-bore',
    title: "propeller's hole on the shaft",
    look: ({ craft }) => {
      const motor = craft.motors[0];
      const rotor = motor === undefined ? undefined : craft.rotors[motor.rotor];
      if (motor === undefined || rotor === undefined) return [];
      const { shaftDiameter } = motor.fit;
      const number = { value: rotor.bore, limit: shaftDiameter, quantity: 'length' as const };
      return [
        Math.abs(rotor.bore - shaftDiameter) > 0.15e-3
          ? fails(
              rotor.bore < shaftDiameter ? 'stop' : 'risk',
              `A ${mm(rotor.bore)} hole on a ${mm(shaftDiameter)} shaft.`,
              rotor.bore > shaftDiameter
                ? 'Use the centring ring for that shaft, or another propeller: off-centre it shakes.'
                : 'Take a propeller with the right hole; never drill one out.',
              ['propellers', 'motors'],
              { number },
            )
          : fits(`${mm(rotor.bore)} hole on a ${mm(shaftDiameter)} shaft.`, ['propellers', 'motors'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'propeller-fixing',
    title: 'how the propeller is held',
    look: ({ craft }) => {
      const motor = craft.motors[0];
      const rotor = motor === undefined ? undefined : craft.rotors[motor.rotor];
      if (motor === undefined || rotor === undefined) return [];
      const inferred = motor.fit.inferred.includes('fixing') || rotor.inferred.includes('fixing');
      return [
        rotor.fixing === motor.fit.fixing
          ? fits(`Held by ${rotor.fixing}, both.`, ['propellers', 'motors'])
          : fails(
              inferred ? 'risk' : 'stop',
              `The propeller is held by ${rotor.fixing}, the motor is made for ${motor.fit.fixing}.`,
              'Take the propeller made for that shaft.',
              ['propellers', 'motors'],
            ),
      ];
    },
  },
  {
    id: 'propeller-hands',
    title: 'as many propellers of either hand',
    look: ({ craft }) => {
      const clockwise = craft.motors.filter((motor) => motor.place.spin === 1).length;
      const other = craft.motors.length - clockwise;
      const uneven = Math.abs(clockwise - other) > (craft.layout.kind === 'tri' ? 1 : 0);
      return [
        uneven
          ? fails(
              'stop',
              `${clockwise} motors turn clockwise and ${other} the other way: it cannot stop turning about itself.`,
              'Let half of the motors turn each way.',
              ['motors'],
              { number: { value: clockwise, limit: craft.motors.length / 2, quantity: 'count' } },
            )
          : fits(`${clockwise} clockwise and ${other} counterclockwise: order both hands.`, ['propellers']),
      ];
    },
  },
];
