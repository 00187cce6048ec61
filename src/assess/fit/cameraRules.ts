import { inBox, onBuyingList } from '../money/boxes.ts';
import { cameraTiltWindow, isNovice } from '../windows.ts';
import { eachCamera, mountsFor } from './mounts.ts';
import { celsius, degrees, fails, fits, mmList, mmSize, SLACK } from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

/** Cheeks and printed mounts give this much [m]. */
const WIDTH_TOLERANCE = 0.6e-3;
/** Where thermoplastic rubber goes limp [K]. */
const SOFT_PRINT_LIMP = 333.15;

export const cameraRules: readonly FitRule[] = [
  {
    id: 'camera-width',
    title: 'camera between the cheeks',
    limit: "one of the frame's widths (14, 19, 20 mm), to 0.6 mm",
    severities: ['stop', 'note'],
    look: (context) =>
      eachCamera(context, 'flying', (part) => {
        const offered = context.craft.parts.frame.cameraWidths;
        if (offered.length === 0) return undefined; // no cheeks: flying-camera-mount
        const widest = Math.max(...offered);
        const number = { value: part.width, limit: widest, quantity: 'length' as const };
        const packing = mountsFor(context, 'flying camera').some((mount) => agrees(mount.width, part.width));
        if (offered.some((width) => agrees(width, part.width)) || packing) {
          return fits(
            `A ${mmSize(part.width)} camera between ${mmList(offered)} cheeks.`,
            ['cameras', 'frame'],
            {
              number,
            },
          );
        }
        return part.width < widest
          ? fails(
              'note',
              `A ${mmSize(part.width)} camera between cheeks for ${mmList(offered)}: it wants packing pieces.`,
              'Print or buy the packing for that width.',
              ['cameras', 'frame'],
              { number },
            )
          : fails(
              'stop',
              `A ${mmSize(part.width)} camera does not go between cheeks for ${mmList(offered)}.`,
              'A narrower camera, or another frame.',
              ['cameras', 'frame'],
              { number },
            );
      }),
  },
  {
    id: 'camera-tilt-range',
    title: 'tilt the frame allows',
    limit: "the frame's own range",
    severities: ['risk'],
    look: (context) =>
      eachCamera(context, 'flying', (_, index) => {
        const range = context.craft.parts.frame.cameraTilt;
        const tilt = context.craft.build.cameras[index]?.tilt;
        if (range === undefined || tilt === undefined) return undefined; // the frame tells no range
        const limit = tilt > range.max ? range.max : range.min;
        const number = { value: tilt, limit, quantity: 'angle' as const };
        return tilt > range.max + SLACK || tilt < range.min - SLACK
          ? fails(
              'risk',
              `The camera is tilted ${degrees(tilt)}; the frame allows ${degrees(range.min)} to ${degrees(range.max)}.`,
              'Set it inside the range or print another cheek.',
              ['cameras', 'frame'],
              { number },
            )
          : fits(`A tilt of ${degrees(tilt)}, inside the frame's range.`, ['cameras'], {
              number: { ...number, limit: range.max },
            });
      }),
  },
  {
    id: 'camera-tilt-window',
    title: 'tilt for the pilot',
    limit: 'novice 10 to 20 degrees, freestyle 20 to 30, race 35 to 50, cruising 10 to 25',
    severities: ['note'],
    look: (context) =>
      eachCamera(context, 'flying', (_, index) => {
        const tilt = context.craft.build.cameras[index]?.tilt;
        if (tilt === undefined) return undefined;
        const novice = isNovice(context.brief.pilot);
        const window = cameraTiltWindow(context.brief.purpose, novice);
        const outside = tilt > window.high + SLACK || tilt < window.low - SLACK;
        const limit = tilt < window.low ? window.low : window.high;
        const number = { value: tilt, limit, quantity: 'angle' as const };
        const who = novice ? 'a novice' : context.brief.purpose;
        return outside
          ? fails(
              'note',
              `Camera tilted ${degrees(tilt)}; for ${who} it is ${degrees(window.low)} to ${degrees(window.high)}. Tilt sets the speed the craft wants to fly at.`,
              `Set it to ${degrees(limit)} to begin with.`,
              ['cameras'],
              { number },
            )
          : fits(`Tilt of ${degrees(tilt)} suits ${who}.`, ['cameras'], { number });
      }),
  },
  {
    id: 'flying-camera-mount',
    title: 'mount of the flying camera',
    limit: 'cheeks, or a mount in a box or on board',
    severities: ['stop'],
    look: (context) =>
      eachCamera(context, 'flying', (part) => {
        const cheeks = context.craft.parts.frame.cameraWidths.length > 0;
        if (cheeks && !part.needsMount) return undefined;
        const { parts } = context.craft;
        const held = mountsFor(context, 'flying camera').length > 0 || inBox(parts, 'flying camera mount');
        return held
          ? fits('The flying camera has its mount.', ['cameras'])
          : fails(
              'stop',
              `Nothing holds ${part.name}: ${cheeks ? 'it does not go between cheeks' : 'the frame has no cheeks'} and no mount is on the list.`,
              'Add a printed mount.',
              ['cameras', 'extras'],
            );
      }),
  },
  {
    id: 'recording-camera-mount',
    title: 'mount of the recording camera',
    limit: 'a mount of its width on board, or one in a box',
    severities: ['risk'],
    look: (context) =>
      eachCamera(context, 'recording', (part) => {
        if (!part.needsMount) return undefined;
        return recordingMount(context, part.width, part.name);
      }),
  },
  {
    id: 'recording-camera-soft',
    title: 'print that holds the recording camera',
    limit: 'soft print',
    severities: ['note'],
    // A mount from a box does not tell what it is printed in.
    look: (context) =>
      mountsFor(context, 'recording camera').map((mount) =>
        mount.material === 'soft print'
          ? fits('The recording camera stands on soft print.', ['extras'])
          : fails(
              'note',
              `${mount.name} is printed hard: the picture gets every shake of the frame.`,
              'Take it in soft print, or look at the picture before filming anything that matters.',
              ['extras', 'cameras'],
            ),
      ),
  },
  {
    id: 'soft-print-heat',
    title: 'soft print under hot motors',
    limit: 'motor cases under 60 degC',
    severities: ['risk'],
    look: (context) => {
      const [guard] = mountsFor(context, 'arm guard');
      const value = context.figures.hoverCaseTemperature;
      if (guard === undefined || guard.material !== 'soft print' || value === undefined) return [];
      const number = { value, limit: SOFT_PRINT_LIMP, quantity: 'temperature' as const };
      return [
        value > SOFT_PRINT_LIMP
          ? fails(
              'risk',
              `${guard.name} sit under motors of ${celsius(value)} in hover; soft print goes limp from ${celsius(SOFT_PRINT_LIMP)}.`,
              'Leave a gap under the motor base, or use hard print there.',
              ['extras', 'motors'],
              { number },
            )
          : fits(`Motors of ${celsius(value)} over soft print.`, ['extras'], { number }),
      ];
    },
  },
  {
    id: 'camera-cable',
    title: 'cable of the flying camera',
    limit: 'one in a box or on the list',
    severities: ['note'],
    look: (context) =>
      eachCamera(context, 'flying', (part) => {
        const { parts } = context.craft;
        const boxed = inBox(parts, 'camera cable');
        return boxed || onBuyingList(parts, 'camera cable')
          ? fits(boxed ? 'A camera cable comes in a box.' : 'A camera cable is on the buying list.', [
              'cameras',
            ])
          : fails(
              'note',
              `No box tells of a cable for ${part.name}.`,
              'Ask the shop, and order one with the right plugs: they are not alike.',
              ['cameras', 'videoLink'],
            );
      }),
  },
];

