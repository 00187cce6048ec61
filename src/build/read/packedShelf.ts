import type { Part } from '../schema/part.ts';
import type { Shelf } from '../shelf.ts';

/**
 * A shelf already read, as JSON text: the shipped one is packed when the program is built, since reading
 * its YAML anew takes longer than an assessment. Only `unpackShelf` reads it, and only our own.
 */
export function packShelf(shelf: Shelf): string {
  return JSON.stringify({ parts: [...shelf.parts.values()], raw: [...shelf.raw] });
}

/** The shelf that `packShelf` wrote. Trusts its text: for files of users there is `readShelf`. */
export function unpackShelf(text: string): Shelf {
  const packed: {
    readonly parts: readonly Part[];
    readonly raw: readonly (readonly [string, Readonly<Record<string, unknown>>])[];
  } = JSON.parse(text);
  return {
    parts: new Map(packed.parts.map((part) => [part.id, part])),
    raw: new Map(packed.raw),
    replaced: [],
  };
}
