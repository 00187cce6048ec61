import type { Blow } from '../../../airframe/hits.ts';
import { massProperties } from '../../../airframe/massProperties.ts';
import type { LooseMass } from '../../../airframe/swingingArm.ts';
import type { MassItem } from '../../../airframe/types.ts';
import type { Craft } from '../../../build/craft.ts';

/** A pack is about as soft as this up and down (common practice, no source) [N/m]. */
export const PACK_STIFFNESS = 6e4;
/** What holds a strapped pack along the plates: pad and straps in shear (common practice, no source) [N/m]. */
const STRAP_STIFFNESS = 2e4;
/** A camera in a soft print swings by itself as fast as this [Hz] (common practice, no source). */
const SOFT_PRINT = 50;

/** What the frame carries loosely, and the craft without it: the pack on its straps, a recording camera in a soft print. */
export function looseParts({ massItems, build, parts }: Craft): Blow['loose'] {
  const prints = parts.extras.flatMap(({ part }, index) =>
    part.kind === 'mount' && part.material === 'soft print' && part.holds === 'recording camera'
      ? [`extras[${index}]`]
      : [],
  );
  const cameras = build.cameras.flatMap(({ role }, index) =>
    role === 'recording' && prints.length > 0 ? [`cameras[${index}]`] : [],
  );
  const softly = new Set([...prints, ...cameras]);
  const packed = massItems.filter(({ part }) => part === 'pack');
  const printed = massItems.filter(({ part }) => softly.has(part));
  const held = (items: readonly MassItem[], stiffness: (mass: number) => LooseMass['stiffness']) => {
    if (items.length === 0) return [];
    const { mass, centreOfGravity } = massProperties(items);
    return [{ mass, place: centreOfGravity, stiffness: stiffness(mass) }];
  };
  const all = [
    ...held(packed, () => ({ along: STRAP_STIFFNESS, upright: PACK_STIFFNESS })),
    ...held(printed, (mass) => {
      const print = mass * (2 * Math.PI * SOFT_PRINT) ** 2;
      return { along: print, upright: print };
    }),
  ];
  if (all.length === 0) return undefined;
  const loosely = new Set([...packed, ...printed]);
  return { parts: all, rest: massProperties(massItems.filter((item) => !loosely.has(item))) };
}
