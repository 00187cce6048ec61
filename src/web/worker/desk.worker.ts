import { expose } from 'comlink';
import { assessCraft } from '../../assess/assess.ts';
import { airOf } from '../../assess/dayOf.ts';
import { type PreparedRotors, prepareRotors } from '../../assess/prepareRotors.ts';
import { flightModelOf } from '../../build/resolve/flightModelOf.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { Build } from '../../build/schema/build.ts';
import { pictureOfCraft } from '../../report/pictureOfCraft.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { curvesOf } from './curves.ts';
import type { BuildView, Desk } from './protocol.ts';
import { readDemo } from './readDemo.ts';
import { shelfRow } from './shelfRow.ts';

type Demo = ReturnType<typeof readDemo>;

const sections = sectionTables();
let demo: Demo | undefined;
/** Maps made so far, all in the air of the one brief: the dearest work, done once a propeller. */
let rotors: PreparedRotors = new Map();

function kept(): Demo {
  demo ??= readDemo();
  return demo;
}

const desk: Desk = {
  open: async () => {
    const { brief, builds, shelf } = kept();
    const manner = { currency: brief.currency };
    return { brief, builds, shelf: Array.from(shelf.parts.values(), (part) => shelfRow(part, manner)) };
  },
  assess: async (build) => view(build, kept()),
};

function view(build: Build, { brief, shelf }: Demo): BuildView {
  const resolved = resolveBuild(build, shelf);
  if (!resolved.ok) {
    return {
      ok: false,
      reasons: resolved.errors.map(({ path, says, remedy }) => `${path}: ${says}. ${remedy}`),
    };
  }
  const craft = resolved.value;
  const air = airOf(brief);
  const prepared = prepareRotors(craft, air, sections, rotors);
  if (prepared.ok) rotors = prepared.value;
  const assessment = assessCraft(craft, { brief, shelf, sections, rotors });
  const picture = pictureOfCraft(craft);
  const readers = craft.rotors.flatMap((rotor) => rotors.get(rotor.partId)?.read ?? []);
  if (!assessment.flies || readers.length !== craft.rotors.length) return { ok: true, picture, assessment };
  const model = flightModelOf(craft, readers, air, brief.reserve);
  return { ok: true, picture, assessment, curves: curvesOf(craft, model, assessment.stations) };
}

expose(desk);
