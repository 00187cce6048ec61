import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Part } from '../../build/schema/part.ts';
import { partsOf, type Shelf } from '../../build/shelf.ts';
import { isNovice } from '../windows.ts';
import type { AddPart } from './costLines.ts';
import { inBriefCurrency } from './price.ts';

/** The bench a first build needs, by use (common practice, no source). */
const BENCH = [
  ['soldering iron', 'motors and plug are soldered'],
  ['solder', 'motors and plug are soldered'],
  ['hex drivers', 'every screw'],
  ['propeller tool', 'nuts off and on at every crash'],
  ['fire-safe bag', 'packs are charged and kept in it'],
  ['cell checker', 'tells when to land and how to store'],
  ['smoke stopper', 'the first plug-in without smoke'],
] as const;

/**
 * The kit round the aircraft: what it needs to be seen, commanded, charged and built, the cheapest on
 * the shelf that fits, and the packs of a session. What the shelf has nothing for is told by `lacks`.
 */
export function kitLines(
  craft: Craft,
  brief: Brief,
  shelf: Shelf,
  addPart: AddPart,
  lacks: (what: string) => void,
): void {
  const { parts } = craft;
  const has = new Set(brief.alreadyOwns);
  const cheapest = <P extends Part>(candidates: readonly P[]): P | undefined => {
    // One that is owned and fits comes before any purchase.
    const ownedOne = candidates.find((part) => has.has(part.id));
    if (ownedOne !== undefined) return ownedOne;
    const priced = candidates.flatMap((part) => {
      const price = inBriefCurrency(part.price, brief);
      return price === undefined ? [] : [{ part, price }];
    });
    return priced.sort((a, b) => a.price - b.price || a.part.id.localeCompare(b.part.id))[0]?.part;
  };
  const add = (part: Part | undefined, what: string, why: string) => {
    if (part === undefined) lacks(`${what} (none on the shelf fits)`);
    else addPart('kit', part, 1, why);
  };

  if (parts.videoLink !== undefined) {
    const { system } = parts.videoLink;
    const goggles = partsOf(shelf, 'goggles').filter((each) => each.system === system);
    add(cheapest(goggles), `goggles for ${system}`, `to see the picture of ${system}`);
  }
  const link = parts.receiver?.link ?? parts.flightController.builtInReceiver;
  if (link !== undefined) {
    const transmitters = partsOf(shelf, 'transmitter').filter((each) => each.link === link);
    add(cheapest(transmitters), `transmitter for ${link}`, `to command it by ${link}`);
  }
  const { cells, chemistry } = parts.pack;
  const chargers = partsOf(shelf, 'charger').filter(
    (each) => each.cells.min <= cells && each.cells.max >= cells && each.chemistries.includes(chemistry),
  );
  add(cheapest(chargers), `charger for ${cells}S ${chemistry}`, `charges ${cells}S ${chemistry}`);
  if (brief.packsWanted > 1) {
    addPart('kit', parts.pack, brief.packsWanted - 1, `${brief.packsWanted} packs make a session`);
  }
  const bench = partsOf(shelf, 'bench');
  for (const [use, why] of BENCH) {
    if (use === 'propeller tool' && craft.rotors[0]?.fixing !== 'nut') continue;
    add(cheapest(bench.filter((each) => each.use === use)), use, why);
  }
  if (isNovice(brief.pilot) && brief.pilot.simulatorHours === 0) {
    add(
      cheapest(bench.filter((each) => each.use === 'simulator')),
      'simulator',
      'the first crashes for nothing',
    );
  }
}
