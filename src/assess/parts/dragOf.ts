import { type BodyDrag, shelteredDrag } from '../../airframe/shelteredDrag.ts';
import type { Craft } from '../../build/craft.ts';

/** Drag of everything on board but the propellers, whose drag the rotor model knows. */
export function dragOf(craft: Craft): BodyDrag {
  return shelteredDrag(craft.massItems.filter((item) => item.part !== 'propellers'));
}
