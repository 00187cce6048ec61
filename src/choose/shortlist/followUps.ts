import { sizeOf } from '../../build/infer/sizes.ts';
import type { Build } from '../../build/schema/build.ts';
import type { Part, PartOf } from '../../build/schema/part.ts';
import { partsOf, type Shelf } from '../../build/shelf.ts';
import { chemistries } from '../../drive/chemistry.ts';
import type { Choice } from './types.ts';

/** Rating of a capacitor over a full pack, and what a strap lies on itself [m] (common practice, no source). */
const CAPACITOR_MARGIN = 1.25;
const STRAP_OVERLAP = 0.04;

type Extra = Build['extras'][number];

/** Mounts by the item that a frame's box may hold. */
const MOUNTS = [
  ['recording camera', 'recording camera mount'],
  ['flying camera', 'flying camera mount'],
  ['video antenna', 'video antenna mount'],
  ['receiver antenna', 'receiver antenna mount'],
  ['position receiver', 'position receiver mount'],
] as const;

/** The connector whose plug the pack has: the template's when it fits, else the first on the shelf. */
export function plugFor(template: Build, packId: string, shelf: Shelf): string | undefined {
  const own = template.wiring.connector;
  const pack = shelf.parts.get(packId);
  if (own === undefined || pack?.kind !== 'pack') return own;
  const part = shelf.parts.get(own);
  if (part?.kind === 'connector' && part.plug === pack.connector) return own;
  return partsOf(shelf, 'connector').find(({ plug }) => plug === pack.connector)?.id ?? own;
}

/**
 * The template's extras, made to fit: straps long enough and a capacitor rated for the pack, the cheapest on
 * the shelf where the template's own will not do; mounts that the chosen frame's box brings left off, and the
 * recording camera's put on where only the template's frame brought it.
 */
export function followingExtras(template: Build, choice: Choice, shelf: Shelf): Extra[] {
  const pack = shelf.parts.get(choice.pack);
  const frame = shelf.parts.get(choice.frame);
  const sameFrame = choice.frame === template.frame.part;
  const extras: Extra[] = [];
  for (const extra of template.extras) {
    const part = shelf.parts.get(extra.part);
    if (part === undefined) extras.push(extra);
    else if (part.kind === 'strap' && pack?.kind === 'pack')
      extras.push(withPart(extra, strapFor(part, pack, shelf)));
    else if (part.kind === 'capacitor' && pack?.kind === 'pack')
      extras.push(withPart(extra, capacitorFor(part, pack, shelf)));
    else if (part.kind === 'mount' && !sameFrame && frame !== undefined && boxed(frame, part)) continue;
    else extras.push(sameFrame ? extra : withoutPlace(extra));
  }
  if (!sameFrame && frame !== undefined) extras.push(...recordingMount(template, extras, frame, shelf));
  return extras;
}

function boxed(frame: Part, mount: PartOf<'mount'>): boolean {
  const item = MOUNTS.find(([holds]) => holds === mount.holds)?.[1];
  return frame.inTheBox.some((each) => each.item === item);
}

/** The mount a recording camera stands on, when neither the template's extras nor the frame's box bring one. */
function recordingMount(
  template: Build,
  extras: readonly Extra[],
  frame: Part,
  shelf: Shelf,
): readonly Extra[] {
  const seat = template.cameras.find(({ role }) => role === 'recording');
  const camera = seat && shelf.parts.get(seat.part);
  if (camera?.kind !== 'camera' || !camera.needsMount) return [];
  const holds = (part: Part | undefined) => part?.kind === 'mount' && part.holds === 'recording camera';
  if (extras.some((extra) => holds(shelf.parts.get(extra.part)))) return [];
  if (frame.inTheBox.some((each) => each.item === 'recording camera mount')) return [];
  const right = partsOf(shelf, 'mount').filter(
    (mount) => holds(mount) && Math.abs((mount.width ?? camera.width) - camera.width) < 0.6e-3,
  );
  const mount = cheapestOf(right);
  return mount === undefined ? [] : [{ part: mount.id, count: 1 }];
}

function strapFor(own: PartOf<'strap'>, pack: PartOf<'pack'>, shelf: Shelf): string {
  const { width, height } = sizeOf(pack).size;
  const wanted = 2 * (width + height) + STRAP_OVERLAP;
  if (own.length >= wanted) return own.id;
  const longer = partsOf(shelf, 'strap').filter((each) => each.length >= wanted && each.width >= own.width);
  return cheapestOf(longer)?.id ?? own.id;
}

function capacitorFor(own: PartOf<'capacitor'>, pack: PartOf<'pack'>, shelf: Shelf): string {
  const wanted = CAPACITOR_MARGIN * pack.cells * chemistries[pack.chemistry].fullVoltage;
  if (own.voltage >= wanted) return own.id;
  const stronger = partsOf(shelf, 'capacitor').filter(
    (each) => each.voltage >= wanted && each.capacitance.value >= own.capacitance.value,
  );
  return cheapestOf(stronger)?.id ?? own.id;
}

/** By listed amount, then id: a choice that never hangs on the order of the files. */
const cheapestOf = <P extends Part>(parts: readonly P[]): P | undefined =>
  [...parts].sort((a, b) => a.price.amount - b.price.amount || (a.id < b.id ? -1 : 1))[0];

const withPart = (extra: Extra, part: string): Extra => ({ ...extra, part });

function withoutPlace(extra: Extra): Extra {
  const { place: _, ...rest } = extra;
  return rest;
}
