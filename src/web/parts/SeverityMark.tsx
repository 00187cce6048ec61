import type { Severity } from '../../assess/types.ts';

const MARKS = {
  stop: 'M1 1h10v10H1Z',
  risk: 'M6 0.8 11.6 11H0.4Z',
  note: 'M6 1.2a4.8 4.8 0 1 1 0 9.6a4.8 4.8 0 1 1 0-9.6Z',
} as const;

/** Severity by word and mark: a filled square, a triangle, a ring. Colour only repeats it. */
export function SeverityMark({
  severity,
  word = true,
}: {
  readonly severity: Severity;
  readonly word?: boolean;
}) {
  return (
    <span className={`severity ${severity}`}>
      <svg viewBox="0 0 12 12" width="11" height="11" aria-hidden="true">
        <path d={MARKS[severity]} />
      </svg>
      {word && <span>{severity}</span>}
    </span>
  );
}
