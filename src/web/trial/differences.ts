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

/** Under this share of the value nobody would notice. */
const NOTICED = 0.004;

function numbered(findings: readonly Finding[]): ReadonlyMap<string, Finding> {
  const seen = new Map<string, number>();
  return new Map(
    findings.map((finding) => {
      const number = (seen.get(finding.id) ?? 0) + 1;
      seen.set(finding.id, number);
      return [`${finding.id} ${number}`, finding];
    }),
  );
}

/** What a change does: findings that go and come, figures that move. Both sides worked out to the same depth. */
export function differencesOf(before: Assessment, after: Assessment): Differences {
  // A finding whose place has moved a little is the same one; of several with one id the last ones come and go.
  const [had, has] = [numbered(before.findings), numbered(after.findings)];
  const moved = after.measures.flatMap((now) => {
    const was = before.measures.find(({ id }) => id === now.id);
    if (was === undefined) return [];
    const size = Math.abs(now.value - was.value) / Math.max(Math.abs(was.value), Math.abs(now.value), 1e-12);
    return size < NOTICED ? [] : [{ before: was, after: now, size }];
  });
  return {
    gone: [...had].flatMap(([key, finding]) => (has.has(key) ? [] : [finding])),
    come: [...has].flatMap(([key, finding]) => (had.has(key) ? [] : [finding])),
    moved: moved.toSorted((a, b) => b.size - a.size),
  };
}
