import { useAnswers } from './answers.ts';
import { type DeskState, useDesk } from './desk.ts';
import { asKeptDesk, type KeptDesk, keptDesk } from './kept.ts';
import { hush, tell } from './notices.ts';
import { useSnapshots } from './snapshots.ts';
import { readStore, writeStore } from './store.ts';

/** After the last change [ms]: short, so that a crash takes little with it. */
const REST = 250;

/** What the browser kept of an earlier visit. A store that can't be read is put aside, not thrown away. */
export async function fetchKept(): Promise<KeptDesk | undefined> {
  try {
    const raw = await readStore('now');
    if (raw === undefined) return undefined;
    const kept = asKeptDesk(raw);
    if (kept !== undefined) {
      await writeStore('before', raw);
      return kept;
    }
    await writeStore('unread', raw);
    tell(
      'unread',
      'What the browser kept of your last visit can not be read. It is put aside untouched, and the demo lies on the desk.',
    );
  } catch (error) {
    tell('store', `This browser keeps nothing here (${inWords(error)}): export what you want to have again.`);
  }
  return undefined;
}

/**
 * Keeps the desk after every change since it was `laid` out. Only one page keeps at a time, or each would undo the
 * other.
 */
export async function startKeeping(laid: DeskState): Promise<void> {
  if (!(await isAlone())) {
    tell(
      'second',
      'Quadwright is open in another tab, which keeps its own desk. What you change here lasts as long as this tab.',
    );
    return;
  }
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing = Promise.resolve();
  const save = () => {
    clearTimeout(timer);
    timer = undefined;
    writing = writing.then(saveNow);
  };
  const soon = () => {
    clearTimeout(timer);
    timer = setTimeout(save, REST);
    useAnswers.setState({ keeping: 'waiting' });
  };
  useDesk.subscribe(soon);
  useSnapshots.subscribe(soon);
  useAnswers.subscribe((now, past) => {
    if (now.ownShelf !== past.ownShelf) soon();
  });
  window.addEventListener('pagehide', () => timer !== undefined && save());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden' && timer !== undefined) save();
  });
  // A build that came by a link, or a hand quicker than the lock.
  if (useDesk.getState() !== laid) soon();
}

async function saveNow(): Promise<void> {
  const desk = useDesk.getState();
  const { brief } = desk;
  if (brief === undefined) return;
  try {
    const { ownShelf } = useAnswers.getState();
    const taken = useSnapshots.getState();
    await writeStore('now', keptDesk({ ...desk, brief }, taken.snapshots, ownShelf));
    // What has changed meanwhile is kept in its own turn.
    if (
      useDesk.getState() === desk &&
      useSnapshots.getState() === taken &&
      useAnswers.getState().ownShelf === ownShelf
    )
      useAnswers.setState({ keeping: 'kept' });
    hush('store');
  } catch (error) {
    useAnswers.setState({ keeping: 'failed' });
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    tell(
      'store',
      full
        ? 'The browser has no room left to keep your work. Everything still lies on this desk: export it before you close the tab.'
        : `The browser could not keep your work (${inWords(error)}). Everything still lies on this desk: export it before you close the tab.`,
    );
  }
}

/** True for the first page of this origin; the lock falls with the tab. Without locks every page keeps. */
async function isAlone(): Promise<boolean> {
  if (!('locks' in navigator)) return true;
  return await new Promise((answer) => {
    void navigator.locks.request('quadwright-desk', { ifAvailable: true }, async (lock) => {
      answer(lock !== null);
      if (lock !== null) await new Promise(() => undefined);
    });
  });
}

const inWords = (error: unknown): string => (error instanceof Error ? error.message : String(error));
