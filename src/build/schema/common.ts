import { z } from 'zod';
import { box, money, quantity, TRUSTS } from './fields.ts';

/** A name that files refer to: small letters, digits and hyphens. */
export const id = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, { error: 'must be small letters, digits and single hyphens' })
  .max(60)
  .describe('Name that other files refer to: small letters, digits, hyphens');

export const words = z.string().min(1).max(200);

export const count = (low: number, high: number) => z.int().min(low).max(high);

/** What a shop may or may not put into the box, by the place it takes on the aircraft or the bench. */
export const BOX_ITEMS = [
  'frame screws',
  'standoffs',
  'motor screws',
  'stack screws',
  'stack rubbers',
  'propeller nuts',
  'propellers',
  'spare arm',
  'flying camera mount',
  'recording camera mount',
  'video antenna',
  'video antenna mount',
  'receiver antenna',
  'receiver antenna mount',
  'position receiver mount',
  'guards',
  'strap',
  'pack pad',
  'capacitor',
  'power lead',
  'camera cable',
  'connector',
  'charge lead',
  'batteries',
  'assembly',
] as const;

const inTheBox = z.strictObject({
  item: z.enum(BOX_ITEMS),
  count: count(1, 100).default(1),
});

const notInTheBox = z.strictObject({
  item: z.enum(BOX_ITEMS),
  count: count(1, 100).default(1),
  part: id.optional().describe('Part on the shelf that serves, with its price and mass'),
  price: money('What one costs when no part is named').optional(),
  note: words.optional(),
});

/** Fields that every part has, whatever its kind. */
export const common = {
  id,
  name: words,
  invented: z.boolean().default(false).describe('True for parts made up for teaching: nobody sells them'),
  basedOn: id.optional().describe('Another part whose fields hold where this one tells none'),
  trust: z
    .enum(TRUSTS)
    .default('maker')
    .describe('How the values of this part are known where a value does not tell its own'),
  source: words.default("maker's sheet").describe('Where the values of this part come from'),
  note: z.string().max(500).optional(),
  price: money('Price of one unit as sold, see soldIn'),
  soldIn: count(1, 100).default(1).describe('Pieces for that price'),
  mass: quantity('mass', ['0.01 g', '5 kg'], 'Mass of one piece with its own leads'),
  size: box('Outer size, x forward, y across, z up').optional(),
  shippingDays: z.number().min(0).max(120).optional().describe('Days until it arrives'),
  inTheBox: z.array(inTheBox).max(30).default([]),
  notInTheBox: z.array(notInTheBox).max(30).default([]),
};

/** The cell counts in series a part is made for. */
export const cells = z
  .strictObject({ min: count(1, 14), max: count(1, 14) })
  .describe('Cells in series it is made for');

export const CHEMISTRIES = ['LiPo', 'LiHV', 'Li-ion'] as const;

/** Supply regulator of a board. */
export const regulator = z.strictObject({
  voltage: quantity('voltage', ['1 V', '30 V'], 'Output'),
  current: quantity('current', ['10 mA', '20 A'], 'Continuous rating'),
});

/** How a propeller is held on a motor. */
export const FIXINGS = ['nut', 'screws', 'press'] as const;
export const SCREWS = ['M1.4', 'M1.6', 'M2', 'M2.5', 'M3', 'M4'] as const;
