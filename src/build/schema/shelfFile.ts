import { z } from 'zod';
import { words } from './common.ts';
import { part } from './part.ts';

export const SHELF_FORMAT = 'quadwright-shelf-1';

/** A file of parts. Each part is checked alone, so that every error finds its line. */
export const shelfFile = z.strictObject({
  format: z.literal(SHELF_FORMAT),
  name: words.optional(),
  note: z.string().max(1000).optional(),
  parts: z.array(part).max(2000),
});
