import type { Ref } from 'react';
import type { Finding } from '../../assess/types.ts';
import { SeverityMark } from './SeverityMark.tsx';

interface Props {
  readonly findings: readonly Finding[];
  readonly listRef?: Ref<HTMLOListElement>;
  /** Told in the place of notes when there are none. */
  readonly none: string;
}

/** Findings as notes in the margin; the stage ties them to the drawing. */
export function MarginNotes({ findings, listRef, none }: Props) {
  if (findings.length === 0) return <p className="no-notes">{none}</p>;
  return (
    <ol className="notes" ref={listRef}>
      {findings.map((finding, i) => (
        <li key={finding.id} className={`margin-note ${finding.severity}`} data-note={finding.id}>
          <span className="note-head">
            <SeverityMark severity={finding.severity} />
            <span className="note-number" aria-hidden="true">
              {i + 1}
            </span>
          </span>
          <p className="note-says">{finding.says}</p>
          <p className="note-remedy">{finding.remedy}</p>
        </li>
      ))}
    </ol>
  );
}
