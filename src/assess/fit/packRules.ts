import { inBox } from './powerRules.ts';
import { fails, fits, mm } from './say.ts';
import type { FitRule } from './types.ts';

const BALANCE = 5e-3;
const LENS_TO_PACK = 5e-3;

export const packRules: readonly FitRule[] = [
  {
    id: 'pack-length',
    title: 'length of the pack',
    look: ({ craft }) => {
      const { length } = craft.pack.size;
      const limit = craft.frame.pack.maxLength;
      const number = { value: length, limit, quantity: 'length' as const };
      return [
        length > limit + 1e-6
          ? fails(
              length > 1.2 * limit ? 'stop' : 'risk',
              `The pack is ${mm(length)} long, its place ${mm(limit)}.`,
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
    look: ({ craft }) => {
      const { width } = craft.pack.size;
      const limit = craft.frame.pack.maxWidth;
      const number = { value: width, limit, quantity: 'length' as const };
      return [
        width > limit + 1e-6
          ? fails(
              width > 1.4 * limit ? 'stop' : 'risk',
              `The pack is ${mm(width)} wide on a place of ${mm(limit)}: it rocks.`,
              'A narrower pack, or a wider pad under it.',
              ['pack', 'frame'],
              { number },
            )
          : fits(`${mm(width)} of pack on a place of ${mm(limit)}.`, ['pack'], { number }),
      ];
    },
  },
  {
    id: 'strap-count',
    title: 'straps',
    look: ({ craft }) => {
      const own = craft.parts.extras.filter(({ part }) => part.kind === 'strap');
      const count = own.reduce((sum, { count }) => sum + count, 0);
      const boxed = [craft.parts.frame, craft.parts.pack]
        .flatMap((part) => part.inTheBox)
        .filter((each) => each.item === 'strap')
        .reduce((sum, each) => sum + each.count, 0);
      const diameter = Math.max(...craft.rotors.map((rotor) => rotor.blade.diameter));
      const wanted = diameter >= 4.5 * 0.0254 ? 2 : 1;
      const number = { value: count + boxed, limit: wanted, quantity: 'count' as const };
      return [
        count + boxed < wanted
          ? fails(
              count + boxed === 0 ? 'stop' : 'risk',
              `${count + boxed} strap${count + boxed === 1 ? '' : 's'} for the pack; ${wanted} wanted at this size. A pack that leaves in a crash tears its lead off.`,
              `Add ${wanted - count - boxed} of 20 mm.`,
              ['pack', 'extras'],
              { number },
            )
          : fits(`${count + boxed} strap${count + boxed === 1 ? '' : 's'} for the pack.`, ['pack'], {
              number,
            }),
      ];
    },
  },
  {
    id: 'strap-length',
    title: 'length of the straps',
    look: ({ craft }) =>
      craft.parts.extras.flatMap(({ part }) => {
        if (part.kind !== 'strap') return [];
        const { width, height } = craft.pack.size;
        // Once round the pack and its plate, and a hand's width of hook and loop to hold.
        const wanted = 2 * (width + height) + 0.04;
        const number = { value: part.length, limit: wanted, quantity: 'length' as const };
        return [
          part.length < wanted
            ? fails(
                'risk',
                `A strap of ${mm(part.length)} round a pack that wants ${mm(wanted)}.`,
                'A longer strap.',
                ['extras', 'pack'],
                { number },
              )
            : fits(`A strap of ${mm(part.length)}; ${mm(wanted)} wanted.`, ['extras'], { number }),
        ];
      }),
  },
  {
    id: 'balance',
    title: 'balance about the motors',
    look: ({ craft }) => {
      const [x, y] = craft.massProperties.centreOfGravity;
      const off = Math.hypot(x, y);
      const number = { value: off, limit: BALANCE, quantity: 'length' as const };
      const place = { x, y };
      const way =
        Math.abs(x) > Math.abs(y) ? (x > 0 ? 'forward' : 'behind') : y > 0 ? 'to the right' : 'to the left';
      return [
        off > BALANCE
          ? fails(
              'risk',
              `The centre of gravity lies ${mm(off)} ${way} of the motors' centre: one pair works harder and runs hotter.`,
              `Slide the pack ${x > 0 ? 'back' : 'forward'} until it balances.`,
              ['pack'],
              { number, place },
            )
          : fits(`Balanced to ${mm(off)}.`, ['pack'], { number, place }),
      ];
    },
  },
  {
    id: 'lens-to-pack',
    title: 'pack behind the lens',
    look: ({ craft }) => {
      const camera = craft.cameras.find((each) => each.role === 'flying');
      if (camera === undefined) return [];
      const packFront = craft.pack.place[0] + craft.pack.size.length / 2;
      const lens = camera.camera.position[0];
      const overlapsInHeight =
        Math.abs(craft.pack.place[2] - camera.place[2]) < (craft.pack.size.height + camera.size.height) / 2;
      const gap = lens - packFront;
      const number = { value: gap, limit: LENS_TO_PACK, quantity: 'length' as const };
      return [
        gap < LENS_TO_PACK && (overlapsInHeight || gap < 0)
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
    look: ({ craft }) =>
      craft.frame.pack.side === 'below'
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
    look: ({ craft }) => {
      const carbon = craft.frame.material.name.includes('carbon');
      if (!carbon || inBox(craft.parts, 'pack pad')) return [];
      return [
        fails(
          'note',
          'No pad comes with the frame: cut carbon edges and screw heads under a strapped pack cut into its cells.',
          'Lay a rubber pad under it and round the edges; a dented or swollen pack is not flown or charged again.',
          ['pack', 'frame'],
        ),
      ];
    },
  },
  {
    id: 'pack-wear',
    title: 'age of the pack',
    look: ({ craft }) =>
      craft.build.pack.cycles > 150
        ? [
            fails(
              'risk',
              `${craft.build.pack.cycles} charges behind this pack: less capacity, more sag.`,
              'Measure its resistance; retire it when it swells or sags.',
              ['pack'],
              { number: { value: craft.build.pack.cycles, limit: 150, quantity: 'count' } },
            ),
          ]
        : [],
  },
];
