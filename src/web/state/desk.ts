import { temporal } from 'zundo';
import { create } from 'zustand';
import type { Build } from '../../build/schema/build.ts';

interface DeskState {
  /** Every build on the desk as it stands, by id. */
  readonly builds: Readonly<Record<string, Build>>;
  /** The same as they came. */
  readonly asShipped: Readonly<Record<string, Build>>;
  /** The build that the sheets show. */
  readonly open: string;
}

/** The user's work: what undo goes back over. Answers of the worker live in `answers.ts`. */
export const useDesk = create<DeskState>()(
  temporal((): DeskState => ({ builds: {}, asShipped: {}, open: '' }), {
    limit: 200,
    // Opening another build is no step of its own, but undo returns to the build it changes.
    equality: (past, now) => past.builds === now.builds,
    partialize: ({ builds, asShipped, open }) => ({ builds, asShipped, open }),
  }),
);

const history = () => useDesk.temporal.getState();

/** Lays the builds that ship with the page on the desk; nothing to undo before that. */
export function layOut(builds: readonly { readonly id: string; readonly build: Build }[]): void {
  const byId = Object.fromEntries(builds.map(({ id, build }) => [id, build]));
  useDesk.setState({ builds: byId, asShipped: byId, open: builds[0]?.id ?? '' });
  history().clear();
}

export const openBuild = (id: string): void => useDesk.setState({ open: id });

/** Changes the open build; one step of undo. */
export function change(edit: (build: Build) => Build): void {
  const { builds, open } = useDesk.getState();
  const build = builds[open];
  if (build !== undefined) useDesk.setState({ builds: { ...builds, [open]: edit(build) } });
}

/** As `change`, many in one gesture: the first makes a step of undo, the rest join it until `settle`. */
export function drag(edit: (build: Build) => Build): void {
  change(edit);
  history().pause();
}

export const settle = (): void => history().resume();

/** Takes every change to the open build back; itself one step of undo. */
export function asItCame(): void {
  const { asShipped, open } = useDesk.getState();
  const shipped = asShipped[open];
  if (shipped !== undefined) change(() => shipped);
}

export const undo = (): void => history().undo();
export const redo = (): void => history().redo();
