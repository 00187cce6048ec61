import { SeverityMark } from '../parts/SeverityMark.tsx';
import { useWords } from '../state/manner.ts';
import { TryIt } from '../trial/TryIt.tsx';
import type { Note } from './useTies.ts';

interface Props {
  readonly notes: readonly Note[];
  /** Told in the place of notes when there are none. */
  readonly none: string;
}

/** Findings as notes in the margin; the stage ties them to the drawing. */
export function MarginNotes({ notes, none }: Props) {
  const words = useWords();
  if (notes.length === 0) return <p className="no-notes">{none}</p>;
  return (
    <ol className="notes">
      {notes.map(({ key, finding }, i) => (
        <li key={key} className={`margin-note ${finding.severity}`}>
          <span className="note-head">
            <SeverityMark severity={finding.severity} />
            <span className="note-number" aria-hidden="true">
              {i + 1}
            </span>
          </span>
          <p className="note-says">{words(finding.says)}</p>
          <p className="note-remedy">{words(finding.remedy)}</p>
          <TryIt finding={finding} />
        </li>
      ))}
    </ol>
  );
}
