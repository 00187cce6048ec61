import { boxedCount } from '../money/boxes.ts';
import { largestPropeller } from './perMotor.ts';
import { countOf, fails, fits, mm, mmSize, SLACK } from './say.ts';
import type { FitContext, FitRule } from './types.ts';

/** From here on two straps of 20 mm [m]. */
const FIVE_INCH = 4.5 * 0.0254;
const WIDE_STRAP = 20e-3;
/** Hook and loop that has to lie on itself to hold [m]. */
const OVERLAP = 0.04;

export const strapRules: readonly FitRule[] = [
  {
    id: 'strap-count',
    title: 'straps',
    limit: 'two from 4.5 in propellers on, one below; stop without any',
    severities: ['stop', 'risk'],
    look: (context) => {
      const own = strapsOf(context).reduce((sum, { count }) => sum + count, 0);
      const count = own + boxedCount(context.craft.parts, 'strap');
      const large = largestPropeller(context) >= FIVE_INCH;
      const wanted = large ? 2 : 1;
      const number = { value: count, limit: wanted, quantity: 'count' as const };
      return [
        count < wanted
          ? fails(
              count === 0 ? 'stop' : 'risk',
              `${countOf(count, 'strap')} for the pack; ${wanted} wanted at this size. A pack that leaves in a crash tears its lead off.`,
              `Add ${countOf(wanted - count, 'strap')}${large ? ' of 20 mm' : ''}.`,
              ['pack', 'extras'],
              { number },
            )
          : fits(`${countOf(count, 'strap')} for the pack.`, ['pack'], { number }),
      ];
    },
  },
  {
    id: 'strap-width',
    title: 'width of the straps',
    limit: '20 mm from 4.5 in propellers on',
    severities: ['note'],
    // A strap in a box tells no width, and smaller craft take what fits their slots.
    look: (context) =>
      largestPropeller(context) < FIVE_INCH
        ? []
        : strapsOf(context).map(({ part }) => {
            const number = { value: part.width, limit: WIDE_STRAP, quantity: 'length' as const };
            return part.width < WIDE_STRAP - SLACK
              ? fails(
                  'note',
                  `A strap of ${mmSize(part.width)} on a pack of ${mm(context.craft.pack.size.length)}; ${mmSize(WIDE_STRAP)} is the custom at this size.`,
                  `Take straps of ${mmSize(WIDE_STRAP)}.`,
                  ['extras', 'pack'],
                  { number },
                )
              : fits(`A strap of ${mmSize(part.width)}.`, ['extras'], { number });
          }),
  },
  {
    id: 'strap-length',
    title: 'length of the straps',
    limit: 'once round the pack and 40 mm to hold',
    severities: ['risk'],
    look: (context) =>
      strapsOf(context).map(({ part }) => {
        const { width, height } = context.craft.pack.size;
        const wanted = 2 * (width + height) + OVERLAP;
        const number = { value: part.length, limit: wanted, quantity: 'length' as const };
        return part.length < wanted - SLACK
          ? fails(
              'risk',
              `A strap of ${mmSize(part.length)} round a pack that wants ${mmSize(wanted)}.`,
              `Take straps of ${mmSize(Math.ceil(wanted * 100) / 100)} or longer.`,
              ['extras', 'pack'],
              { number },
            )
          : fits(`A strap of ${mmSize(part.length)}; ${mmSize(wanted)} wanted.`, ['extras'], { number });
      }),
  },
];

const strapsOf = ({ craft }: FitContext) =>
  craft.parts.extras.flatMap(({ part, count }) => (part.kind === 'strap' ? [{ part, count }] : []));
