import type { Craft } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Part } from '../../build/schema/part.ts';
import { partsOf, type Shelf } from '../../build/shelf.ts';
import { isNovice } from '../windows.ts';
import type { AddPart, AddPrice } from './addLine.ts';
import { chargerFor, cheapest, gogglesFor, linkOf, transmitterFor } from './kitChoice.ts';

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

/** How the list is written to; `lacks` tells what the shelf has nothing for. */
export interface KitSink {
  readonly addPart: AddPart;
  readonly addPrice: AddPrice;
  readonly lacks: (what: string) => void;
}

/**
 * The kit round the aircraft: what it needs to be seen, commanded, charged and built, the cheapest on
 * the shelf that fits, with what their boxes lack, and the packs of a session.
 */
export function kitLines(craft: Craft, brief: Brief, shelf: Shelf, sink: KitSink): void {
  const { parts } = craft;
  const add = (part: Part | undefined, what: string, why: string) => {
    if (part === undefined) sink.lacks(`${what} (none on the shelf fits)`);
    else {
      sink.addPart('kit', part, 1, why);
      addLacking(part, brief, shelf, sink);
    }
  };

  const goggles = gogglesFor(craft, brief, shelf);
  if (goggles !== undefined) {
    const system = parts.videoLink?.system ?? '';
    add(goggles.part, `goggles for ${system}`, `to see the picture of ${system}`);
  }
  const transmitter = transmitterFor(craft, brief, shelf);
  if (transmitter !== undefined) {
    const link = linkOf(craft) ?? '';
    add(transmitter.part, `transmitter for ${link}`, `to command it by ${link}`);
  }
  const { cells, chemistry } = parts.pack;
  add(
    chargerFor(craft, brief, shelf).part,
    `charger for ${cells}S ${chemistry}`,
    `charges ${cells}S ${chemistry}`,
  );
  if (brief.packsWanted > 1) {
    sink.addPart('kit', parts.pack, brief.packsWanted - 1, `${brief.packsWanted} packs make a session`);
  }
  const bench = partsOf(shelf, 'bench');
  const tool = (use: (typeof bench)[number]['use']) => {
    const candidates = bench.filter((each) => each.use === use);
    const own = candidates.find((each) => brief.alreadyOwns.includes(each.id));
    return own ?? cheapest(candidates, brief);
  };
  for (const [use, why] of BENCH) {
    if (use === 'propeller tool' && craft.rotors[0]?.fixing !== 'nut') continue;
    add(tool(use), use, why);
  }
  if (isNovice(brief.pilot) && brief.pilot.simulatorHours === 0) {
    add(tool('simulator'), 'simulator', 'the first crashes for nothing');
  }
}

/** What a piece of kit comes without, such as its batteries; whoever has the piece has those as well. */
function addLacking(part: Part, brief: Brief, shelf: Shelf, { addPart, addPrice }: KitSink): void {
  if (brief.alreadyOwns.includes(part.id) || brief.alreadyOwns.includes(part.kind)) return;
  for (const each of part.notInTheBox) {
    const own = each.part === undefined ? undefined : shelf.parts.get(each.part);
    const why = `not in the box of ${part.name}`;
    if (own !== undefined) addPart('kit', own, each.count, why);
    else
      addPrice(
        'kit',
        `kit: ${each.item} for ${part.id}`,
        `${each.item} for ${part.name}`,
        each.count,
        each.price,
        why,
      );
  }
}
