import { cameraTiltWindow, isNovice } from '../windows.ts';
import { inBox } from './powerRules.ts';
import { degrees, fails, fits, mm, mmList } from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

export const cameraRules: readonly FitRule[] = [
  {
    id: 'camera-width',
    title: 'camera between the cheeks',
    look: (context) =>
      eachCamera(context, 'flying', (part) => {
        const offered = context.craft.parts.frame.cameraWidths;
        if (offered.length === 0) return undefined;
        const number = { value: part.width, limit: Math.max(...offered), quantity: 'length' as const };
        if (offered.some((width) => Math.abs(width - part.width) < 0.6e-3)) {
          return fits(`A ${mm(part.width)} camera between ${mmList(offered)} cheeks.`, ['cameras', 'frame'], {
            number,
          });
        }
        return part.width < Math.max(...offered)
          ? fails(
              'note',
              `A ${mm(part.width)} camera between cheeks for ${mmList(offered)}: it wants packing pieces.`,
              'Print or buy the packing for that width.',
              ['cameras', 'frame'],
              { number },
            )
          : fails(
              'stop',
              `A ${mm(part.width)} camera does not go between cheeks for ${mmList(offered)}.`,
              'A narrower camera, or another frame.',
              ['cameras', 'frame'],
              { number },
            );
      }),
  },
  {
    id: 'camera-tilt-range',
    title: 'tilt the frame allows',
    look: (context) =>
      eachCamera(context, 'flying', (_, index) => {
        const range = context.craft.parts.frame.cameraTilt;
        const tilt = context.craft.build.cameras[index]?.tilt;
        if (range === undefined || tilt === undefined) return undefined;
        const number = { value: tilt, limit: range.max, quantity: 'angle' as const };
        return tilt > range.max + 1e-6 || tilt < range.min - 1e-6
          ? fails(
              'risk',
              `${degrees(tilt)} of tilt; the frame allows ${degrees(range.min)} to ${degrees(range.max)}.`,
              'Set it inside the range or print another cheek.',
              ['cameras', 'frame'],
              { number },
            )
          : fits(`${degrees(tilt)} of tilt, inside the frame's range.`, ['cameras'], { number });
      }),
  },
  {
    id: 'camera-tilt-window',
    title: 'tilt for the pilot',
    look: (context) =>
      eachCamera(context, 'flying', (_, index) => {
        const tilt = context.craft.build.cameras[index]?.tilt;
        if (tilt === undefined) return undefined;
        const novice = isNovice(context.brief.pilot);
        const window = cameraTiltWindow(context.brief.purpose, novice);
        const number = {
          value: tilt,
          limit: tilt > window.high ? window.high : window.low,
          quantity: 'angle' as const,
        };
        const who = novice ? 'a novice' : context.brief.purpose;
        return tilt > window.high + 1e-6 || tilt < window.low - 1e-6
          ? fails(
              'note',
              `Camera tilted ${degrees(tilt)}; ${who} flies ${degrees(window.low)} to ${degrees(window.high)}. Tilt sets the speed the craft wants to fly at.`,
              `Set it to ${degrees(tilt > window.high ? window.high : window.low)} to begin with.`,
              ['cameras'],
              { number },
            )
          : fits(`Tilt of ${degrees(tilt)} suits ${who}.`, ['cameras'], { number });
      }),
  },
  {
    id: 'recording-camera-mount',
    title: 'mount of the recording camera',
    look: (context) =>
      eachCamera(context, 'recording', (part) => {
        if (!part.needsMount) return undefined;
        const held =
          hasMount(context, 'recording camera') || inBox(context.craft.parts, 'recording camera mount');
        return held
          ? fits('The recording camera has its mount.', ['cameras'])
          : fails(
              'risk',
              `${part.name} has no mount: the frame's box holds none and none is on the list.`,
              'Add a printed mount for it, in soft print.',
              ['cameras', 'extras'],
            );
      }),
  },
  {
    id: 'flying-camera-mount',
    title: 'mount of the flying camera',
    look: (context) =>
      eachCamera(context, 'flying', (part) => {
        const cheeks = context.craft.parts.frame.cameraWidths.length > 0;
        if (cheeks && !part.needsMount) return undefined;
        const held = hasMount(context, 'flying camera') || inBox(context.craft.parts, 'flying camera mount');
        return held
          ? fits('The flying camera has its mount.', ['cameras'])
          : fails(
              'stop',
              `Nothing holds ${part.name}: the frame has no cheeks and no mount is on the list.`,
              'Add a printed mount.',
              ['cameras', 'extras'],
            );
      }),
  },
  {
    id: 'video-system',
    title: 'camera and video link',
    look: (context) =>
      eachCamera(context, 'flying', (part) => {
        const link = context.craft.parts.videoLink;
        if (link === undefined) {
          return part.system === undefined
            ? undefined
            : fails(
                'stop',
                'There is a flying camera and no video link: nothing reaches the goggles.',
                'Add the link of its system.',
                ['videoLink'],
              );
        }
        if (part.system === undefined) return undefined;
        return part.system === link.system
          ? fits(`Camera and link speak ${link.system}.`, ['cameras', 'videoLink'])
          : fails(
              'stop',
              `The camera is for ${part.system}, the link for ${link.system}: no picture.`,
              'Take both of one system.',
              ['cameras', 'videoLink'],
            );
      }),
  },
  {
    id: 'must-carry',
    title: 'what the brief wants on board',
    look: ({ craft, brief }) => {
      if (brief.mustCarry === undefined) return [];
      const aboard = [...craft.parts.cameras, ...craft.parts.extras.map(({ part }) => part)].some(
        (part) => part.id === brief.mustCarry,
      );
      return [
        aboard
          ? fits('What the brief wants is on board.', ['cameras'])
          : fails(
              'stop',
              `The brief wants ${brief.mustCarry} on board; it is not.`,
              'Add it, with its mount.',
              ['cameras'],
            ),
      ];
    },
  },
];

function eachCamera(
  { craft }: FitContext,
  role: 'flying' | 'recording',
  judge: (part: FitContext['craft']['parts']['cameras'][number], index: number) => FitVerdict | undefined,
): readonly FitVerdict[] {
  return craft.cameras.flatMap((camera, index) => {
    const part = craft.parts.cameras[index];
    if (camera.role !== role || part === undefined) return [];
    const verdict = judge(part, index);
    return verdict === undefined ? [] : [{ ...verdict, place: { x: camera.place[0], y: camera.place[1] } }];
  });
}

export function hasMount({ craft }: FitContext, holds: string): boolean {
  return craft.parts.extras.some(({ part }) => part.kind === 'mount' && part.holds === holds);
}
