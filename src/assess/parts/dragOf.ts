import { dragAreas } from '../../airframe/dragAreas.ts';
import { addDrag, shelteredDrag } from '../../airframe/shelteredDrag.ts';
import type { DragArea, DragAreas, MassItem } from '../../airframe/types.ts';
import type { Craft } from '../../build/craft.ts';
import { type BarDrag, bodyDragOf } from '../../flight/forward/bodyDrag.ts';
import type { Vector3 } from '../../numerics/vector3.ts';

/** Drag of everything on board but the propellers, whose drag the rotor model knows. */
export interface CraftDrag {
  /** Of plates, pack, cameras, motors. */
  readonly bluff: DragAreas;
  /** Arms, whose drag goes with the wind across them. */
  readonly bars: readonly BarDrag[];
  /** All of it face-on, as if the arms were bluff too. */
  readonly areas: DragAreas;
  /** Where it acts [m]. */
  readonly centre: Vector3;
}

export function dragOf(craft: Craft): CraftDrag {
  const items = craft.massItems
    .filter((item) => item.part !== 'propellers')
    .map((item) => asBar(item, craft));
  const { areas, each, centre } = shelteredDrag(items);
  const bluff: DragAreas[] = [];
  const bars: BarDrag[] = [];
  items.forEach((item, i) => {
    const open = each[i];
    if (open === undefined) return;
    const own = bodyDragOf([item]).bars;
    if (own.length === 0) bluff.push(open);
    const alone = dragAreas(item);
    for (const { axes, areas: of } of own) {
      // Seen along its length and its flank from ahead, its face from above.
      const [ahead, above] = [keptShare(open.front, alone.front), keptShare(open.top, alone.top)];
      bars.push({ axes, areas: [of[0] * ahead, of[1] * ahead, of[2] * above] });
    }
  });
  return { bluff: addDrag(bluff), bars, areas, centre };
}

/** An arm's outline as the tapered bar it nearly is; everything else as it stands. */
function asBar(item: MassItem, craft: Craft): MassItem {
  const arm = item.part === 'frame' ? craft.frame.arms.find(({ name }) => name === item.name) : undefined;
  const [root, tip] = [arm?.outline[0], arm?.outline.at(-1)];
  if (arm === undefined || root === undefined || tip === undefined) return item;
  const length = Math.hypot(arm.tip[0] - arm.root[0], arm.tip[1] - arm.root[1]);
  return {
    ...item,
    primitive: {
      kind: 'taperedBar',
      length,
      rootWidth: root.width,
      tipWidth: tip.width,
      thickness: arm.thickness,
    },
  };
}

const keptShare = (open: DragArea, alone: DragArea): number =>
  alone.area * alone.coefficient > 0 ? (open.area * open.coefficient) / (alone.area * alone.coefficient) : 1;
