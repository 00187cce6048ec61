import { readdirSync, readFileSync } from 'node:fs';
import { readShelf } from '../../src/build/read/readShelf.ts';
import { EMPTY_SHELF, type Shelf } from '../../src/build/shelf.ts';

/** The shipped shelf from its YAML files, which takes half a second. */
export function readShippedShelf(): Shelf {
  let shelf = EMPTY_SHELF;
  for (const name of readdirSync('shelf').sort()) {
    if (!name.endsWith('.yaml')) continue;
    const reading = readShelf(readFileSync(`shelf/${name}`, 'utf8'), name, shelf);
    if (!reading.ok) throw new Error(`shelf/${name} does not read: ${reading.errors[0]?.says}`);
    shelf = reading.value;
  }
  return shelf;
}
