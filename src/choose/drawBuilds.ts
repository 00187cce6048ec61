import { type AssessContext, assessCraft } from '../assess/assess.ts';
import type { MoneyReport } from '../assess/assessment.ts';
import type { Craft } from '../build/craft.ts';
import { doubtedCraft } from './doubtedCraft.ts';
import { latinHypercube } from './latinHypercube.ts';
import { normalQuantile } from './normalQuantile.ts';
import { SEARCH_MEASURES } from './searchMeasures.ts';
import { type Candidate, candidateOf } from './standing.ts';

/** Some builds with every unsure input drawn. Plain data: what is wanted of them may change afterwards. */
export interface DrawnBuilds {
  /** By draw, then by build in the order given; the measures of `SEARCH_MEASURES`. */
  readonly draws: readonly (readonly Candidate[])[];
}

/** Draws where nothing else is asked, and their seed: the same answer every time, on page and command line. */
export const USUAL_DRAWS = { draws: 200, seed: 1 } as const;

/** One standard deviation of a listed price, relative; as the money bands take it (common practice, no source). */
const PRICE_SPREAD = 0.08;

/**
 * Draws every input of some builds within its doubt (Latin hypercube, log-normal); an input that two builds
 * share, such as the same motor, the same price line or the pilot, is drawn once for both: what they have in
 * common cannot turn their order. Findings keep their nominal severity; measures without a doubted
 * figure keep their value.
 *
 * @param seed whole number; the same seed gives the same draws
 * @param told the share that is done, 0 to 1, now and then
 */
export function drawBuilds(
  crafts: readonly Craft[],
  context: AssessContext,
  { draws, seed }: { readonly draws: number; readonly seed: number } = USUAL_DRAWS,
  told: (share: number) => void = () => undefined,
): DrawnBuilds {
  const assessments = crafts.map((craft) => assessCraft(craft, context));
  const nominal = assessments.map(candidateOf);
  const doubted = crafts.map((craft) => doubtedCraft(craft, context));
  const keys = new Map<string, number>();
  const know = (key: string) => keys.set(key, keys.get(key) ?? keys.size);
  for (const each of doubted) {
    if (!each.ok) continue;
    for (const factor of each.value.factors) for (const { key } of factor.inputs) know(key);
  }
  for (const { money } of assessments) for (const line of money.lines) know(priceKey(line.id));

  const sample = latinHypercube(draws, Math.max(keys.size, 1), seed);
  const drawn: Candidate[][] = [];
  for (let draw = 0; draw < draws; draw++) {
    const normal = (key: string) => normalQuantile(sample[draw * keys.size + (keys.get(key) ?? 0)] as number);
    drawn.push(
      nominal.map((candidate, index): Candidate => {
        const own = doubted[index];
        const money = assessments[index]?.money;
        if (own?.ok !== true || money === undefined) return candidate;
        const values = moved(candidate.values, {
          ...own.value.figuresAt(normal),
          'first-flight-cost': costOf(money, normal),
        });
        return { ...candidate, values };
      }),
    );
    if (draw % 10 === 9) told((draw + 1) / draws);
  }
  return { draws: drawn };
}

const priceKey = (line: string) => `price|${line}`;

/** Values of the wanted measures, those that were drawn in place of the nominal ones. */
function moved(
  nominal: Candidate['values'],
  drawn: Readonly<Record<string, number | undefined>>,
): Candidate['values'] {
  const values: Record<string, number> = {};
  for (const id of Object.keys(SEARCH_MEASURES)) {
    const known = nominal[id];
    if (known !== undefined) values[id] = drawn[id] ?? known;
  }
  return values;
}

function costOf({ lines }: MoneyReport, normal: (key: string) => number): number {
  return lines
    .filter((line) => !line.owned)
    .reduce(
      (sum, line) => sum + line.count * line.unitPrice * Math.exp(PRICE_SPREAD * normal(priceKey(line.id))),
      0,
    );
}
