import { boxedCount } from '../money/boxes.ts';
import { armThickness, perMotor, placeOf } from './perMotor.ts';
import { fails, fits, mmList, mmSize, SLACK } from './say.ts';
import type { FitContext, FitRule } from './types.ts';

/** Hole circles are cut to a few tenths [m]. */
const CIRCLE_TOLERANCE = 0.4e-3;
/** Thread in a motor whose depth no listing tells: more is not to be trusted [m]. */
const UNTOLD_DEPTH = 3e-3;
const SCREWS_A_MOTOR = 4;

/** Least thread that holds a motor through crashes [m]. */
const leastThread = (screw: string) => (screw === 'M3' ? 2e-3 : 1.5e-3);

export const screwRules: readonly FitRule[] = [
  {
    id: 'motor-hole-circle',
    title: "motor holes against the arm's",
    limit: 'a shared circle, to 0.4 mm',
    severities: ['stop'],
    look: (context) =>
      perMotor(context, (motor) => {
        const frameCircles = context.craft.parts.frame.motorCircles;
        const own = motor.fit.mountCircles;
        const match = own.find((circle) =>
          frameCircles.some((other) => Math.abs(other - circle) < CIRCLE_TOLERANCE),
        );
        return match === undefined
          ? fails(
              'stop',
              `The motor's holes stand on ${mmList(own)}, the arm's on ${mmList(frameCircles)}: it cannot be screwed on.`,
              `Take a motor with a ${mmList(frameCircles)} circle, or a frame drilled for ${mmList(own)}.`,
              ['motors', 'frame'],
              { place: placeOf(motor) },
            )
          : fits(`Motor and arm share the ${mmSize(match)} circle.`, ['motors', 'frame']);
      }),
  },
  {
    id: 'motor-screw-into-winding',
    title: 'motor screws against the winding',
    limit: "the motor's told thread depth, 3 mm where it is not told",
    severities: ['stop', 'risk'],
    look: (context) =>
      perMotor(context, (motor) => {
        const length = context.craft.build.screws.motorLength;
        if (length === undefined) return undefined; // motor-screw-short says so
        const thickness = armThickness(context, motor);
        const reach = length - thickness;
        const guessed = motor.fit.inferred.includes('threadDepth');
        const depth = guessed ? Math.min(motor.fit.threadDepth, UNTOLD_DEPTH) : motor.fit.threadDepth;
        const number = { value: reach, limit: depth, quantity: 'length' as const };
        if (reach <= depth + SLACK) {
          return fits(
            `Screws reach ${mmSize(reach)} into the motor, of ${mmSize(depth)} before the winding.`,
            ['motors'],
            {
              number,
            },
          );
        }
        const longest = Math.floor((thickness + Math.min(depth, UNTOLD_DEPTH)) * 1000 + SLACK) / 1000;
        return fails(
          // Half a millimetre over a depth that is our own guess may still be clear.
          guessed && reach < depth + 0.5e-3 ? 'risk' : 'stop',
          `A ${mmSize(length)} screw through a ${mmSize(thickness)} arm reaches ${mmSize(reach)} into the motor; ${guessed ? 'motors of this size usually take' : 'it takes'} ${mmSize(depth)} before the winding.`,
          `Use ${mmSize(longest)} screws: arm plus 2 to 3 mm at most.`,
          ['motors', 'frame'],
          { number, place: placeOf(motor) },
        );
      }),
  },
  {
    id: 'motor-screw-short',
    title: 'motor screws hold',
    limit: '2 mm of thread for M3, 1.5 mm below; stop under 1 mm',
    severities: ['stop', 'risk', 'note'],
    look: (context) =>
      perMotor(context, (motor) => {
        const length = context.craft.build.screws.motorLength;
        const thickness = armThickness(context, motor);
        if (length === undefined) {
          return fails(
            'note',
            'The length of the motor screws is not told, so whether they hold or reach the winding is not checked.',
            `Give screws.motorLength: arm (${mmSize(thickness)}) plus 2 to 3 mm.`,
            ['motors', 'frame'],
          );
        }
        const reach = length - thickness;
        const least = leastThread(motor.fit.mountScrew);
        const number = { value: reach, limit: least, quantity: 'length' as const };
        return reach < least - SLACK
          ? fails(
              reach < 1e-3 - SLACK ? 'stop' : 'risk',
              `Motor screws hold by ${mmSize(Math.max(reach, 0))} of thread only.`,
              `Use screws of ${mmSize(thickness + least)} or a little longer.`,
              ['motors', 'frame'],
              { number, place: placeOf(motor) },
            )
          : fits(`Screws hold by ${mmSize(reach)} of thread.`, ['motors'], { number });
      }),
  },
  {
    id: 'motor-screw-thread',
    title: "motor's thread for its circle",
    limit: 'M2 or less under a 14 mm circle, M3 from 16 mm; as the arm is drilled',
    severities: ['risk', 'note'],
    look: (context) =>
      perMotor(context, (motor) => {
        const { mountCircles, mountScrew } = motor.fit;
        const largest = Math.max(...mountCircles);
        const usual = largest < 10e-3 ? ['M1.4', 'M1.6', 'M2'] : largest < 14e-3 ? ['M2'] : ['M3'];
        const frameScrew = context.craft.parts.frame.motorScrew;
        if (frameScrew !== undefined && frameScrew !== mountScrew) {
          return fails(
            'risk',
            `The arm's holes are for ${frameScrew}, the motor is threaded ${mountScrew}.`,
            size(frameScrew) > size(mountScrew)
              ? 'Use washers under the heads.'
              : 'Drill the arm, in a wet dust-free way, or take another motor.',
            ['motors', 'frame'],
          );
        }
        return usual.includes(mountScrew)
          ? fits(`${mountScrew} on a ${mmSize(largest)} circle.`, ['motors'])
          : fails(
              'note',
              `${mountScrew} on a ${mmSize(largest)} circle is unusual: 9 and 12 mm circles go with M2, 16 and 19 with M3.`,
              'Check the listing before ordering screws.',
              ['motors'],
            );
      }),
  },
  {
    id: 'motor-screws-at-hand',
    title: 'motor screws of the right length at hand',
    limit: 'four a motor, of the thread and length the build tells',
    severities: ['risk', 'note'],
    look: (context) => screwsAtHand(context),
  },
];

