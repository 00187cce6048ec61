import type { ReactNode } from 'react';
import type { Comparison, Reason } from '../../choose/compare.ts';
import type { RankStability } from '../../choose/rankStability.ts';
import { RISK_COST } from '../../choose/standing.ts';
import { type Manner, sayFigure } from '../../report/sayFigure.ts';
import { localNumber } from '../state/decimalMark.ts';
import { useWords } from '../state/manner.ts';
import type { Candidate } from './candidates.ts';
import type { Flip } from './flips.ts';
import { measureName } from './measureName.ts';
import { Sureness } from './Sureness.tsx';
import { sayFlippedValue } from './sayFlip.ts';

interface Props {
  readonly candidates: readonly Candidate[];
  readonly comparison: Comparison;
  readonly turning: readonly Flip[];
  readonly stability: RankStability | undefined;
  /** Of the drawing under way, 0 to 1; absent when none is. */
  readonly share: number | undefined;
  /** Of the full assessments that are in, 0 to 1. */
  readonly worked: number;
  readonly manner: Manner;
}

const MOST = 4;

/** Which one leads, what speaks for it and for the next, how sure that is, and what would turn it. */
export function Verdict({ candidates, comparison, turning, stability, share, worked, manner }: Props) {
  const words = useWords();
  const [first = 0, second = 1] = comparison.order;
  const [leader, next] = [candidates[first], candidates[second]];
  if (leader === undefined || next === undefined) return null;
  const speaksFor = (side: Reason['speaksFor']) =>
    comparison.reasons.filter((reason) => reason.speaksFor === side).slice(0, MOST);
  const label = (measure: string) =>
    comparison.rows.find((row) => row.id === measure)?.label ?? measureName(measure);
  const stopped = candidates.filter((_, i) => (comparison.columns[i]?.stops ?? 0) > 0);
  const lines = (reasons: readonly Reason[], one: Candidate, other: Candidate) =>
    reasons.map((reason) => (
      <li key={reason.measure}>
        {words(reason.label)}: <b>{figureOf(one, reason.measure, manner)}</b> against{' '}
        {figureOf(other, reason.measure, manner)}
        <small>
          {pointsOf(reason.weight)},{' '}
          {reason.difference === 'clear' ? 'clear of the bands' : 'inside the bands'}
        </small>
      </li>
    ));
  return (
    <section className="verdict" aria-live="polite">
      <h2>
        <span className="balloon">{leader.letter}</span> {leader.name} leads
        <small>{margin(comparison, first, second)}</small>
      </h2>
      <Sureness {...{ candidates, stability, share, worked }} order={comparison.order} />
      <div className="verdict-columns">
        <div>
          <h3>For it, beside {next.letter}</h3>
          <ul>{saidOr(riskLine(comparison, first, second), lines(speaksFor('leader'), leader, next))}</ul>
        </div>
        <div>
          <h3>
            For {next.letter} {next.name}, the next
          </h3>
          <ul>{saidOr(riskLine(comparison, second, first), lines(speaksFor('runner-up'), next, leader))}</ul>
        </div>
        <div>
          <h3>What would turn it</h3>
          <ul>
            {turning.slice(0, MOST - 1).map((flip) => (
              <li key={flip.measure}>
                {label(flip.measure)}: <b>{candidates[flip.leader]?.letter}</b> leads if it counts{' '}
                {flip.to > flip.from
                  ? words(`${flip.to} or more`)
                  : flip.to === 0
                    ? 'nothing'
                    : words(`${flip.to} or less`)}
                <small>now {words(String(flip.from))}</small>
              </li>
            ))}
            {turning.length === 0 && comparison.wants.length > 0 && <li>No single weight turns it.</li>}
            {comparison.flips.flatMap((flip) =>
              flip.kind === 'value' ? (
                <li key={`value ${flip.measure}`}>
                  {label(flip.measure)}: <b>{next.letter}</b> draws level if {leader.letter} has{' '}
                  {sayFlippedValue(flip, manner)}
                </li>
              ) : (
                []
              ),
            )}
            {stopped.length > 0 && (
              <li>
                {stopped.map(({ letter }) => letter).join(', ')} stand{stopped.length === 1 ? 's' : ''} last
                for a stop; mend it and it counts again.
              </li>
            )}
          </ul>
        </div>
      </div>
    </section>
  );
}

/** What speaks for a build, or that nothing does: a heading with nothing under it would puzzle. */
const saidOr = (risks: ReactNode, lines: readonly ReactNode[]): ReactNode =>
  risks || lines.length > 0 ? (
    <>
      {risks}
      {lines}
    </>
  ) : (
    <li>Nothing that counts here.</li>
  );

function figureOf({ measures }: Candidate, id: string, manner: Manner): string {
  const measure = measures.find((each) => each.id === id);
  if (measure === undefined) return 'not known';
  const { text, unit } = sayFigure(measure, manner);
  return unit === '' ? text : `${text} ${unit}`;
}

const pointsOf = (share: number): string => `${localNumber(100 * share, 1)} points`;

/** How far ahead, in words that do not claim more than the bands allow. */
function margin({ columns }: Comparison, first: number, second: number): string {
  const [a, b] = [columns[first]?.standing, columns[second]?.standing];
  if (a === undefined || b === undefined) return '';
  const points = Math.round((a - b) * 100);
  const standing = `${Math.round(a * 100)} of 100, the next ${Math.round(b * 100)}`;
  return points <= 3 ? `by a hair: ${standing}` : standing;
}

/** Told on the side of the one with fewer. */
function riskLine({ columns }: Comparison, one: number, other: number) {
  const [a, b] = [columns[one], columns[other]];
  if (a === undefined || b === undefined || a.fitRisks >= b.fitRisks) return null;
  return (
    <li>
      risks of fit to mend or accept: <b>{a.fitRisks}</b> against {b.fitRisks}
      <small>{pointsOf(RISK_COST * (b.fitRisks - a.fitRisks))}</small>
    </li>
  );
}
