import { readFileSync } from 'node:fs';
import { assess } from '../src/assess/assess.ts';
import { unpackShelf } from '../src/build/read/packedShelf.ts';
import { readBrief, readBuild } from '../src/build/read/readBuild.ts';
import { resolveCandidate } from '../src/choose/shortlist/candidate.ts';
import { prepareSearch } from '../src/choose/shortlist/prepare.ts';
import { type MappedRotor, mapRotor, rotorsOfMaps } from '../src/choose/shortlist/rotors.ts';
import { promiseOf, runTask } from '../src/choose/shortlist/runTask.ts';
import { searchAll } from '../src/choose/shortlist/searchAll.ts';
import { searcherOf } from '../src/choose/shortlist/searcher.ts';
import { SEATS, sizeOfSpace, spaceOf } from '../src/choose/shortlist/space.ts';
import { startState } from '../src/choose/shortlist/state.ts';
import { usualSoftWants } from '../src/choose/shortlist/usualScales.ts';
import { RISK_COST } from '../src/choose/standing.ts';
import { sectionTables } from '../src/rotor/sections.ts';

/**
 * What issue 6 asks of the shortlist: for each of the four briefs how many combinations a second of one core
 * (processor time, so that a busy machine does not blur it), how many were left out without evaluation, and how
 * that compares with `assess()` on each combination, measured in the same run on a sample of them.
 */
const shelf = unpackShelf(readFileSync('dist/cli/shelf.json', 'utf8'));
const sections = sectionTables();
const five = ['frame', 'motors', 'propellers', 'pack', 'controllers'] as const;
const names = [
  ['first-freestyle', 'turnstone'],
  ['micro', 'wheatear'],
  ['guarded', 'dotterel'],
  ['cruiser', 'curlew'],
] as const;
/** Processor time of this process [s]. */
const seconds = () => (process.cpuUsage().user + process.cpuUsage().system) / 1e6;

for (const [folder, name] of names) {
  const brief = readBrief(readFileSync(`demo/${folder}/brief.yaml`, 'utf8'), 'brief');
  const read = readBuild(readFileSync(`demo/${folder}/${name}.yaml`, 'utf8'), name);
  if (!brief.ok || !read.ok) throw new Error(`${folder} does not read`);
  for (const seats of [five, SEATS]) {
    const template = read.value.build;
    const space = spaceOf(template, shelf, seats);
    const wants = usualSoftWants(brief.value);
    const question = { template, space, wants, limits: [], riskCost: RISK_COST, top: 10, front: [] };
    const context = { brief: brief.value, shelf, sections };
    const began = seconds();
    const prepared = prepareSearch(question, context);
    const maps = prepared.usedPropellers.flatMap((id): readonly MappedRotor[] => {
      const part = shelf.parts.get(id);
      const made = part?.kind === 'propeller' ? mapRotor(part, prepared.air, sections) : undefined;
      return made?.ok ? [made.value] : [];
    });
    const mapped = seconds();
    const searcher = searcherOf(prepared, context, rotorsOfMaps(maps, prepared.air));
    const state = await searchAll(prepared, startState(prepared, ''), {
      promise: (task) => promiseOf(searcher, task),
      run: (task, bar, promised) => runTask(searcher, task, bar, promised),
      workers: 1,
    });
    const ended = seconds();
    const size = sizeOfSpace(space);
    const each = (ended - began) / size;
    const one = assessOne(state.top.map(({ choice }) => choice));
    const excluded = Object.values(state.counts.excluded).reduce((sum, count) => sum + count, 0);
    const left = `${excluded.toLocaleString('en-GB')} taken out for sure, ${state.counts.bounded.toLocaleString('en-GB')} by bounds`;
    const memory = Math.round(process.resourceUsage().maxRSS / 1024);
    console.log(
      `${folder.padEnd(16)} ${size.toLocaleString('en-GB').padStart(13)} combinations, ${(ended - began).toFixed(1)} s of one core (maps and tables ${(mapped - began).toFixed(1)} s): ` +
        `${Math.round(1 / each).toLocaleString('en-GB')}/s; ${state.counts.evaluated.toLocaleString('en-GB')} evaluated, ` +
        `${(100 * (1 - state.counts.evaluated / size)).toFixed(3)} % without; assess() ${(1000 * one).toFixed(1)} ms, so ${Math.round(one / each).toLocaleString('en-GB')} x; ${left}; at most ${memory} MB held so far`,
    );

    function assessOne(choices: (typeof state.top)[number]['choice'][]): number {
      const rotors = searcher.context.rotors;
      const from = seconds();
      let count = 0;
      while (count < 100) {
        for (const choice of choices) {
          const craft = resolveCandidate(template, choice, shelf, searcher.context.ready);
          if (craft.ok) assess(craft.value.build, { ...context, rotors });
          count++;
        }
        if (choices.length === 0) break;
      }
      return (seconds() - from) / Math.max(count, 1);
    }
  }
}
