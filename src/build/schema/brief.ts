import { z } from 'zod';
import { PURPOSES, REGIONS } from './briefWords.ts';
import { count, id, words } from './common.ts';
import { money, plainQuantity, quantity } from './fields.ts';

export type Purpose = (typeof PURPOSES)[number];

export type Region = (typeof REGIONS)[number];

export { PURPOSES, REGIONS };
export const BRIEF_FORMAT = 'quadwright-brief-1';

const currency = z.string().regex(/^[A-Z]{3}$/, { error: 'must be a three-letter currency code' });

/** What an aircraft is for: the pilot, the site, the limits, the money. */
export const brief = z.strictObject({
  format: z.literal(BRIEF_FORMAT),
  name: words,
  note: z.string().max(1000).optional(),
  purpose: z.enum(PURPOSES),
  pilot: z
    .strictObject({
      flightsFlown: count(0, 100000).default(0).describe('Flights flown with aircraft of this kind'),
      simulatorHours: z.number().min(0).max(100000).default(0),
    })
    .default({ flightsFlown: 0, simulatorHours: 0 }),
  budget: money('What may be spent before the first flight').optional(),
  massLimit: plainQuantity('mass', ['5 g', '25 kg'], 'Heaviest all-up, pack included').optional(),
  site: z
    .strictObject({
      height: plainQuantity('length', ['-400 m', '5000 m'], 'Above sea level').default(0),
      temperature: plainQuantity('temperature', ['-30 degC', '50 degC'], 'Outside air').default(288.15),
      humidity: plainQuantity('share', ['0 %', '100 %'], 'Relative').default(0.6),
      wind: quantity('speed', ['0 m/s', '30 m/s'], 'Mean wind flown in, at 10 m').default({ value: 4 }),
    })
    .default({ height: 0, temperature: 288.15, humidity: 0.6, wind: { value: 4 } }),
  region: z.enum(REGIONS).default('other'),
  currency: currency.default('GBP'),
  exchange: z
    .record(currency, money('Worth of one unit, in the currency of the brief'))
    .default({})
    .describe('For prices in other currencies: `EUR: "0.86 GBP"`'),
  exchangeAsOf: z.iso
    .date({ error: 'must be a day such as 2026-11-20' })
    .optional()
    .describe('Day of the rates in `exchange`'),
  flyingStyle: z
    .enum(['cruising', 'easy', 'freestyle', 'race'])
    .optional()
    .describe('How it will be flown; taken from the purpose when absent'),
  mustCarry: id.optional().describe('Part that has to be on board, such as a recording camera'),
  alreadyOwns: z
    .array(
      z
        .string()
        .regex(/^[a-zA-Z0-9-]+$/, { error: 'must be a kind of part or the id of a part' })
        .max(60),
    )
    .max(60)
    .default([])
    .describe('Kinds of part or ids of parts already at hand, not to be bought'),
  flightsPlanned: count(1, 1000).default(30),
  farthest: plainQuantity('length', ['10 m', '50 km'], 'How far out it is flown').optional(),
  shippingPerOrder: money('What one order costs to send; one order for each time to arrive').optional(),
  packsWanted: count(1, 30).default(4).describe('Packs to buy for a session'),
  reserve: plainQuantity('share', ['0 %', '60 %'], 'Charge to land with').default(0.2),
});

export type Brief = z.output<typeof brief>;
