import type { Part } from '../../build/schema/part.ts';
import { factsOfPart } from '../../report/partFacts.ts';
import type { ShelfRow } from './protocol.ts';

/** A part as a picker lists it. */
export function shelfRow(part: Part, own: boolean): ShelfRow {
  const { amount, currency } = part.price;
  return {
    id: part.id,
    kind: part.kind,
    name: part.name,
    says: factsOfPart(part),
    mass: part.mass.value,
    price: amount / part.soldIn,
    currency,
    own,
    ...(part.kind === 'camera' ? { roles: part.roles } : {}),
  };
}
