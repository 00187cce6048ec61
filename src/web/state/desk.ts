import { temporal } from 'zundo';
import { create } from 'zustand';
import type { Build } from '../../build/schema/build.ts';
import type { Want } from '../../choose/wants.ts';

interface DeskState {
  /** Every build on the desk as it stands, by id. */
  readonly builds: Readonly<Record<string, Build>>;
  /** The same as they came. */
  readonly asShipped: Readonly<Record<string, Build>>;
  /** The build that the sheets show. */
  readonly open: string;
  /** What counts when they are compared, and how much. */
  readonly wants: readonly Want[];
}

/** The user's work: what undo goes back over. Answers of the worker live in `answers.ts`. */
export const useDesk = create<DeskState>()(
  temporal((): DeskState => ({ builds: {}, asShipped: {}, open: '', wants: [] }), {
    limit: 200,
    // Opening another build is no step of its own, but undo returns to the build it changes.
    equality: (past, now) => past.builds === now.builds && past.wants === now.wants,
  }),
);

const history = () => useDesk.temporal.getState();

/** Lays the builds that ship with the page on the desk; nothing to undo before that. */
export function layOut(
  builds: readonly { readonly id: string; readonly build: Build }[],
  wants: readonly Want[],
): void {
  const byId = Object.fromEntries(builds.map(({ id, build }) => [id, build]));
  useDesk.setState({ builds: byId, asShipped: byId, open: builds[0]?.id ?? '', wants });
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

/** Gives a want another weight; a drag is one step of undo, as with `drag`. */
export function weigh(measure: string, weight: number): void {
  const { wants } = useDesk.getState();
  useDesk.setState({ wants: wants.map((want) => (want.measure === measure ? { measure, weight } : want)) });
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
