import { assessCraft } from '../../assess/assess.ts';
import { airOf } from '../../assess/dayOf.ts';
import { drawBuilds } from '../../choose/drawBuilds.ts';
import { rankStability } from '../../choose/rankStability.ts';
import { resolveCandidate } from '../../choose/shortlist/candidate.ts';
import { type PreparedSearch, prepareSearch } from '../../choose/shortlist/prepare.ts';
import { type Relaxed, relaxationsOf, relaxedBy } from '../../choose/shortlist/relax.ts';
import { type MappedRotor, rotorsOfMaps } from '../../choose/shortlist/rotors.ts';
import { sizeOfSpace, spaceOf } from '../../choose/shortlist/space.ts';
import type { SearchState } from '../../choose/shortlist/state.ts';
import type { SearchContext, ShortlistQuestion } from '../../choose/shortlist/types.ts';
import { RISK_COST } from '../../choose/standing.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { loadBlades, loadBrief, loadBuild, loadShelf } from '../context.ts';
import { BadInput, type ExitCode, exitCode, Interrupted, type Io } from '../io.ts';
import { wholeOption } from '../options.ts';
import { paintFor } from '../print/paint.ts';
import { shortlistText } from '../print/shortlistText.ts';
import { runSearch } from '../runSearch.ts';
import { frontOptions, limitOptions, seatOptions, wantOptions } from '../searchOptions.ts';
import type { ShortlistReport } from '../shortlistReport.ts';

export interface ShortlistOptions {
  readonly from: string;
  readonly brief?: string;
  readonly for?: string;
  readonly shelf: readonly string[];
  readonly choose?: string;
  readonly want: readonly string[];
  readonly limit: readonly string[];
  readonly front?: string;
  readonly top: string;
  readonly workers?: string;
  readonly keep?: string;
  readonly relax?: boolean;
  readonly full?: boolean;
  readonly json?: boolean;
}

/** `shortlist`: the best combinations on the shelf under a brief, with the reasons. */
export async function makeShortlist(options: ShortlistOptions, io: Io): Promise<ExitCode> {
  const shelf = loadShelf(options.shelf, io);
  const brief = loadBrief(options.brief, options.for, io);
  const { build: template } = loadBuild(options.from, io);
  const blades = loadBlades(options.shelf, io);
  const context: SearchContext = { brief, shelf, sections: sectionTables(), blades };
  const question: ShortlistQuestion = {
    template,
    space: spaceOf(template, shelf, seatOptions(options.choose)),
    wants: wantOptions(options.want, brief),
    limits: limitOptions(options.limit),
    riskCost: RISK_COST,
    top: wholeOption('--top', options.top, 1, 100),
    front: frontOptions(options.front),
  };
  const workers = workersOption(options.workers, io);
  const prepared = prepareOrSay(question, context);
  const { state, maps } = await runSearch(prepared, context, { workers, keep: options.keep }, io);
  const { relaxed, stoppedAt } = options.relax
    ? await relaxAll(prepared, context, maps, workers, state, io)
    : { relaxed: [] };
  const tier = options.full ? 'full' : 'quick';
  const report = reportOf(prepared, context, maps, state, relaxed, tier);
  io.writeOut(
    options.json
      ? `${JSON.stringify(report, null, 2)}\n`
      : shortlistText(report, { paint: paintFor(io.colours), currency: brief.currency }),
  );
  if (stoppedAt !== undefined) {
    throw new Interrupted(
      `Stopped while it was searched with ${stoppedAt.replaceAll('-', ' ')} a tenth wider: the list above is whole, what that limit and those after it cost is not told.`,
    );
  }
  return exitCode.fine;
}

function workersOption(text: string | undefined, io: Io): number {
  const most = io.machine?.cores ?? 1;
  return text === undefined ? Math.min(most, 8) : wholeOption('--workers', text, 1, 64);
}

function prepareOrSay(question: ShortlistQuestion, context: SearchContext): PreparedSearch {
  try {
    return prepareSearch(question, context);
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(`shortlist: ${error.message}.`);
    throw error;
  }
}

/** Every limit by itself a tenth wider: what that would buy, until it is stopped. Maps and tables of parts stay as they are. */
async function relaxAll(
  prepared: PreparedSearch,
  context: SearchContext,
  maps: readonly MappedRotor[],
  workers: number,
  state: SearchState,
  io: Io,
): Promise<{ readonly relaxed: readonly Relaxed[]; readonly stoppedAt?: string }> {
  const relaxed: Relaxed[] = [];
  for (const { limit, brief, question } of relaxationsOf(context.brief, prepared.question)) {
    const own = { ...prepared, question };
    try {
      const done = await runSearch(own, { ...context, brief }, { workers, maps }, io);
      relaxed.push(relaxedBy(limit, done.state, state));
    } catch (error) {
      if (error instanceof Interrupted) return { relaxed, stoppedAt: limit };
      throw error;
    }
  }
  return { relaxed };
}

function reportOf(
  prepared: PreparedSearch,
  context: SearchContext,
  maps: readonly MappedRotor[],
  state: SearchState,
  relaxed: readonly Relaxed[],
  tier: 'quick' | 'full',
): ShortlistReport {
  const { question } = prepared;
  const rotors = rotorsOfMaps(maps, airOf(context.brief));
  const full = { ...context, rotors };
  const ready = new Map([...rotors].map(([id, { facts }]) => [id, facts]));
  const crafts = state.top.flatMap(({ choice }) => {
    const craft = resolveCandidate(question.template, choice, context.shelf, ready);
    return craft.ok ? [craft.value] : [];
  });
  const stability =
    crafts.length > 1
      ? rankStability(drawBuilds(crafts.slice(0, 8), full), question.wants, question.riskCost)
      : undefined;
  return {
    brief: context.brief.name,
    wants: question.wants,
    limits: question.limits,
    size: sizeOfSpace(question.space),
    counts: state.counts,
    finished: state.done.length === prepared.tasks.length,
    top: state.top,
    assessments: crafts.map((craft) => assessCraft(craft, { ...full, tier })),
    front: state.front,
    ...(stability === undefined ? {} : { stability }),
    relaxed,
    riskCost: question.riskCost,
  };
}
