import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { PART_KINDS, type PartKind } from '../../build/schema/partKinds.ts';
import { useAnswers } from '../state/answers.ts';
import { theWorkers } from '../state/work.ts';
import type { DraftRead, PartDraft, PartField, Told } from '../worker/ownPartProtocol.ts';
import { keepPart, leavePart } from './ownPart.ts';
import { PartFieldRow } from './PartFieldRow.tsx';
import { useDraft } from './useDraft.ts';

const inWords = (kind: PartKind): string => kind.replace(/([A-Z])/g, ' $1').toLowerCase();

/** A part as a shop lists it: a few plain fields, the rest inferred and shown as such. */
export function OwnPartForm({ first }: { readonly first: PartDraft }) {
  const [draft, setDraft] = useState(first);
  const [fields, setFields] = useState<readonly PartField[]>([]);
  const [all, setAll] = useState(false);
  // Faults of fields nobody has come to yet would only shout.
  const [asked, setAsked] = useState(first.id !== undefined);
  const [refused, setRefused] = useState<readonly string[]>([]);
  // What was found when it was to be kept, until something is told anew.
  const [held, setHeld] = useState<{ readonly draft: PartDraft; readonly read: DraftRead }>();
  const form = useRef<HTMLFormElement>(null);
  const { read: typed, drives } = useDraft(draft);
  const read = held?.draft === draft ? held.read : typed;
  const { kind } = draft;
  useEffect(() => {
    let stale = false;
    void theWorkers()
      .quick.partFields(kind)
      .then((list) => {
        if (!stale) setFields(list);
      });
    return () => {
      stale = true;
    };
  }, [kind]);
  useLayoutEffect(() => {
    if (held?.read.ok !== false) return;
    const first = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    first?.focus({ preventScroll: true });
    first?.closest('.own-field')?.scrollIntoView({ block: 'center' });
  }, [held]);
  const faults = read?.ok === false ? read.faults : [];
  // A group that is missing is told as a whole, and wanted is what it must hold.
  const about = ({ path, required }: PartField, fault: { readonly path: string }): boolean =>
    fault.path === path || (required && path.startsWith(`${fault.path}.`));
  const faultOf = (field: PartField): string | undefined =>
    faults.find((fault) => about(field, fault) && (asked || !fault.missing))?.says;
  const tell = (path: string, told: Told) =>
    setDraft((now) => ({ ...now, told: { ...now.told, [path]: told } }));
  const shown = fields.filter(
    (field) =>
      all ||
      field.first ||
      draft.told[field.path] !== undefined ||
      (asked && faults.some((fault) => about(field, fault))),
  );
  const rest = fields.length - shown.length;
  const missing = faults.filter((fault) => fault.missing).length;
  const keep = async () => {
    // What stands there now, not what stood there when it was last looked at.
    const now = await theWorkers().quick.draftPart(draft, useAnswers.getState().ownShelf);
    if (now.ok) setRefused(await keepPart(now.raw));
    else {
      setAsked(true);
      setHeld({ draft, read: now });
    }
  };
  return (
    <form
      className="own-part"
      ref={form}
      // Its own words stand at the fields, in the language of the page.
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void keep();
      }}
    >
      <div className="own-fields">
        <div className="own-field">
          <label htmlFor="own-kind">kind of part</label>
          <span className="own-value">
            <select
              id="own-kind"
              className="text-field"
              value={kind}
              disabled={draft.id !== undefined}
              onChange={(event) => {
                const next = PART_KINDS.find((each) => each === event.target.value);
                if (next) setDraft((now) => ({ ...now, kind: next }));
              }}
            >
              {PART_KINDS.map((each) => (
                <option key={each} value={each}>
                  {inWords(each)}
                </option>
              ))}
            </select>
          </span>
          <small>what it is decides what is asked</small>
        </div>
        {shown.map((field) => (
          <PartFieldRow
            key={`${kind} ${field.path}`}
            field={field}
            told={draft.told[field.path]}
            onTell={(told) => tell(field.path, told)}
            fault={faultOf(field)}
            currency={draft.currency}
            moves={
              drives?.find(({ path }) => path === field.path || path.startsWith(`${field.path}.`))?.moves
            }
          />
        ))}
        {(rest > 0 || all) && (
          <button type="button" className="plain-button" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? 'only the usual fields' : `${rest} more it may tell`}
          </button>
        )}
      </div>
      <aside className="own-inferred" aria-live="polite">
        <h3>Inferred from what you tell</h3>
        {read?.ok ? (
          <>
            <dl>
              {read.inferred.map(({ label, text, source }) => (
                <div key={label}>
                  <dt>{label}</dt>
                  <dd>
                    <b>{text}</b> <small>{source}</small>
                  </dd>
                </div>
              ))}
            </dl>
            {read.inferred.length === 0 && <p>Nothing: the part tells all that is needed.</p>}
            <p className="own-note">
              {drives === undefined
                ? 'Trying what each value drives in the open build.'
                : 'A value told here takes the place of the one inferred. What each moves is tried in the open build, 5 % more at a time.'}
            </p>
          </>
        ) : (
          <p>
            {missing > 0
              ? `${missing} ${missing === 1 ? 'field' : 'fields'} to go. Then everything a shop leaves out (windings, sizes, inertia) is worked out from the rest and shown here with its source.`
              : 'Once the marked fields read well, what a shop leaves out is worked out from the rest and shown here.'}
          </p>
        )}
        {refused.map((reason) => (
          <p key={reason} className="fault" role="alert">
            {reason}
          </p>
        ))}
        <div className="try-buttons">
          <button type="submit" className="try-button keep">
            keep it on my shelf
          </button>
          <button type="button" className="plain-button" onClick={leavePart}>
            leave it
          </button>
        </div>
        <p className="own-note">
          Your shelf stays apart from the shipped one, in this browser; the desk saves it as a shelf file.
        </p>
      </aside>
    </form>
  );
}
