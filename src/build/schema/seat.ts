import { z } from 'zod';
import { id } from './common.ts';
import { plainQuantity } from './fields.ts';

/** A place on the aircraft: x forward, y right, z down from the motors' centre in the arms' plane [m]. */
export const place = z
  .strictObject({
    x: plainQuantity('length', ['-1 m', '1 m'], 'Forward').default(0),
    y: plainQuantity('length', ['-1 m', '1 m'], 'To the right').default(0),
    z: plainQuantity('length', ['-1 m', '1 m'], 'Down').default(0),
  })
  .describe("From the motors' centre, in the mid-plane of the arms: x forward, y right, z down");

/**
 * A seat of the build with its part: `{ part: gull-2207-1850, ... }`, or in short the part's id
 * alone where there is nothing more to say.
 */
export function seat<S extends z.core.$ZodLooseShape>(fields: S) {
  return z
    .preprocess(
      (raw) => (typeof raw === 'string' ? { part: raw } : raw),
      z.strictObject({ part: id, ...fields }),
    )
    .meta({ shape: 'seat' });
}