function recordingMount(context: FitContext, width: number, name: string): FitVerdict {
  const own = mountsFor(context, 'recording camera');
  const right = own.find((mount) => mount.width === undefined || agrees(mount.width, width));
  if (right !== undefined) return fits(`${right.name} holds the recording camera.`, ['cameras']);
  const wrong = own[0];
  if (wrong?.width !== undefined) {
    return fails(
      'risk',
      `${wrong.name} is made for a camera ${mmSize(wrong.width)} wide; ${name} is ${mmSize(width)}.`,
      'Take the mount made for that camera.',
      ['cameras', 'extras'],
      { number: { value: wrong.width, limit: width, quantity: 'length' } },
    );
  }
  // A mount in a frame's box is made for a width that no box tells.
  return inBox(context.craft.parts, 'recording camera mount')
    ? fits(`A mount comes with the frame; see that it is ${mmSize(width)} wide.`, ['cameras', 'frame'])
    : fails(
        'risk',
        `${name} has no mount: no box holds one and none is on board.`,
        `Add a printed mount ${mmSize(width)} wide, in soft print.`,
        ['cameras', 'extras'],
      );
}

const agrees = (width: number | undefined, wanted: number) =>
  width !== undefined && Math.abs(width - wanted) < WIDTH_TOLERANCE;
