import type { Air } from '../../air/standardAtmosphere.ts';
import { assessCraft } from '../../assess/assess.ts';
import type { Craft } from '../../build/craft.ts';
import type { Build } from '../../build/schema/build.ts';
import { doubtedCraft } from '../../choose/doubtedCraft.ts';
import { drawBuilds } from '../../choose/drawBuilds.ts';
import { rankStability } from '../../choose/rankStability.ts';
import { resolveCandidate } from '../../choose/shortlist/candidate.ts';
import { foldScored } from '../../choose/shortlist/foldScored.ts';
import { flipsBetween, reasonsBetween } from '../../choose/shortlist/reasons.ts';
import type { Relaxed } from '../../choose/shortlist/relax.ts';
import { type MappedRotor, rotorsOfMaps } from '../../choose/shortlist/rotors.ts';
import type { SearchState } from '../../choose/shortlist/state.ts';
import type { Scored, SearchContext, ShortlistQuestion } from '../../choose/shortlist/types.ts';
import { tornado } from '../../choose/tornado.ts';
import type { FrontPoint, ListedBuild, SearchReport } from './searchProtocol.ts';

interface Found {
  readonly question: ShortlistQuestion;
  readonly context: SearchContext;
  readonly maps: readonly MappedRotor[];
  readonly air: Air;
  readonly state: SearchState;
  readonly size: number;
  readonly finished: boolean;
  readonly relaxed: readonly Relaxed[];
}

/** As many as are listed after folding. */
const LISTED = 8;

/** What a search found, in figures with bands, reasons, and what would turn it. */
export function reportOf({
  question,
  context,
  maps,
  air,
  state,
  size,
  finished,
  relaxed,
}: Found): SearchReport {
  const rotors = rotorsOfMaps(maps, air);
  const full = { ...context, rotors };
  const ready = new Map([...rotors].map(([id, { facts }]) => [id, facts]));
  const folds = foldScored(state.top, question.wants);
  const rows = folds.slice(0, LISTED).flatMap(({ kept, alike }) => {
    const scored = state.top[kept];
    if (scored === undefined) return [];
    const craft = resolveCandidate(question.template, scored.choice, context.shelf, ready);
    return craft.ok ? [{ scored, craft: craft.value, alike: alike.length }] : [];
  });
  const crafts = rows.map(({ craft }) => craft);
  const stability =
    crafts.length > 1
      ? rankStability(drawBuilds(crafts, full), question.wants, question.riskCost)
      : undefined;
  const [first] = rows;
  const list = rows.map(({ scored, craft, alike }, index): ListedBuild => {
    const share = stability?.places[index]?.[0];
    const { measures } = assessCraft(craft, full);
    const against = first !== undefined && index > 0 ? first.scored : undefined;
    return {
      build: named(craft),
      parts: namesOf(craft),
      standing: scored.standing,
      risks: scored.risks,
      measures: question.wants.flatMap(({ measure }) => measures.find(({ id }) => id === measure) ?? []),
      ...(share === undefined ? {} : { first: share }),
      alike,
      reasons: against === undefined ? [] : reasonsBetween(question, against, scored),
      flips: against === undefined ? [] : flipsBetween(question, against, scored),
    };
  });
  const leanings = first === undefined ? undefined : leaningsOf(first.craft, full);
  return {
    brief: context.brief.name,
    template: question.template.name,
    size,
    counts: state.counts,
    finished,
    wants: question.wants,
    limits: question.limits,
    list,
    front: state.front.map(pointOf),
    wider: relaxed.map(({ best, ...rest }) => {
      const craft = best && resolveCandidate(question.template, best.choice, context.shelf, ready);
      return { ...rest, ...(craft?.ok ? { best: namesOf(craft.value) } : {}) };
    }),
    draws: stability?.draws ?? 0,
    error: stability?.error ?? 0,
    ...(leanings === undefined ? {} : { leanings }),
  };
}

function namesOf({ parts }: Craft): readonly string[] {
  const [motor, propeller] = [parts.motors[0], parts.propellers[0]];
  return [parts.frame, motor, propeller, parts.pack, parts.controllers, parts.flightController].flatMap(
    (part) => (part === undefined ? [] : [part.name]),
  );
}

const named = ({ build, parts }: Craft): Build => {
  const { note: _, ...rest } = build;
  const names = [parts.frame, parts.motors[0], parts.pack].flatMap((part) =>
    part === undefined ? [] : [part.name],
  );
  return { ...rest, name: names.join(', ').slice(0, 200) };
};

const pointOf = ({ values }: Scored): FrontPoint => ({
  cost: values['first-flight-cost'] ?? 0,
  mass: values['all-up-mass'] ?? 0,
  time: values['flown-time'] ?? 0,
});

function leaningsOf(craft: Craft, context: SearchContext): SearchReport['leanings'] {
  const doubted = doubtedCraft(craft, context);
  const nominal = doubted.ok ? doubted.value.figures['flown-time'] : undefined;
  if (!doubted.ok || nominal === undefined) return undefined;
  return {
    label: 'minutes flown',
    quantity: 'time',
    nominal,
    bars: tornado(doubted.value, 'flown-time'),
  };
}
