import { memo } from 'react';
import type { Finding } from '../../assess/types.ts';
import { SeverityMark } from '../parts/SeverityMark.tsx';
import { useWords } from '../state/manner.ts';
import { TryIt } from '../trial/TryIt.tsx';
import type { Note } from './useTies.ts';

interface Props {
  readonly notes: readonly Note[];
  /** Those with a place on the drawing, by key: under a narrow drawing they have its flag's number. */
  readonly tied?: ReadonlySet<string>;
  /** Told in the place of notes when there are none. */
  readonly none: string;
}

/** Findings as notes in the margin; the stage ties them to the drawing. */
export const MarginNotes = memo(function MarginNotes({ notes, none, tied }: Props) {
  if (notes.length === 0) return <p className="no-notes">{none}</p>;
  return (
    <ol className="notes">
      {notes.map(({ key, finding }, i) => (
        <MarginNote key={key} finding={finding} {...(tied?.has(key) ? { number: i + 1 } : {})} />
      ))}
    </ol>
  );
});

const MarginNote = memo(function MarginNote({
  finding,
  number,
}: {
  readonly finding: Finding;
  readonly number?: number;
}) {
  const words = useWords();
  return (
    <li className={`margin-note ${finding.severity}`}>
      <span className="note-head">
        <SeverityMark severity={finding.severity} />
        {number !== undefined && (
          <span className="note-number" aria-hidden="true">
            {number}
          </span>
        )}
      </span>
      <p className="note-says">{words(finding.says)}</p>
      <p className="note-remedy">{words(finding.remedy)}</p>
      <TryIt finding={finding} />
    </li>
  );
});
