import type { CraftParts } from '../../build/craft.ts';
import type { BOX_ITEMS } from '../../build/schema/common.ts';
import type { Part } from '../../build/schema/part.ts';

export type BoxItem = (typeof BOX_ITEMS)[number];

/** Every part on board once for each piece bought alone: what comes in a box with something in it. */
export function boxesOf(parts: CraftParts): readonly Part[] {
  const single = [
    parts.frame,
    parts.flightController,
    parts.controllers,
    parts.pack,
    parts.videoLink,
    parts.receiver,
  ];
  const several = [...parts.motors, ...parts.propellers, ...parts.cameras, ...parts.antennas];
  return [...single, ...several, ...parts.extras.map(({ part }) => part)].filter(
    (part) => part !== undefined,
  );
}

/** How many of an item the boxes of the parts on board bring together. */
export function boxedCount(parts: CraftParts, item: BoxItem): number {
  return boxesOf(parts)
    .flatMap((part) => part.inTheBox)
    .reduce((sum, each) => sum + (each.item === item ? each.count : 0), 0);
}

export const inBox = (parts: CraftParts, item: BoxItem): boolean => boxedCount(parts, item) > 0;

/** Whether a part on board tells that its box lacks the item: then it is on the buying list. */
export function onBuyingList(parts: CraftParts, item: BoxItem): boolean {
  return boxesOf(parts).some((part) => part.notInTheBox.some((each) => each.item === item));
}
