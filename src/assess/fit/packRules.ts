import { massProperties, massShare } from '../../airframe/massProperties.ts';
import { slidesWithPack } from '../../build/resolve/placing.ts';
import { withPackAt } from '../../build/resolve/resolveBuild.ts';
import { inBox, onBuyingList } from '../money/boxes.ts';
import { fails, fits, mm, SLACK } from './say.ts';
import type { FitContext, FitRule } from './types.ts';

const BALANCE = 5e-3;
const LENS_TO_PACK = 5e-3;
/** Of the slide that balances; it hardly moves after two. */
const ROUNDS = 3;

export const packRules: readonly FitRule[] = [
  {
    id: 'pack-length',
    title: 'length of the pack',
    limit: "the frame's longest pack; stop over 1.2 times; note where the frame tells none",
    severities: ['stop', 'risk', 'note'],
    look: ({ craft }) => {
      const { length } = craft.pack.size;
      const limit = craft.frame.pack.maxLength;
      const told = craft.parts.frame.pack.maxLength !== undefined;
      const number = { value: length, limit, quantity: 'length' as const };
      return [
        length > limit + SLACK
          ? fails(
              told ? (length > 1.2 * limit ? 'stop' : 'risk') : 'note',
              `The pack is ${mm(length)} long, its place ${told ? '' : 'by our guess '}${mm(limit)}.`,
              'A shorter pack, or check by hand that it clears propellers and camera.',
              ['pack', 'frame'],
              { number },
            )
          : fits(`${mm(length)} of pack on ${mm(limit)}.`, ['pack'], { number }),
      ];
    },
  },
  {
    id: 'pack-width',
    title: 'width of the pack',
    limit: "the frame's widest pack; stop over 1.4 times; note where the frame tells none",
    severities: ['stop', 'risk', 'note'],
    look: ({ craft }) => {
      const { width } = craft.pack.size;
      const limit = craft.frame.pack.maxWidth;
      const told = craft.parts.frame.pack.maxWidth !== undefined;
      const number = { value: width, limit, quantity: 'length' as const };
      return [
        width > limit + SLACK
          ? fails(
              told ? (width > 1.4 * limit ? 'stop' : 'risk') : 'note',
              `The pack is ${mm(width)} wide on a place of ${told ? '' : 'about '}${mm(limit)}: it rocks.`,
              'A narrower pack, or a wider pad under it.',
              ['pack', 'frame'],
              { number },
            )
          : fits(`${mm(width)} of pack on a place of ${mm(limit)}.`, ['pack'], { number }),
      ];
    },
  },
  {
    id: 'pack-place',
    title: 'pack over its straps',
    limit: "the pack's middle over the plate",
    severities: ['risk'],
    look: ({ craft }) => {
      const x = craft.pack.place[0];
      const [rear, front] = craft.frame.pack.strapRange;
      const number = { value: x, limit: x < 0 ? rear : front, quantity: 'length' as const };
      return [
        x < rear - SLACK || x > front + SLACK
          ? fails(
              'risk',
              `The pack's middle lies ${mm(Math.abs(x))} ${x < 0 ? 'behind' : 'ahead of'} the motors' centre, beyond the plate that the straps go round.`,
              'Balance it with what else can move, or take a lighter camera or pack.',
              ['pack', 'frame'],
              { number, place: { x, y: 0 } },
            )
          : fits(`The pack's middle is over the plate.`, ['pack'], { number }),
      ];
    },
  },
  {
    id: 'pack-side',
    title: 'pack on the side the frame is made for',
    limit: "the frame's side",
    severities: ['note'],
    look: ({ craft }) => {
      const side = sideOf(craft);
      return [
        side === craft.frame.pack.side
          ? fits(`The pack goes ${side}, as the frame is made.`, ['pack', 'frame'])
          : fails(
              'note',
              `The build straps the pack ${side}; the frame is made for it ${craft.frame.pack.side}.`,
              'Check that straps find slots there, and that plugs and screws do not press into it.',
              ['pack', 'frame'],
            ),
      ];
    },
  },
  {
    id: 'balance',
    title: 'balance fore and aft',
    limit: '5 mm from the middle of the motors',
    severities: ['risk'],
    look: ({ craft }) => {
      const [x, y] = craft.massProperties.centreOfGravity;
      const number = { value: Math.abs(x), limit: BALANCE, quantity: 'length' as const };
      const place = { x, y };
      return [
        Math.abs(x) > BALANCE + SLACK
          ? fails(
              'risk',
              `The centre of gravity lies ${mm(Math.abs(x))} ${x > 0 ? 'ahead of' : 'behind'} the motors' centre: one pair works harder and runs hotter.`,
              `Slide the pack ${x > 0 ? 'back' : 'forward'} by about ${mm(Math.abs(slideToMiddle(craft)))}.`,
              ['pack'],
              { number, place },
            )
          : fits(`Balanced fore and aft to ${mm(Math.abs(x))}.`, ['pack'], { number, place }),
      ];
    },
  },
  {
    id: 'balance-sideways',
    title: 'balance from side to side',
    limit: '5 mm from the middle of the motors',
    severities: ['risk'],
    look: ({ craft }) => {
      const [x, y] = craft.massProperties.centreOfGravity;
      const number = { value: Math.abs(y), limit: BALANCE, quantity: 'length' as const };
      const place = { x, y };
      return [
        Math.abs(y) > BALANCE + SLACK
          ? fails(
              'risk',
              `The centre of gravity lies ${mm(Math.abs(y))} to the ${y > 0 ? 'right' : 'left'}: two motors carry the others' share in every hover.`,
              `Move what sits on the ${y > 0 ? 'right' : 'left'} to the middle.`,
              ['frame'],
              { number, place },
            )
          : fits(`Balanced sideways to ${mm(Math.abs(y))}.`, ['frame'], { number, place }),
      ];
    },
  },
  {
    id: 'lens-to-pack',
    title: 'pack behind the lens',
    limit: '5 mm',
    severities: ['risk'],
    look: ({ craft }) => {
      const camera = craft.cameras.find((each) => each.role === 'flying');
      if (camera === undefined) return [];
      const { place, size } = craft.pack;
      const gap = camera.camera.position[0] - (place[0] + size.length / 2);
      const atItsHeight = Math.abs(place[2] - camera.place[2]) < (size.height + camera.size.height) / 2;
      const number = { value: gap, limit: LENS_TO_PACK, quantity: 'length' as const };
      return [
        gap < LENS_TO_PACK - SLACK && (atItsHeight || gap < 0)
          ? fails(
              'risk',
              `The pack's front is ${mm(Math.abs(gap))} ${gap < 0 ? 'ahead of' : 'behind'} the flying camera's lens: in a nose hit the pack lands on it.`,
              'Move the pack back or the camera forward.',
              ['pack', 'cameras'],
              { number, place: { x: camera.place[0], y: camera.place[1] } },
            )
          : fits(`${mm(gap)} from the pack to the lens.`, ['pack', 'cameras'], { number }),
      ];
    },
  },
  {
    id: 'pack-underneath',
    title: 'pack under the frame',
    limit: 'any pack strapped below',
    severities: ['note'],
    look: ({ craft }) =>
      sideOf(craft) === 'below'
        ? [
            fails(
              'note',
              'The pack hangs underneath: it touches the ground first, landing and crashing.',
              'Put a pad under it, land on grass, and look the pack over after every hard landing.',
              ['pack', 'frame'],
            ),
          ]
        : [],
  },
  {
    id: 'pack-pad',
    title: 'pad under the pack',
    limit: 'a pad on carbon plates, in a box or on the list',
    severities: ['note'],
    look: ({ craft }) => {
      if (!craft.frame.material.name.includes('carbon')) return [];
      const boxed = inBox(craft.parts, 'pack pad');
      return [
        boxed || onBuyingList(craft.parts, 'pack pad')
          ? fits(boxed ? 'A pad comes in the box.' : 'A pad is on the buying list.', ['pack'])
          : fails(
              'note',
              'No pad comes with the frame: cut carbon edges and screw heads under a strapped pack cut into its cells.',
              'Lay a rubber pad under it and round the edges; a dented or swollen pack is not flown or charged again.',
              ['pack', 'frame'],
            ),
      ];
    },
  },
];

/** How far to slide the pack, forward positive, until the craft balances under its motors [m]. */
function slideToMiddle(craft: FitContext['craft']): number {
  const { massItems, massProperties: told, build } = craft;
  const share = massShare(massItems, slidesWithPack(craft));
  const middleOf = (items: typeof massItems): number => massProperties(items).centreOfGravity[0];
  // Measured from where a scale may have found the balance.
  const astray = told.centreOfGravity[0] - middleOf(massItems);
  let slide = -told.centreOfGravity[0] / share;
  // A recording camera may have to make room, which shifts the balance in its turn.
  for (let round = 0; round < ROUNDS; round++) {
    slide -= (middleOf(withPackAt(craft, build.pack.offset + slide).massItems) + astray) / share;
  }
  return slide;
}

const sideOf = ({ build, frame }: FitContext['craft']) => build.pack.side ?? frame.pack.side;
