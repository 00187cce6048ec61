import type { RankStability } from '../../choose/rankStability.ts';
import type { Candidate } from './candidates.ts';

interface Props {
  readonly candidates: readonly Candidate[];
  /** Indices of candidates, the leader first. */
  readonly order: readonly number[];
  readonly stability: RankStability | undefined;
  /** Of the drawing under way, 0 to 1; absent when none is. */
  readonly share: number | undefined;
  /** Of the full assessments that are in, 0 to 1; then what stands here is the quick answer. */
  readonly worked: number;
}

/** So many candidates at most are told in three lines on a phone. */
const FEW = 3;

/** How often each would come first if every unsure input were otherwise: or how far the drawing of it is. */
export function Sureness({ candidates, order, stability, share, worked }: Props) {
  const className = order.length > FEW ? 'sureness' : 'sureness few';
  if (stability === undefined) {
    // It has its place from the start: nothing below moves when it comes.
    return (
      <p className={className}>
        {worked < 1 ? (
          <>
            This is a first answer. Speed, wind, reserve, shake and knocks are still being worked out in full
            and may turn it <progress aria-label="worked out in full" max={1} value={worked} />
          </>
        ) : (
          share !== undefined && (
            <>
              How sure is that? Every unsure input is being drawn{' '}
              <progress aria-label="drawing the unsure inputs" max={1} value={share} />
            </>
          )
        )}
      </p>
    );
  }
  const told = order.flatMap((index) => {
    const first = Math.round(100 * (stability.places[index]?.[0] ?? 0));
    const candidate = candidates[index];
    return candidate === undefined || first === 0 ? [] : [{ candidate, first }];
  });
  const never = order.length - told.length;
  return (
    <p className={className}>
      How sure is that? Of {stability.draws} draws of every unsure input{' '}
      {told.map(({ candidate, first }, index) => (
        <span key={candidate.id}>
          {index > 0 && ', '}
          <span className="balloon">{candidate.letter}</span>
          <span className="unseen"> {candidate.name}</span> is first in <b>{first} %</b>
        </span>
      ))}
      {never > 0 && (never === 1 ? ', the other in none' : ', the others in none')}
      <small>give or take {Math.round(100 * stability.error)} %</small>
    </p>
  );
}
