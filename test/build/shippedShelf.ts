import { readdirSync, readFileSync } from 'node:fs';
import { readShelf } from '../../src/build/read/readShelf.ts';
import { EMPTY_SHELF, type Shelf } from '../../src/build/shelf.ts';

let shipped: Shelf | undefined;

/** The shipped shelf, read once for all tests; apart from the command line, whose style sheet only the bundler reads. */
export function shippedShelf(): Shelf {
  if (shipped !== undefined) return shipped;
  let shelf = EMPTY_SHELF;
  for (const name of readdirSync('shelf').sort()) {
    if (!name.endsWith('.yaml')) continue;
    const reading = readShelf(readFileSync(`shelf/${name}`, 'utf8'), name, shelf);
    if (!reading.ok) throw new Error(`shelf/${name} does not read`);
    shelf = reading.value;
  }
  shipped = shelf;
  return shelf;
}
