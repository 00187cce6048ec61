import { z } from 'zod';
import { count } from './common.ts';
import { money } from './fields.ts';

/** A pilot's own crash log. */
export const crashLogFile = z.strictObject({
  flights: count(1, 1000).describe('Flights flown'),
  crashedOn: z
    .array(count(1, 1000))
    .max(1000)
    .default([])
    .describe('Number of each flight that ended in a crash, rising'),
  money: money('Spent on repairs and shipping').optional(),
  broken: z
    .record(z.string().min(1).max(60), count(0, 10000))
    .optional()
    .describe('Pieces broken, by the names of the forecast: `arm: 2`'),
});

/** What a pilot noted, the money in whatever currency. */
export type CrashNotes = z.output<typeof crashLogFile>;
