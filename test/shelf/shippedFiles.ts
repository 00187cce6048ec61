import { readdirSync, readFileSync } from 'node:fs';
import { readShelf } from '../../src/build/read/readShelf.ts';
import type { PartKind } from '../../src/build/schema/partKinds.ts';
import { EMPTY_SHELF, partsOf, type Shelf } from '../../src/build/shelf.ts';
import { shippedShelf as packed } from '../build/shippedShelf.ts';

export const shelfFiles = readdirSync('shelf')
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => `shelf/${name}`);

/** Lays shelf files over one another, in the order given; an error names file and line and fails the test. */
export function layShelf(files: readonly string[], under: Shelf = EMPTY_SHELF): Shelf {
  return files.reduce((shelf, file) => {
    const reading = readShelf(readFileSync(file, 'utf8'), file, shelf);
    if (!reading.ok) throw new Error(`${file}: ${JSON.stringify(reading, null, 1)}`);
    return reading.value;
  }, under);
}

export const shippedShelf = packed();

export const shipped = <K extends PartKind>(kind: K) => partsOf(shippedShelf, kind);
