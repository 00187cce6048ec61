import { inject } from 'vitest';
import { unpackShelf } from '../../src/build/read/packedShelf.ts';
import type { Shelf } from '../../src/build/shelf.ts';
import { readShippedShelf } from './readShippedShelf.ts';

let shipped: Shelf | undefined;

/** The shipped shelf, once for a file of tests: what `test/packShelf.ts` has read, or anew for a script outside a run. */
export function shippedShelf(): Shelf {
  shipped ??= process.env.VITEST === undefined ? readShippedShelf() : unpackShelf(inject('packedShelf'));
  return shipped;
}