/** Bought screws have a length to compare; a box tells only a count, so its length is asked for. */
function screwsAtHand({ craft, shelf }: FitContext) {
  const wanted = SCREWS_A_MOTOR * craft.motors.length;
  const length = craft.build.screws.motorLength;
  const thread = craft.motors[0]?.fit.mountScrew;
  if (length === undefined || thread === undefined) return []; // motor-screw-short says so
  const own = craft.parts.extras.flatMap(({ part, count }) =>
    part.kind === 'screws' && part.thread === thread ? [{ part, count }] : [],
  );
  const right = own.filter(({ part }) => Math.abs(part.length - length) < 0.1e-3);
  const name = `${thread} x ${mmSize(length)}`;
  if (right.length > 0) return [fits(`${name} are on the list.`, ['extras'])];
  const wrong = own[0];
  if (wrong !== undefined) {
    return [
      fails(
        'risk',
        `The build tells ${name} motor screws; on the list are ${thread} x ${mmSize(wrong.part.length)}.`,
        `Order ${wanted} of ${name}, and lay the others aside: a few turns too many and the motor is lost.`,
        ['extras', 'motors'],
        { number: { value: wrong.part.length, limit: length, quantity: 'length' } },
      ),
    ];
  }
  const boxed = boxedCount(craft.parts, 'motor screws');
  if (boxed >= wanted) {
    // No box tells the length of its screws: whoever gave the build's length has measured them.
    return [fits(`${boxed} motor screws come in the boxes; the build tells ${mmSize(length)}.`, ['motors'])];
  }
  const listed = craft.parts.frame.notInTheBox.find((each) => each.item === 'motor screws')?.part;
  const serves = listed === undefined ? undefined : shelf.parts.get(listed);
  if (serves?.kind === 'screws' && Math.abs(serves.length - length) > 0.1e-3) {
    return [
      fails(
        'risk',
        `The build tells ${mmSize(length)} motor screws; the frame goes with ${serves.name}, ${mmSize(serves.length)} long.`,
        `Order ${wanted} of ${thread} x ${mmSize(serves.length)} unless the arms are not the frame's own.`,
        ['motors', 'frame'],
        { number: { value: length, limit: serves.length, quantity: 'length' } },
      ),
    ];
  }
  if (serves !== undefined) return [fits(`${serves.name} are on the buying list.`, ['frame'])];
  return [
    fails(
      'note',
      `${boxed} of ${wanted} motor screws come in the boxes, and none are on the list.`,
      `Order ${wanted} of ${name}.`,
      ['motors', 'extras'],
      { number: { value: boxed, limit: wanted, quantity: 'count' } },
    ),
  ];
}

/** `M2.5` to 2.5 [mm]. */
const size = (screw: string) => Number(screw.slice(1));
