import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Part } from '../../build/schema/part.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { CostGroup, CostLine } from '../../knocks/types.ts';
import type { Money } from '../../units/parseMoney.ts';
import { kitLines } from './kitLines.ts';
import { missingItems } from './missingItems.ts';
import { inBriefCurrency } from './price.ts';

/** The whole kit to first flight, line by line, and what could not be priced. */
export interface CostList {
  readonly lines: readonly CostLine[];
  /** Ids of lines that the brief says are already at hand. */
  readonly owned: ReadonlySet<string>;
  /** Things with no price or no exchange rate, in words. */
  readonly unpriced: readonly string[];
}

/** Adds a line for pieces of a part, rounded up to what the shop sells. */
export type AddPart = (group: CostGroup, part: Part, pieces: number, why: string) => void;
export type AddPrice = (
  group: CostGroup,
  id: string,
  what: string,
  count: number,
  price: Money | undefined,
  why: string,
) => void;

/** Propeller sets and arms a newcomer should have in the box (common practice, no source). */
const SPARE_PROPELLER_SETS = 5;

/**
 * Everything that must be bought before the first flight: the aircraft, what its boxes lack, the kit
 * round it, the spares. Shared items are counted once.
 */
export function costLines(craft: Craft, brief: Brief, shelf: Shelf): CostList {
  const lines: CostLine[] = [];
  const owned = new Set<string>();
  const unpriced: string[] = [];
  const has = new Set(brief.alreadyOwns);

  const addPrice: AddPrice = (group, id, what, count, price, why) => {
    const unitPrice = price === undefined ? undefined : inBriefCurrency(price, brief);
    if (unitPrice === undefined) {
      const rate = price === undefined ? 'no price' : `no rate from ${price.currency} to ${brief.currency}`;
      unpriced.push(`${what} (${rate})`);
      return;
    }
    lines.push({ id, what, group, count, unitPrice, why });
  };
  const addPart: AddPart = (group, part, pieces, why) => {
    const count = Math.ceil(pieces / part.soldIn);
    const id = `${group}: ${part.id}`;
    const what = part.soldIn > 1 ? `${part.name} (${part.soldIn} in a bag)` : part.name;
    addPrice(group, id, what, count, part.price, why);
    if (has.has(part.id) || has.has(part.kind)) owned.add(id);
  };

  aircraftLines(craft, addPart);
  for (const missing of missingItems(craft, shelf)) {
    if (missing.part !== undefined) addPart('missing from the box', missing.part, missing.count, missing.why);
    else
      addPrice(
        'missing from the box',
        `missing: ${missing.item}`,
        missing.item,
        missing.count,
        missing.price,
        missing.why,
      );
  }
  spareLines(craft, addPart, addPrice);
  kitLines(craft, brief, shelf, addPart, (what) => unpriced.push(what));
  return { lines, owned, unpriced };
}

function aircraftLines(craft: Craft, addPart: AddPart): void {
  const { parts } = craft;
  addPart('aircraft', parts.frame, 1, 'the frame');
  for (const [part, count] of counted(parts.motors)) addPart('aircraft', part, count, 'one for each place');
  for (const [part, count] of counted(parts.propellers)) {
    addPart('aircraft', part, count, 'the first set');
  }
  if (parts.controllers !== undefined) {
    const count = parts.controllers.form === 'single' ? parts.motors.length : 1;
    addPart('aircraft', parts.controllers, count, 'drives the motors');
  }
  addPart('aircraft', parts.flightController, 1, 'keeps it level');
  addPart('aircraft', parts.pack, 1, 'the first pack');
  for (const [part, count] of counted(parts.cameras)) addPart('aircraft', part, count, 'the picture');
  for (const part of [parts.videoLink, parts.receiver, parts.connector]) {
    if (part !== undefined) addPart('aircraft', part, 1, 'on board');
  }
  for (const [part, count] of counted(parts.antennas)) addPart('aircraft', part, count, 'on board');
  const lacking = new Set(craft.parts.frame.notInTheBox.flatMap((each) => each.part ?? []));
  for (const { part, count } of parts.extras) {
    const asked = lacking.has(part.id);
    addPart(
      asked ? 'missing from the box' : 'aircraft',
      part,
      count,
      asked ? "the frame's box has none" : 'on board',
    );
  }
}

function spareLines(craft: Craft, addPart: AddPart, addPrice: AddPrice): void {
  const { frame, propellers } = craft.parts;
  for (const [part, count] of counted(propellers)) {
    addPart(
      'spares',
      part,
      SPARE_PROPELLER_SETS * count,
      `${SPARE_PROPELLER_SETS} spare sets: beginners use them up`,
    );
  }
  if (frame.inTheBox.some((each) => each.item === 'spare arm')) return;
  const onePiece = frame.arms.construction === 'one-piece plate';
  addPrice(
    'spares',
    `spare arm: ${frame.id}`,
    onePiece ? `${frame.name} bottom plate` : `${frame.name} arm`,
    1,
    frame.arms.sparePrice,
    onePiece ? 'any broken arm takes the whole plate' : 'the first arm breaks when the shop is shut',
  );
}

/** Different parts with how often each occurs. */
export function counted<P extends Part>(parts: readonly P[]): ReadonlyMap<P, number> {
  const byId = new Map<string, P>();
  const counts = new Map<P, number>();
  for (const part of parts) {
    const first = byId.get(part.id) ?? part;
    byId.set(part.id, first);
    counts.set(first, (counts.get(first) ?? 0) + 1);
  }
  return counts;
}
