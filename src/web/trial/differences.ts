import type { Assessment } from '../../assess/assessment.ts';
import type { Finding, Measure } from '../../assess/types.ts';

export interface Difference {
  readonly before: Measure;
  readonly after: Measure;
}

export interface Differences {
  readonly gone: readonly Finding[];
  readonly come: readonly Finding[];
  /** The measures that move most, the most telling first. */
  readonly moved: readonly Difference[];
}

const MOST = 7;
/** Under this share of the value nobody would notice. */
const NOTICED = 0.004;

/** What a change does: findings that go and come, figures that move. Both sides worked out to the same depth. */
export function differencesOf(before: Assessment, after: Assessment): Differences {
  const says = ({ id, place }: Finding): string => `${id} ${place?.x ?? ''} ${place?.y ?? ''}`;
  const had = new Set(before.findings.map(says));
  const has = new Set(after.findings.map(says));
  const moved = after.measures.flatMap((now) => {
    const was = before.measures.find(({ id }) => id === now.id);
    if (was === undefined) return [];
    const size = Math.abs(now.value - was.value) / Math.max(Math.abs(was.value), Math.abs(now.value), 1e-12);
    return size < NOTICED ? [] : [{ before: was, after: now, size }];
  });
  return {
    gone: before.findings.filter((finding) => !has.has(says(finding))),
    come: after.findings.filter((finding) => !had.has(says(finding))),
    moved: moved.toSorted((a, b) => b.size - a.size).slice(0, MOST),
  };
}
