import type { Brief } from '../../build/schema/brief.ts';
import { glued } from '../parts/glued.ts';
import { useAnswers } from '../state/answers.ts';
import { rethink, useDesk } from '../state/desk.ts';

interface Line {
  readonly id: string;
  readonly name: string;
  /** In words: names alone tell a newcomer nothing. */
  readonly kind: string;
  readonly owned: boolean;
}

/** `flightController` as a person says it. */
const kindWords = (kind: string): string =>
  kind === 'bench' ? 'tool' : kind.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

/** Everything on the bill beside the aircraft: what is at hand already is not bought. */
export function Owned({ brief }: { readonly brief: Brief }) {
  const open = useDesk((desk) => desk.open);
  const view = useAnswers((answers) => answers.views[open]);
  const shelf = useAnswers((answers) => answers.shelf);
  if (view?.ok !== true) return null;
  const rows = new Map(shelf.map((row) => [row.id, row]));
  const onBill = new Map<string, Line>();
  for (const { id: line, what, owned } of view.assessment.money.lines) {
    // Lines are named `group: part`.
    const id = line.slice(line.indexOf(': ') + 2);
    const kind = rows.get(id)?.kind;
    if (kind !== undefined && !onBill.has(id))
      onBill.set(id, { id, name: what, kind: kindWords(kind), owned });
  }
  const kinds = new Set<string>([...onBill.keys()].flatMap((id) => rows.get(id)?.kind ?? []));
  const others = brief.alreadyOwns.filter((id) => !onBill.has(id) && !kinds.has(id));
  const have = (id: string, owned: boolean) =>
    rethink((now) => ({
      ...now,
      alreadyOwns: owned
        ? [...new Set([...now.alreadyOwns, id])]
        : // A kind at hand covers every part of it.
          now.alreadyOwns.filter((each) => each !== id && each !== rows.get(id)?.kind),
    }));
  return (
    <fieldset className="question-group">
      <legend>What is at hand already?</legend>
      <div className="choices owned-choices">
        {[...onBill.values()].map(({ id, name, kind, owned }) => (
          <label key={id} className="tick">
            <input type="checkbox" checked={owned} onChange={(event) => have(id, event.target.checked)} />
            <span>
              {glued(name)} <small>{kind}</small>
            </span>
          </label>
        ))}
        {others.map((id) => (
          <label key={id} className="tick">
            <input type="checkbox" checked onChange={() => have(id, false)} />
            {rows.get(id)?.name ?? id}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
