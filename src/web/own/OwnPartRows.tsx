import { useEffect, useState } from 'react';
import { exportShelf } from '../desk/files.ts';
import { useAnswers } from '../state/answers.ts';
import { tell } from '../state/notices.ts';
import { useShelfHistory } from '../state/shelfHistory.ts';
import { takeShelf, theWorkers, turnShelf } from '../state/work.ts';
import type { OwnPart } from '../worker/ownPartProtocol.ts';
import { changePart, enterPart, removePart } from './ownPart.ts';

async function turn(way: 'back' | 'forward'): Promise<void> {
  const reasons = await turnShelf(way);
  if (reasons.length > 0) tell('own-part', 'Your shelf can not be put back as it was:', reasons);
}

/** The user's own shelf: enter, change and take off parts, save it as a file. */
export function OwnPartRows() {
  const ownShelf = useAnswers((answers) => answers.ownShelf);
  const { past, future } = useShelfHistory();
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
          {past.length > 0 && (
            <button type="button" className="plain-button" onClick={() => void turn('back')}>
              take the last change back<span className="unseen"> of your parts</span>
            </button>
          )}
          {future.length > 0 && (
            <button type="button" className="plain-button" onClick={() => void turn('forward')}>
              make it again<span className="unseen">: the change of your parts taken back</span>
            </button>
          )}
        </li>
      </ul>
    </section>
  );
}
