import { assessCraft } from '../../assess/assess.ts';
import type { Assessment } from '../../assess/assessment.ts';
import { airOf } from '../../assess/dayOf.ts';
import { assessParts } from '../../assess/parts/index.ts';
import { NOTHING, type PartContext, type PartResult } from '../../assess/parts/types.ts';
import { prepareFlight } from '../../assess/prepareFlight.ts';
import { type PreparedRotors, prepareRotors } from '../../assess/prepareRotors.ts';
import { emptyMemory } from '../../assess/quickMemory.ts';
import { rotorsAtSpeed } from '../../assess/rotorsAtSpeed.ts';
import type { Measure } from '../../assess/types.ts';
import type { Craft, CraftRotor } from '../../build/craft.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { DrawnBuilds } from '../../choose/drawBuilds.ts';
import { pictureOfCraft } from '../../report/pictureOfCraft.ts';
import type { CraftSolids } from '../../report/solids/solidsOf.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { curvesOf } from './curves.ts';
import type { BuildView, Glance } from './protocol.ts';

/** Works builds out over one shelf, and keeps the propellers it has made ready in the day's air. */
export function openWorkshop(shelf: Shelf) {
  const sections = sectionTables();
  // The dearest work, done once a propeller: its blade matched to what is known, its map in the brief's air.
  const blades = new Map<string, CraftRotor>();
  let rotors: PreparedRotors = new Map();
  let day = '';
  let last:
    | { readonly key: string; readonly context: PartContext; readonly results: Map<string, PartResult> }
    | undefined;

  // Of the last quick answer: the same build mostly, slid a little further.
  const memory = emptyMemory();

  function resolved(build: Build) {
    const craft = resolveBuild(build, shelf, undefined, blades);
    if (craft.ok) for (const rotor of craft.value.rotors) blades.set(rotor.partId, rotor);
    return craft;
  }

  function readyRotors(craft: Craft, brief: Brief): boolean {
    const today = JSON.stringify(brief.site);
    if (today !== day) [day, rotors] = [today, new Map()];
    const prepared = prepareRotors(craft, airOf(brief), sections, rotors);
    if (prepared.ok) rotors = prepared.value;
    return prepared.ok;
  }

  /** @param airframe of an answer before, to stand as it was */
  function view(build: Build, brief: Brief, airframe?: readonly Measure[]): BuildView {
    const found = resolved(build);
    if (!found.ok) {
      const reasons = found.errors.map(({ path, says, remedy }) => `${path}: ${says}. ${remedy}`);
      return { ok: false, reasons };
    }
    const craft = found.value;
    readyRotors(craft, brief);
    const context = { brief, shelf, sections, rotors };
    const flight = prepareFlight(craft, context);
    const assessment = assessCraft(craft, {
      ...context,
      readyFlight: flight,
      memory,
      ...(airframe === undefined ? {} : { airframe }),
    });
    const told = {
      ok: true as const,
      picture: pictureOfCraft(craft),
      assessment,
      layout: build.frame.layout ?? craft.parts.frame.layout,
    };
    return flight.ok ? { ...told, curves: curvesOf(craft, flight.value, assessment.stations) } : told;
  }

  /** What every part of the full assessment looks at; kept, since parts are asked for one after another. */
  function opened(build: Build, brief: Brief) {
    const key = JSON.stringify([build, brief]);
    if (last?.key === key) return last;
    const found = resolved(build);
    if (!found.ok) return undefined;
    readyRotors(found.value, brief);
    rotors = rotorsAtSpeed(rotors, sections, airOf(brief));
    const flight = prepareFlight(found.value, { brief, sections, rotors });
    const context = { craft: found.value, brief, shelf, sections };
    last = {
      key,
      context: flight.ok ? { ...context, flight: flight.value } : context,
      results: new Map(),
    };
    return last;
  }

  function part(build: Build, brief: Brief, id: string): PartResult {
    const job = opened(build, brief);
    const asked = assessParts.find((each) => each.id === id);
    if (job === undefined || asked === undefined) return NOTHING;
    const result = asked.run(job.context);
    job.results.set(id, result);
    return result;
  }

  /** The full assessment from parts worked out before; those that are missing are worked out now. */
  function whole(build: Build, brief: Brief): Assessment | undefined {
    const job = opened(build, brief);
    if (job === undefined) return undefined;
    const parts = assessParts.map(({ id }) => job.results.get(id) ?? part(build, brief, id));
    return assessCraft(job.context.craft, { brief, shelf, sections, rotors, parts });
  }

  /** Meshes are made by who asks for them: the code for it comes then. */
  async function solids(build: Build): Promise<CraftSolids | undefined> {
    const found = resolved(build);
    if (!found.ok) return undefined;
    const { solidsOf } = await import('../../report/solids/solidsOf.ts');
    return solidsOf(found.value);
  }

  function glance(build: Build, brief: Brief): Glance {
    const found = resolved(build);
    if (!found.ok) return { trouble: found.errors[0]?.says ?? '', stops: 0, risks: 0, findings: [] };
    readyRotors(found.value, brief);
    const context = { brief, shelf, sections, rotors, tier: 'hover' } as const;
    const { findings, measures } = assessCraft(found.value, context);
    const value = (id: string) => measures.find((measure) => measure.id === id)?.value;
    const [thrustToWeight, flownTime] = [value('thrust-to-weight'), value('flown-time')];
    return {
      stops: findings.filter(({ severity }) => severity === 'stop').length,
      risks: findings.filter(({ severity }) => severity === 'risk').length,
      findings: findings.map(({ id }) => id),
      ...(thrustToWeight === undefined ? {} : { thrustToWeight }),
      ...(flownTime === undefined ? {} : { flownTime }),
    };
  }

  /** The measures of the quickest assessment; none where the build can't be worked out. */
  function figures(build: Build, brief: Brief): readonly Measure[] {
    const found = resolved(build);
    if (!found.ok) return [];
    readyRotors(found.value, brief);
    return assessCraft(found.value, { brief, shelf, sections, rotors, tier: 'hover' }).measures;
  }

  async function draw(
    builds: readonly Build[],
    brief: Brief,
    tell: (share: number) => void,
  ): Promise<DrawnBuilds | undefined> {
    const crafts = builds.flatMap((build) => {
      const found = resolved(build);
      return found.ok ? [found.value] : [];
    });
    if (crafts.length < builds.length) return undefined;
    for (const craft of crafts) readyRotors(craft, brief);
    const { drawBuilds, USUAL_DRAWS } = await import('../../choose/drawBuilds.ts');
    return drawBuilds(crafts, { brief, shelf, sections, rotors }, USUAL_DRAWS, tell);
  }

  return { view, part, whole, solids, glance, figures, draw };
}
