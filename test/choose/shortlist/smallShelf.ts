import { readFileSync } from 'node:fs';
import { assess } from '../../../src/assess/assess.ts';
import { airOf } from '../../../src/assess/dayOf.ts';
import { readBrief, readBuild } from '../../../src/build/read/readBuild.ts';
import type { Brief } from '../../../src/build/schema/brief.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import { resolveCandidate } from '../../../src/choose/shortlist/candidate.ts';
import { prepareSearch } from '../../../src/choose/shortlist/prepare.ts';
import { type MappedRotor, mapRotor, rotorsOfMaps } from '../../../src/choose/shortlist/rotors.ts';
import { promiseOf, runTask } from '../../../src/choose/shortlist/runTask.ts';
import { type SearchRun, searchAll } from '../../../src/choose/shortlist/searchAll.ts';
import { searcherOf } from '../../../src/choose/shortlist/searcher.ts';
import { standingOf, utility } from '../../../src/choose/shortlist/softWants.ts';
import { startState } from '../../../src/choose/shortlist/state.ts';
import { choiceAt, sizesOf } from '../../../src/choose/shortlist/tables.ts';
import {
  byStanding,
  keyOf,
  type Scored,
  type SearchSpace,
  type ShortlistQuestion,
} from '../../../src/choose/shortlist/types.ts';
import { usualSoftWants } from '../../../src/choose/shortlist/usualScales.ts';
import { sectionTables } from '../../../src/rotor/sections.ts';
import { shippedShelf as shelf } from '../../shelf/shippedFiles.ts';

export const sections = sectionTables();

export function demo(folder: string, name: string): { readonly brief: Brief; readonly template: Build } {
  const brief = readBrief(readFileSync(`demo/${folder}/brief.yaml`, 'utf8'), 'brief');
  const build = readBuild(readFileSync(`demo/${folder}/${name}.yaml`, 'utf8'), name);
  if (!brief.ok || !build.ok) throw new Error(JSON.stringify({ brief, build }));
  return { brief: brief.value, template: build.value.build };
}

const maps = new Map<string, MappedRotor>();

export function question(
  { brief, template }: ReturnType<typeof demo>,
  space: SearchSpace,
  more: Partial<ShortlistQuestion> = {},
): ShortlistQuestion {
  return {
    template,
    space,
    wants: usualSoftWants(brief),
    limits: [],
    riskCost: 0.04,
    top: 8,
    front: [],
    ...more,
  };
}

/** A search made ready, rotor maps shared between tests of one brief. */
export function ready(asked: ShortlistQuestion, brief: Brief) {
  const context = { brief, shelf, sections };
  const prepared = prepareSearch(asked, context);
  const own = asked.space.propellers.map((id) => {
    const key = `${brief.name} ${id}`;
    const part = shelf.parts.get(id);
    if (part?.kind !== 'propeller') throw new Error(id);
    const made = maps.get(key) ?? mapOf(mapRotor(part, airOf(brief), sections));
    maps.set(key, made);
    return made;
  });
  const rotors = rotorsOfMaps(own, prepared.air);
  const searcher = searcherOf(prepared, context, rotors);
  const run: SearchRun = {
    promise: (task) => promiseOf(searcher, task),
    run: (task, bar, promised) => runTask(searcher, task, bar, promised),
    workers: 1,
  };
  const search = (over: Partial<SearchRun> = {}, state = startState(prepared, 'test')) =>
    searchAll(prepared, state, { ...run, ...over });
  return { context: { ...context, rotors }, prepared, searcher, search };
}

function mapOf(made: ReturnType<typeof mapRotor>): MappedRotor {
  if (!made.ok) throw new Error(made.reason);
  return made.value;
}

/** Every combination of a space. */
export function* everyChoice(space: SearchSpace) {
  const sizes = sizesOf(space);
  for (let frame = 0; frame < sizes.frame; frame++)
    for (let motor = 0; motor < sizes.motor; motor++)
      for (let propeller = 0; propeller < sizes.propeller; propeller++)
        for (let pack = 0; pack < sizes.pack; pack++)
          for (let electronics = 0; electronics < sizes.electronics; electronics++)
            for (let camera = 0; camera < sizes.camera; camera++)
              yield choiceAt(space, { frame, motor, propeller, pack, electronics, camera });
}

/** The best of each group by `assess` on every combination: knows nothing of bounds, tables or the search's evaluator. */
export function bruteForce(
  asked: ShortlistQuestion,
  { context }: ReturnType<typeof ready>,
): readonly Scored[] {
  const all = [...everyChoice(asked.space)].flatMap((choice): readonly Scored[] => {
    const craft = resolveCandidate(
      asked.template,
      choice,
      shelf,
      new Map([...context.rotors].map(([id, { facts }]) => [id, facts])),
    );
    if (!craft.ok) return [];
    const told = assess(craft.value.build, context);
    if (!told.ok || !told.value.flies) return [];
    // Over the listed sum is over the budget here; `assess` grants the spread between shops.
    if (told.value.findings.some(({ id, severity }) => severity === 'stop' && id !== 'over-budget'))
      return [];
    const values = Object.fromEntries(told.value.measures.map(({ id, value }) => [id, value]));
    const never = { 'full-throttle-time-to-limit': Number.POSITIVE_INFINITY, ...values };
    const of = (id: string) => (never as Record<string, number>)[id] ?? Number.NaN;
    if (of('first-flight-cost') > (context.brief.budget?.amount ?? Number.POSITIVE_INFINITY)) return [];
    if (
      asked.limits.some(
        ({ measure, least = -1e300, most = 1e300 }) => !(of(measure) >= least && of(measure) <= most),
      )
    )
      return [];
    const risks = told.value.fit.filter((line) => !line.passes && line.severity === 'risk').length;
    const standing = standingOf(
      asked.wants,
      (want) => utility(want.scale, of(want.measure)),
      risks,
      asked.riskCost,
    );
    return [{ key: keyOf(choice), choice, standing, risks, values: never }];
  });
  return all.sort(byStanding);
}

export { shelf };
