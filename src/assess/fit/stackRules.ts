import type { StackLayer } from '../../build/craft.ts';
import { inBox, onBuyingList } from '../money/boxes.ts';
import { fails, fits, mm, mmList, mmSize, SLACK } from './say.ts';
import type { FitContext, FitRule, FitVerdict } from './types.ts';

const PATTERN_TOLERANCE = 0.3e-3;
const HEADROOM = 3e-3;
const PAD_CLEARANCE = 2e-3;

const seatWords = {
  controllers: 'speed controller',
  flightController: 'flight controller',
  videoLink: 'video link',
} as const satisfies Record<StackLayer['seat'], string>;

export const stackRules: readonly FitRule[] = [
  {
    id: 'stack-pattern',
    title: 'boards on the stack holes',
    limit: "one of the frame's squares, to 0.3 mm",
    severities: ['stop'],
    look: ({ craft }) =>
      craft.stack.flatMap((layer): readonly FitVerdict[] => {
        const { pattern } = layer;
        // A board without holes is taped down; a video link is stacked only on the flight controller's holes.
        if (pattern === undefined || layer.seat === 'videoLink') return [];
        const offered = craft.parts.frame.stackPatterns;
        const what = seatWords[layer.seat];
        return [
          offered.some((each) => Math.abs(each - pattern) < PATTERN_TOLERANCE)
            ? fits(`The ${what} sits on the ${mmSize(pattern)} square.`, [layer.seat, 'frame'])
            : fails(
                'stop',
                `The ${what}'s holes are a ${mmSize(pattern)} square; the frame offers ${mmList(offered)}.`,
                "Take a board with one of the frame's patterns, or an adapter plate if there is headroom.",
                [layer.seat, 'frame'],
                { place: planOf(layer) },
              ),
        ];
      }),
  },
  {
    id: 'stack-one-pattern',
    title: 'boards on the same posts',
    limit: 'one square for all boards of a stack',
    severities: ['risk'],
    look: ({ craft }) => {
      const [lowest, ...others] = craft.stack.filter(({ pattern }) => pattern !== undefined);
      const first = lowest?.pattern;
      if (lowest === undefined || first === undefined || others.length === 0) return [];
      const odd = others.find(({ pattern }) => Math.abs((pattern ?? first) - first) > PATTERN_TOLERANCE);
      return [
        odd === undefined
          ? fits(`All boards of the stack share the ${mmSize(first)} square.`, [lowest.seat])
          : fails(
              'risk',
              `The ${seatWords[lowest.seat]} stands on a ${mmSize(first)} square, the ${seatWords[odd.seat]} on ${mmSize(odd.pattern ?? 0)}: they do not share posts.`,
              'Take both of one pattern, or put an adapter plate between them and count its height.',
              [lowest.seat, odd.seat],
              {
                number: { value: odd.pattern ?? 0, limit: first, quantity: 'length' },
                place: planOf(odd),
              },
            ),
      ];
    },
  },
  {
    id: 'stack-headroom',
    title: 'height of the stack',
    limit: '3 mm over the highest board; stop when it does not go in',
    severities: ['stop', 'risk'],
    look: ({ craft }) => {
      const spare = headroomLeft(craft);
      if (spare === undefined) return [];
      const number = { value: spare, limit: HEADROOM, quantity: 'length' as const };
      if (spare >= HEADROOM - SLACK)
        return [fits(`${mm(spare)} left above the stack.`, ['flightController'], { number })];
      const [x, y] = craft.frame.stack.place;
      return [
        fails(
          spare < 0 ? 'stop' : 'risk',
          spare < 0
            ? `The stack is ${mm(-spare)} taller than the room between the plates.`
            : `Only ${mm(spare)} left above the stack; wires and rubber want ${mm(HEADROOM)}.`,
          'Taller standoffs, flatter boards, or the video link elsewhere.',
          ['flightController', 'frame'],
          { number, place: { x, y } },
        ),
      ];
    },
  },
  {
    id: 'pads-over-carbon',
    title: 'live pads over carbon',
    limit: '2 mm of air',
    severities: ['risk', 'note'],
    look: ({ craft }) => {
      if (!craft.frame.material.name.includes('carbon')) return [];
      const verdicts: FitVerdict[] = [];
      if (craft.parts.controllers?.form === 'single') {
        verdicts.push(
          fails(
            'note',
            'Single controllers lie on the arms, and carbon conducts: a pad that touches it burns the controller.',
            'Keep each in heat-shrink tube, and tape the arm under it.',
            ['controllers', 'frame'],
            { number: { value: 0, limit: PAD_CLEARANCE, quantity: 'length' } },
          ),
        );
      }
      const bottom = Math.max(...craft.stack.map((layer) => layer.place[2] + layer.size.height / 2));
      const above = headroomLeft(craft);
      if (!Number.isFinite(bottom) || above === undefined) return verdicts;
      const below = craft.frame.stack.faceZ - bottom;
      const clearance = Math.min(below, above);
      const number = { value: clearance, limit: PAD_CLEARANCE, quantity: 'length' as const };
      verdicts.push(
        clearance < PAD_CLEARANCE - SLACK
          ? fails(
              'risk',
              `The stack's pads stand ${mm(Math.max(clearance, 0))} from the carbon ${above < below ? 'over' : 'under'} them, which conducts: a short burns boards and pack.`,
              `Keep ${mm(PAD_CLEARANCE)} with spacers, and put insulating tape on the plate.`,
              ['controllers', 'frame'],
              { number },
            )
          : fits(
              `${mm(clearance)} of air between pads and carbon, with spacers of ${mmSize(below)} under the lowest board: put those in.`,
              ['controllers'],
              { number },
            ),
      );
      return verdicts;
    },
  },
  {
    id: 'gyro-mounting',
    title: 'gyro on soft mounts',
    limit: 'rubber under the flight controller',
    severities: ['risk', 'note'],
    look: ({ craft }) => {
      const mounting = craft.build.flightController.gyroMounting ?? craft.parts.flightController.gyroMounting;
      if (mounting === 'hard') {
        return [
          fails(
            'risk',
            'The flight controller is screwed down hard: the gyro feels every nicked blade.',
            'Put rubber grommets under its corners.',
            ['flightController'],
          ),
        ];
      }
      const rubbers = inBox(craft.parts, 'stack rubbers') || onBuyingList(craft.parts, 'stack rubbers');
      return [
        rubbers
          ? fits('The flight controller stands on rubber.', ['flightController'])
          : fails(
              'note',
              'No box brings rubber grommets for the flight controller, and none are on the buying list.',
              'Order a bag of eight for its corners.',
              ['flightController'],
            ),
      ];
    },
  },
  {
    id: 'usb-reach',
    title: 'USB within reach',
    limit: 'a socket that opens to the side',
    severities: ['note'],
    look: ({ craft }) => {
      const side = craft.parts.flightController.usbSide;
      if (side === undefined) return []; // not told; the eye sees it on the finished craft
      return [
        side === 'front' || side === 'rear'
          ? fails(
              'note',
              `The USB socket looks to the ${side}, where standoffs and camera or antenna usually stand.`,
              'Turn the board a quarter and tell the firmware, or use a short angled lead.',
              ['flightController'],
            )
          : fits(`USB opens to the ${side}.`, ['flightController']),
      ];
    },
  },
];

/** Between the highest board and the plate over it [m]; negative when it does not go in. */
function headroomLeft({ stack, frame }: FitContext['craft']): number | undefined {
  const top = Math.min(...stack.map((layer) => layer.place[2] - layer.size.height / 2));
  return Number.isFinite(top) ? frame.stack.headroom - (frame.stack.faceZ - top) : undefined;
}

const planOf = ({ place }: StackLayer) => ({ x: place[0], y: place[1] });
