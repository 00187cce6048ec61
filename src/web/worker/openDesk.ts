import { assessCraft } from '../../assess/assess.ts';
import { airOf } from '../../assess/dayOf.ts';
import { type PreparedRotors, prepareRotors } from '../../assess/prepareRotors.ts';
import type { CraftRotor } from '../../build/craft.ts';
import { flightModelOf } from '../../build/resolve/flightModelOf.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { Build } from '../../build/schema/build.ts';
import { pictureOfCraft } from '../../report/pictureOfCraft.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { curvesOf } from './curves.ts';
import type { BuildView, Desk } from './protocol.ts';
import { readDemo } from './readDemo.ts';
import { shelfRow } from './shelfRow.ts';

/** The desk of one page: shelf, brief and section tables read once, and the rotor maps made so far. */
export function openDesk(): Desk {
  const { brief, builds, shelf } = readDemo();
  const sections = sectionTables();
  const air = airOf(brief);
  // The dearest work, done once a propeller: its blade matched to what is known, its map in the brief's air.
  const blades = new Map<string, CraftRotor>();
  let rotors: PreparedRotors = new Map();

  function view(build: Build): BuildView {
    const resolved = resolveBuild(build, shelf, undefined, blades);
    if (!resolved.ok) {
      const reasons = resolved.errors.map(({ path, says, remedy }) => `${path}: ${says}. ${remedy}`);
      return { ok: false, reasons };
    }
    const craft = resolved.value;
    for (const rotor of craft.rotors) blades.set(rotor.partId, rotor);
    const prepared = prepareRotors(craft, air, sections, rotors);
    if (prepared.ok) rotors = prepared.value;
    const assessment = assessCraft(craft, { brief, shelf, sections, rotors });
    const picture = pictureOfCraft(craft);
    if (!assessment.flies || !prepared.ok) return { ok: true, picture, assessment };
    const readers = craft.rotors.flatMap((rotor) => rotors.get(rotor.partId)?.read ?? []);
    const model = flightModelOf(craft, readers, air, brief.reserve);
    return { ok: true, picture, assessment, curves: curvesOf(craft, model, assessment.stations) };
  }

  return {
    open: async () => {
      const manner = { currency: brief.currency };
      return { brief, builds, shelf: Array.from(shelf.parts.values(), (part) => shelfRow(part, manner)) };
    },
    assess: async (build) => view(build),
  };
}
