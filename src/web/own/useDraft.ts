import { useEffect, useState } from 'react';
import { useAnswers } from '../state/answers.ts';
import { useDesk } from '../state/desk.ts';
import { theWorkers } from '../state/work.ts';
import type { DraftRead, Drive, PartDraft } from '../worker/ownPartProtocol.ts';
import { useOwnPart, withOwnPart } from './ownPart.ts';

/** After the last letter typed [ms]. */
const REST = 120;

/** What the worker makes of a draft as it is typed, and what its values drive in the open build. */
export function useDraft(draft: PartDraft): {
  readonly read: DraftRead | undefined;
  readonly drives: readonly Drive[] | undefined;
} {
  const [read, setRead] = useState<DraftRead>();
  const [drives, setDrives] = useState<readonly Drive[]>();
  useEffect(() => {
    let stale = false;
    const timer = setTimeout(async () => {
      const { quick, full } = theWorkers();
      const { ownShelf } = useAnswers.getState();
      const answer = await quick.draftPart(draft, ownShelf);
      if (stale) return;
      setRead(answer);
      setDrives(undefined);
      const { builds, open, brief } = useDesk.getState();
      const { entering } = useOwnPart.getState();
      const build = builds[open];
      if (!answer.ok || entering === undefined || build === undefined || brief === undefined) return;
      const carrying = withOwnPart(build, { ...entering, draft }, answer.id);
      if (carrying === undefined) return setDrives([]);
      const found = await full.drives(answer.raw, carrying, brief, ownShelf);
      if (!stale) setDrives(found);
    }, REST);
    return () => {
      stale = true;
      clearTimeout(timer);
    };
  }, [draft]);
  return { read, drives };
}
