import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Part } from '../../build/schema/part.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { CostLine } from '../../knocks/types.ts';
import type { AddPart, AddPrice } from './addLine.ts';
import { kitLines } from './kitLines.ts';
import { missingItems } from './missingItems.ts';
import { ordersOf } from './orders.ts';
import { inBriefCurrency } from './price.ts';

/** The whole kit to first flight, line by line, and what could not be priced. */
export interface CostList {
  readonly lines: readonly CostLine[];
  /** Ids of lines that the brief says are already at hand. */
  readonly owned: ReadonlySet<string>;
  /** Things with no price or no exchange rate, in words. */
  readonly unpriced: readonly string[];
  /** Currencies of prices that were changed into the brief's. */
  readonly exchanged: readonly string[];
}

/** Propeller sets and arms a newcomer should have in the box (common practice, no source). */
const SPARE_PROPELLER_SETS = 5;
/** Of one board with four bridges on it. */
const MOTORS_A_BOARD = 4;

/**
 * Everything that must be bought before the first flight: the aircraft, what its boxes lack, the kit
 * round it, the spares, and sending it. Shared items are counted once, and what is over in a bag that is
 * bought already comes before the next bag.
 */
export function costLines(craft: Craft, brief: Brief, shelf: Shelf): CostList {
  const lines = new Map<string, CostLine>();
  const owned = new Set<string>();
  const unpriced: string[] = [];
  const exchanged = new Set<string>();
  const bought: Part[] = [];
  const has = new Set(brief.alreadyOwns);
  const leftOver = new Map<string, number>();

  const addPrice: AddPrice = (group, id, what, count, price, why) => {
    const unitPrice = price === undefined ? undefined : inBriefCurrency(price, brief);
    if (unitPrice === undefined) {
      const rate = price === undefined ? 'no price' : `no rate from ${price.currency} to ${brief.currency}`;
      unpriced.push(`${what} (${rate})`);
      return;
    }
    if (price !== undefined && price.currency !== brief.currency) exchanged.add(price.currency);
    const known = lines.get(id);
    lines.set(id, { id, what, group, count: count + (known?.count ?? 0), unitPrice, why: known?.why ?? why });
  };
  const addPart: AddPart = (group, part, pieces, why) => {
    const over = leftOver.get(part.id) ?? 0;
    const count = Math.max(0, Math.ceil((pieces - over) / part.soldIn));
    leftOver.set(part.id, over + count * part.soldIn - pieces);
    if (count === 0) return;
    const id = `${group}: ${part.id}`;
    const what = part.soldIn > 1 ? `${part.name} (${part.soldIn} in a bag)` : part.name;
    addPrice(group, id, what, count, part.price, why);
    if (has.has(part.id) || has.has(part.kind)) owned.add(id);
    else bought.push(part);
  };

  aircraftLines(craft, addPart);
  for (const missing of missingItems(craft, shelf)) {
    const { item, part, count, price, why } = missing;
    if (part !== undefined) addPart('missing from the box', part, count, why);
    else addPrice('missing from the box', `missing: ${item}`, item, count, price, why);
  }
  spareLines(craft, addPart, addPrice);
  kitLines(craft, brief, shelf, { addPart, addPrice, lacks: (what) => unpriced.push(what) });
  const orders = ordersOf(bought);
  if (brief.shippingPerOrder !== undefined && orders > 0) {
    const why = 'one order for each time to arrive';
    addPrice('shipping', 'shipping', 'orders sent', orders, brief.shippingPerOrder, why);
  }
  return { lines: [...lines.values()], owned, unpriced, exchanged: [...exchanged].sort() };
}

function aircraftLines(craft: Craft, addPart: AddPart): void {
  const { parts } = craft;
  addPart('aircraft', parts.frame, 1, 'the frame');
  for (const [part, count] of counted(parts.motors)) addPart('aircraft', part, count, 'one for each place');
  for (const [part, count] of counted(parts.propellers)) {
    addPart('aircraft', part, count, 'the first set');
  }
  if (parts.controllers !== undefined) {
    const motors = parts.motors.length;
    const count = parts.controllers.form === 'single' ? motors : Math.ceil(motors / MOTORS_A_BOARD);
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
  const extras = parts.extras.flatMap(({ part, count }) => Array.from({ length: count }, () => part));
  for (const [part, count] of counted(extras)) {
    const asked = lacking.has(part.id);
    const why = asked ? "the frame's box has none" : 'on board';
    addPart(asked ? 'missing from the box' : 'aircraft', part, count, why);
  }
}

function spareLines(craft: Craft, addPart: AddPart, addPrice: AddPrice): void {
  const { frame, propellers } = craft.parts;
  for (const [part, count] of counted(propellers)) {
    const why = `${SPARE_PROPELLER_SETS} spare sets: beginners use them up`;
    addPart('spares', part, SPARE_PROPELLER_SETS * count, why);
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
function counted<P extends Part>(parts: readonly P[]): ReadonlyMap<P, number> {
  const byId = new Map<string, P>();
  const counts = new Map<P, number>();
  for (const part of parts) {
    const first = byId.get(part.id) ?? part;
    byId.set(part.id, first);
    counts.set(first, (counts.get(first) ?? 0) + 1);
  }
  return counts;
}
