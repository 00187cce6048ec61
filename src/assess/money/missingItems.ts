import type { Craft } from '../../build/craft.ts';
import type { Part } from '../../build/schema/part.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { Money } from '../../units/parseMoney.ts';
import { type BoxItem, boxesOf } from './boxes.ts';

/** Something a box lacks and nothing else on the list brings. */
export interface MissingItem {
  readonly item: BoxItem;
  readonly count: number;
  /** The part on the shelf that serves. */
  readonly part?: Part;
  readonly price?: Money;
  readonly why: string;
}

/**
 * What the boxes of the parts on board lack, less what another box or an extra brings. Each item once,
 * as the first part that lacks it tells it. A box that brings some of an item and lacks more of it lacks
 * the more.
 */
export function missingItems(craft: Craft, shelf: Shelf): readonly MissingItem[] {
  const found = new Map<BoxItem, MissingItem>();
  const aboard = boxesOf(craft.parts);
  for (const part of new Set(aboard)) {
    for (const each of part.notInTheBox) {
      if (found.has(each.item) || !needed(each.item, craft) || served(each.item, craft)) continue;
      if (broughtByOthers(each.item, part, aboard)) continue;
      const own = each.part === undefined ? undefined : shelf.parts.get(each.part);
      // The part named may have been taken on board as an extra already.
      if (own !== undefined && craft.parts.extras.some((extra) => extra.part.id === own.id)) continue;
      found.set(each.item, {
        item: each.item,
        count: each.count,
        ...(own === undefined ? {} : { part: own }),
        ...(each.price === undefined ? {} : { price: each.price }),
        why: `not in the box of ${part.name}`,
      });
    }
  }
  return [...found.values()];
}

function broughtByOthers(item: BoxItem, lacking: Part, aboard: readonly Part[]): boolean {
  return aboard.some((part) => part.id !== lacking.id && part.inTheBox.some((each) => each.item === item));
}

/** Items that only some aircraft need; a spare arm is a spare and priced there. */
function needed(item: BoxItem, { parts, cameras }: Craft): boolean {
  switch (item) {
    case 'recording camera mount':
      return cameras.some((camera) => camera.role === 'recording');
    case 'flying camera mount':
    case 'camera cable':
      return cameras.some((camera) => camera.role === 'flying');
    case 'video antenna':
    case 'video antenna mount':
      return parts.videoLink !== undefined;
    case 'receiver antenna':
    case 'receiver antenna mount':
      return parts.receiver !== undefined;
    case 'position receiver mount':
      return parts.extras.some(({ part }) => part.kind === 'positionReceiver');
    case 'spare arm':
      return false;
    case 'frame screws':
    case 'standoffs':
    case 'motor screws':
    case 'stack screws':
    case 'stack rubbers':
    case 'propeller nuts':
    case 'propellers':
    case 'guards':
    case 'strap':
    case 'pack pad':
    case 'capacitor':
    case 'power lead':
    case 'connector':
    case 'charge lead':
    case 'batteries':
    case 'assembly':
      return true;
  }
}

/** Whether something chosen for the build does the job already. */
function served(item: BoxItem, { parts, build, motors }: Craft): boolean {
  const extra = (test: (part: Part) => boolean) => parts.extras.some(({ part }) => test(part));
  const mount = (holds: string) => extra((part) => part.kind === 'mount' && part.holds === holds);
  switch (item) {
    case 'recording camera mount':
      return mount('recording camera');
    case 'flying camera mount':
      return mount('flying camera');
    case 'video antenna mount':
      return mount('video antenna');
    case 'receiver antenna mount':
      return mount('receiver antenna');
    case 'position receiver mount':
      return mount('position receiver');
    case 'video antenna':
      return parts.antennas.some((antenna) => antenna.for === 'video');
    case 'receiver antenna':
      return parts.antennas.some((antenna) => antenna.for === 'receiver');
    case 'strap':
      return extra((part) => part.kind === 'strap');
    case 'capacitor':
      return extra((part) => part.kind === 'capacitor');
    case 'motor screws':
      return extra((part) => part.kind === 'screws' && part.thread === motors[0]?.fit.mountScrew);
    case 'guards':
      return extra((part) => part.kind === 'guardSet');
    case 'connector':
    case 'power lead':
      return build.wiring.connector !== undefined;
    case 'propellers':
      return true;
    case 'frame screws':
    case 'stack screws':
    case 'standoffs':
    case 'stack rubbers':
    case 'propeller nuts':
    case 'spare arm':
    case 'pack pad':
    case 'camera cable':
    case 'charge lead':
    case 'batteries':
    case 'assembly':
      return false;
  }
}
