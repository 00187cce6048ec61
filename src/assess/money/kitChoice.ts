import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Part, PartKind, PartOf } from '../../build/schema/part.ts';
import { partsOf, type Shelf } from '../../build/shelf.ts';
import { inBriefCurrency } from './price.ts';

/** One piece of the kit: what serves, and whether it is at hand. */
export interface KitPiece<K extends PartKind> {
  /** At hand and fitting, else the cheapest on the shelf that fits; absent when none fits. */
  readonly part?: PartOf<K>;
  readonly owned: boolean;
  /** A `kind` in alreadyOwns says that there is one, not which. */
  readonly ownedBy?: 'id' | 'kind';
  /** At hand by id, but not fitting this aircraft. */
  readonly ownedOthers: readonly PartOf<K>[];
}

/** Goggles of the video link's system; undefined without a video link. */
export function gogglesFor({ parts }: Craft, brief: Brief, shelf: Shelf): KitPiece<'goggles'> | undefined {
  const system = parts.videoLink?.system;
  return system === undefined ? undefined : piece('goggles', brief, shelf, (part) => part.system === system);
}

/** A transmitter of the receiver's link; undefined without a receiver. */
export function transmitterFor(
  craft: Craft,
  brief: Brief,
  shelf: Shelf,
): KitPiece<'transmitter'> | undefined {
  const link = linkOf(craft);
  return link === undefined ? undefined : piece('transmitter', brief, shelf, (part) => part.link === link);
}

/** A charger for the pack's cells and chemistry. */
export function chargerFor({ parts }: Craft, brief: Brief, shelf: Shelf): KitPiece<'charger'> {
  const { cells, chemistry } = parts.pack;
  return piece(
    'charger',
    brief,
    shelf,
    (part) => part.cells.min <= cells && part.cells.max >= cells && part.chemistries.includes(chemistry),
  );
}

/** The radio link that commands the craft. */
export const linkOf = ({ parts }: Craft): string | undefined =>
  parts.receiver?.link ?? parts.flightController.builtInReceiver;

function piece<K extends 'goggles' | 'transmitter' | 'charger'>(
  kind: K,
  brief: Brief,
  shelf: Shelf,
  serves: (part: PartOf<K>) => boolean,
): KitPiece<K> {
  const all = partsOf(shelf, kind) as readonly PartOf<K>[];
  const owns = new Set(brief.alreadyOwns);
  const fitting = all.filter(serves);
  const own = fitting.find((part) => owns.has(part.id));
  const ownedOthers = all.filter((part) => owns.has(part.id) && !serves(part));
  if (own !== undefined) return { part: own, owned: true, ownedBy: 'id', ownedOthers };
  const part = cheapest(fitting, brief);
  return {
    ...(part === undefined ? {} : { part }),
    owned: owns.has(kind),
    ...(owns.has(kind) ? { ownedBy: 'kind' as const } : {}),
    ownedOthers,
  };
}

/** The cheapest with a price in the brief's currency; the id breaks a tie, so that the choice is steady. */
export function cheapest<P extends Part>(candidates: readonly P[], brief: Brief): P | undefined {
  return candidates
    .flatMap((part) => {
      const price = inBriefCurrency(part.price, brief);
      return price === undefined ? [] : [{ part, price }];
    })
    .sort((a, b) => a.price - b.price || a.part.id.localeCompare(b.part.id))[0]?.part;
}
