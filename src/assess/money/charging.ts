import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { PartOf } from '../../build/schema/part.ts';
import type { Shelf } from '../../build/shelf.ts';
import { type Charging, charging } from '../../knocks/charging.ts';
import type { Measure } from '../types.ts';
import { chargerFor } from './kitChoice.ts';

/** The careful charge current over capacity [1/h] (common practice, no source). */
const CAREFUL_RATE = 1;
/** Chargers hold their power, and packs their capacity, to about this, one standard deviation (common practice). */
const SPREAD = 0.08;

export interface SessionCharging extends Charging {
  readonly charger: PartOf<'charger'>;
}

/**
 * Power and hours that a session's packs ask for, at 1C or the pack's own rating when that is less, on the
 * charger at hand or the cheapest that fits. Undefined when the shelf has none, or the brief owns one
 * without saying which.
 */
export function sessionCharging(craft: Craft, brief: Brief, shelf: Shelf): SessionCharging | undefined {
  const { part, ownedBy } = chargerFor(craft, brief, shelf);
  if (part === undefined || ownedBy === 'kind') return undefined;
  const { pack } = craft.parts;
  const asked = charging({
    cells: pack.cells,
    capacity: pack.capacity.value,
    rate: Math.min(CAREFUL_RATE, pack.chargeRating),
    packs: brief.packsWanted,
    atOnce: part.channels,
    usedShare: 1 - brief.reserve,
    chargerPower: part.power.value,
  });
  return { ...asked, charger: part };
}

/** What the packs ask of the charger and of the evening. */
export function chargingMeasures(craft: Craft, brief: Brief, shelf: Shelf): readonly Measure[] {
  const session = sessionCharging(craft, brief, shelf);
  if (session === undefined) return [];
  const { pack } = craft.parts;
  const trust = pack.capacity.trust ?? pack.trust;
  const common = {
    sheet: 'money',
    better: 'less',
    source: 'common practice, no source',
    leansOn: [{ input: 'capacity of the pack', trust, share: 1 }],
  } as const;
  const band = (value: number): [number, number] => [
    value * (1 - 1.28 * SPREAD),
    value * (1 + 1.28 * SPREAD),
  ];
  return [
    {
      ...common,
      id: 'charging-power',
      label: 'charging power for one pack',
      quantity: 'power',
      value: session.powerOnePack,
      band: band(session.powerOnePack),
      how: 'Cells x 4.2 V x capacity in Ah x C-rate, at 1C or what the pack is rated for.',
    },
    {
      ...common,
      id: 'session-charging-time',
      label: `charging ${brief.packsWanted} pack${brief.packsWanted === 1 ? '' : 's'}`,
      quantity: 'time',
      value: session.sessionTime,
      band: band(session.sessionTime),
      how: `Rounds of ${session.charger.channels} on ${session.charger.name}, from the landing reserve, with the slow end at constant voltage.`,
    },
  ];
}
