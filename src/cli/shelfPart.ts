import type { Part } from '../build/schema/part.ts';
import type { PartKind } from '../build/schema/partKinds.ts';
import { isKind, partsOf, type Shelf } from '../build/shelf.ts';
import { nearestName } from '../units/nearestName.ts';
import { BadInput } from './io.ts';

/** A part of one kind by its id, or bad input with the nearest name. */
export function shelfPart<K extends PartKind>(
  shelf: Shelf,
  kind: K,
  id: string,
  option: string,
): Extract<Part, { kind: K }> {
  const part: Part | undefined = shelf.parts.get(id);
  if (part !== undefined && isKind(part, kind)) return part;
  const near = nearestName(
    id,
    partsOf(shelf, kind).map((each) => each.id),
  );
  throw new BadInput(
    `${option}: "${id}" is no ${kind} on the shelf. \`quadwright shelf ${kind}\` lists them.${near ? ` Did you mean "${near}"?` : ''}`,
  );
}
