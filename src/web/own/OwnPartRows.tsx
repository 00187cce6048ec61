import { useEffect, useState } from 'react';
import { exportShelf } from '../desk/files.ts';
import { useAnswers } from '../state/answers.ts';
import { takeShelf, theWorkers } from '../state/work.ts';
import type { OwnPart } from '../worker/ownPartProtocol.ts';
import { changePart, enterPart, removePart } from './ownPart.ts';

/** The user's own shelf: enter, change and take off parts, save it as a file. */
export function OwnPartRows() {
  const ownShelf = useAnswers((answers) => answers.ownShelf);
  const [parts, setParts] = useState<readonly OwnPart[]>([]);
  useEffect(() => {
    let stale = false;
    if (ownShelf === undefined) setParts([]);
    else
      void theWorkers()
        .quick.ownParts(ownShelf)
        .then((list) => {
          if (!stale) setParts(list);
        });
    return () => {
      stale = true;
    };
  }, [ownShelf]);
  return (
    <section className="dialog-part">
      <h3>Your own parts</h3>
      {parts.length === 0 && (
        <p className="own-note">
          None yet. A shop's listing is enough: a few fields, and the rest is inferred and marked so. They lie
          over the shelf and stay apart from it.
        </p>
      )}
      <ul className="desk-list">
        {parts.map((part) => (
          <li key={part.id}>
            <span>
              {part.name} <small>{part.draft.kind.replace(/([A-Z])/g, ' $1').toLowerCase()}</small>
            </span>
            <button type="button" className="plain-button" onClick={() => changePart(part)}>
              change<span className="unseen"> {part.name}</span>
            </button>
            <button type="button" className="plain-button" onClick={() => void removePart(part)}>
              remove<span className="unseen"> {part.name}</span>
            </button>
          </li>
        ))}
        <li>
          <button type="button" className="plain-button" onClick={() => enterPart('motor')}>
            enter a part
          </button>
          {ownShelf !== undefined && (
            <>
              <button type="button" className="plain-button" onClick={exportShelf}>
                save file<span className="unseen"> of your parts</span>
              </button>
              <button type="button" className="plain-button" onClick={() => void takeShelf(undefined)}>
                take all off the shelf
              </button>
            </>
          )}
        </li>
      </ul>
    </section>
  );
}
