import { temporal } from 'zundo';
import { create } from 'zustand';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { CrashNotes } from '../../build/schema/crashLogFile.ts';
import { usualWants, type Want } from '../../choose/wants.ts';
import type { OpenBuild } from '../worker/protocol.ts';
import { freeId } from './freeId.ts';

export interface DeskState {
  /** Every build on the desk as it stands, by id. */
  readonly builds: Readonly<Record<string, Build>>;
  /** The same as they came: shipped, copied, or read from a file. */
  readonly came: Readonly<Record<string, Build>>;
  /** The pilot's own crash logs, by the build that was flown. */
  readonly logs: Readonly<Record<string, CrashNotes>>;
  /** Not compared with the rest on the first sheet. */
  readonly aside: readonly string[];
  /** The build that the sheets show. */
  readonly open: string;
  /** What they are for; absent until the demo is read. */
  readonly brief?: Brief;
  /** What counts when they are compared, and how much. */
  readonly wants: readonly Want[];
}

/** The user's work: what undo goes back over. Answers of the worker live in `answers.ts`. */
export const useDesk = create<DeskState>()(
  temporal((): DeskState => ({ builds: {}, came: {}, logs: {}, aside: [], open: '', wants: [] }), {
    limit: 200,
    // Opening another build is no step of its own, but undo returns to the build it changes.
    equality: (past, now) =>
      past.builds === now.builds &&
      past.logs === now.logs &&
      past.wants === now.wants &&
      past.brief === now.brief &&
      past.aside === now.aside,
  }),
);

/** As many as can be compared side by side. */
export const MOST_COMPARED = 8;

const history = () => useDesk.temporal.getState();

/** Lays builds and their brief on an empty desk; nothing to undo before that. */
export function layOut(
  builds: readonly OpenBuild[],
  brief: Brief,
  rest: Partial<Pick<DeskState, 'wants' | 'open' | 'aside'>> = {},
): void {
  const byId = Object.fromEntries(builds.map(({ id, build }) => [id, build]));
  useDesk.setState({
    builds: byId,
    came: Object.fromEntries(builds.map(({ id, came }) => [id, came])),
    logs: logsOf(builds),
    aside: rest.aside ?? builds.slice(MOST_COMPARED).map(({ id }) => id),
    open: rest.open !== undefined && byId[rest.open] ? rest.open : (builds[0]?.id ?? ''),
    brief,
    wants: rest.wants ?? usualWants(brief.purpose),
  });
  history().clear();
}

/** The logs that came with builds. */
export const logsOf = (builds: readonly OpenBuild[]): DeskState['logs'] =>
  Object.fromEntries(builds.flatMap(({ id, log }) => (log === undefined ? [] : [[id, log]])));

export const openBuild = (id: string): void => useDesk.setState({ open: id });

/** Changes a build, the open one unless told; one step of undo. */
export function change(edit: (build: Build) => Build, id = useDesk.getState().open): void {
  const { builds } = useDesk.getState();
  const build = builds[id];
  if (build !== undefined) useDesk.setState({ builds: { ...builds, [id]: edit(build) } });
}

/** Writes a build's crash log anew, or puts it away; one step of undo. */
export function noteCrashes(id: string, notes: CrashNotes | undefined): void {
  const { [id]: _, ...rest } = useDesk.getState().logs;
  useDesk.setState({ logs: notes === undefined ? rest : { ...rest, [id]: notes } });
}

/** As `change`, many in one gesture: the first makes a step of undo, the rest join it until `settle`. */
export function drag(edit: (build: Build) => Build): void {
  change(edit);
  history().pause();
}

/** Puts another build on the desk and opens it; the oldest beyond what can be compared stays in view. */
export function addBuild(build: Build): string {
  const { builds, came, aside } = useDesk.getState();
  const id = freeId(build.name, builds);
  const compared = Object.keys(builds).length - aside.length;
  useDesk.setState({
    builds: { ...builds, [id]: build },
    came: { ...came, [id]: build },
    aside: compared >= MOST_COMPARED ? [...aside, id] : aside,
    open: id,
  });
  return id;
}

/** Takes a build off the desk; the last one stays. Undo brings it back. */
export function removeBuild(id: string): void {
  const { builds, open, aside, logs } = useDesk.getState();
  const { [id]: gone, ...rest } = builds;
  const { [id]: _, ...otherLogs } = logs;
  const next = Object.keys(rest)[0];
  if (gone === undefined || next === undefined) return;
  useDesk.setState({
    builds: rest,
    logs: otherLogs,
    open: open === id ? next : open,
    aside: aside.filter((each) => each !== id),
  });
}

/** Puts a build among the compared, or lays it aside. */
export function compareBuild(id: string, compared: boolean): void {
  const { aside } = useDesk.getState();
  useDesk.setState({ aside: compared ? aside.filter((each) => each !== id) : [...aside, id] });
}

/** Changes the brief; with its purpose the usual weights change too. */
export function rethink(edit: (brief: Brief) => Brief): void {
  const { brief } = useDesk.getState();
  if (brief === undefined) return;
  const next = edit(brief);
  const other = next.purpose !== brief.purpose;
  useDesk.setState({ brief: next, ...(other ? { wants: usualWants(next.purpose) } : {}) });
}

/** As `rethink`, while a mark is slid. */
export function rethinkSliding(edit: (brief: Brief) => Brief): void {
  rethink(edit);
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
  const { came, open } = useDesk.getState();
  const first = came[open];
  if (first !== undefined) change(() => first);
}

/** Puts a whole desk in place of this one; one step of undo. */
export function lay(
  state: Pick<DeskState, 'builds' | 'came' | 'logs' | 'aside' | 'open' | 'wants'> & { brief: Brief },
): void {
  useDesk.setState(state);
}

export const undo = (): void => history().undo();
export const redo = (): void => history().redo();
