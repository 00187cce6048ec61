import type { Part } from './schema/part.ts';
import type { PartKind } from './schema/partKinds.ts';

/** All parts known, by id. Made by `readShelf`. */
export interface Shelf {
  readonly parts: ReadonlyMap<string, Part>;
  /** Each part as its file wrote it, for parts based on it. */
  readonly raw: ReadonlyMap<string, Readonly<Record<string, unknown>>>;
  /** Ids that the upper file replaced in the one below. */
  readonly replaced: readonly string[];
}

export const EMPTY_SHELF: Shelf = { parts: new Map(), raw: new Map(), replaced: [] };

/** All parts of one kind, in the order of the files. */
export function partsOf<K extends PartKind>(shelf: Shelf, kind: K): readonly Extract<Part, { kind: K }>[] {
  const found: Extract<Part, { kind: K }>[] = [];
  for (const part of shelf.parts.values()) if (isKind(part, kind)) found.push(part);
  return found;
}

export function isKind<K extends PartKind>(part: Part, kind: K): part is Extract<Part, { kind: K }> {
  return part.kind === kind;
}
