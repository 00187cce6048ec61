import { create } from 'zustand';

/** The user's shelf as it was before each change of this visit, and after those taken back; undefined where there was none. */
interface ShelfHistory {
  readonly past: readonly (string | undefined)[];
  readonly future: readonly (string | undefined)[];
}

export const useShelfHistory = create<ShelfHistory>()(() => ({ past: [], future: [] }));

/** Keeps the shelf that a change replaced. What was taken back before it can not be brought forward any more. */
export const rememberShelf = (before: string | undefined): void =>
  useShelfHistory.setState(({ past }) => ({ past: [...past, before], future: [] }));

/**
 * One step back or forward, as `lay` lays it; refused, nothing moves.
 *
 * @returns why it can not be laid, when it can not
 */
export async function stepShelf(
  way: 'back' | 'forward',
  now: string | undefined,
  lay: (text: string | undefined) => Promise<readonly string[]>,
): Promise<readonly string[]> {
  const { past, future } = useShelfHistory.getState();
  const from = way === 'back' ? past : future;
  if (from.length === 0) return [];
  const reasons = await lay(from.at(-1));
  if (reasons.length > 0) return reasons;
  useShelfHistory.setState(
    way === 'back'
      ? { past: past.slice(0, -1), future: [...future, now] }
      : { past: [...past, now], future: future.slice(0, -1) },
  );
  return [];
}
