import type { Remote } from 'comlink';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import { usualSoftWants } from '../../choose/shortlist/usualScales.ts';
import { candidateOf, orderOf } from '../../choose/standing.ts';
import { readFragment } from '../desk/share.ts';
import { latestWins } from '../worker/latestWins.ts';
import { patched } from '../worker/patch.ts';
import type { BuildView, Desk } from '../worker/protocol.ts';
import { useAnswers } from './answers.ts';
import { addBuild, type DeskState, layOut, openBuild, rethink, useDesk } from './desk.ts';
import { extraWorker } from './extraWorker.ts';
import { joined } from './joined.ts';
import { fetchKept, startKeeping } from './keep.ts';
import { tell } from './notices.ts';
import { startParts } from './parts.ts';
import { turnTo, usePlace } from './place.ts';
import { sameKept } from './sameKept.ts';
import { rememberShelf, stepShelf } from './shelfHistory.ts';
import { isSlid } from './slid.ts';
import { useSnapshots } from './snapshots.ts';

/** The worker that answers at once, and the one that works the full assessment out. */
interface Workers {
  readonly quick: Remote<Desk>;
  readonly full: Remote<Desk>;
}

let workers: Workers | undefined;

/** @throws Error before `startWork` */
export function theWorkers(): Workers {
  if (workers === undefined) throw new Error('the workers have not been started');
  return workers;
}

/** The quick assessment. */
export const assessNow = async (build: Build, brief: Brief): Promise<BuildView> =>
  await theWorkers().quick.assess(build, brief);

interface Question {
  readonly id: string;
  readonly build: Build;
  readonly brief: Brief;
  readonly slid?: boolean;
}

/** Builds whose last answer left the airframe as it was while they were slid. */
const slidOnly = new Set<string>();

/** Fills in what was left while builds were slid, once they rest. */
async function fillIn(quick: Remote<Desk>): Promise<void> {
  for (const id of slidOnly) {
    const { builds, brief } = useDesk.getState();
    const build = builds[id];
    slidOnly.delete(id);
    if (build === undefined || brief === undefined) continue;
    const [answer] = await Promise.allSettled([followed(quick, { id, build, brief })]);
    const now = useDesk.getState();
    // Slid on meanwhile: that answer is on its way.
    if (now.builds[id] === build && now.brief === brief)
      receive(id, answer, useAnswers.getState().waiting.includes(id));
  }
}

/**
 * Whether a build is slid so that the full assessment's word on its airframe, once it is there, stands until it is
 * worked out anew: then a quick one of the same would be seen by nobody.
 */
function isSliding(id: string, now: DeskState, past: DeskState): boolean {
  const { parts, partCount } = useAnswers.getState();
  const known = Object.keys(parts[id] ?? {}).length;
  return (
    known > 0 && known === partCount && now.brief === past.brief && isSlid(past.builds[id], now.builds[id])
  );
}

/** The last answer about each build as the worker told it. */
const answers = new Map<string, { readonly number: number; readonly view: BuildView }>();

/** As `assessNow`, of a build on the desk: only what has changed since its last answer comes across. */
async function followed(
  quick: Remote<Desk>,
  { id, build, brief, slid = false }: Question,
): Promise<BuildView> {
  const had = answers.get(id);
  const { number, since, patch } = await quick.follow({
    id,
    build,
    brief,
    slid,
    ...(had === undefined ? {} : { since: had.number }),
  });
  if (slid) slidOnly.add(id);
  else slidOnly.delete(id);
  // The worker's own words: a patch on the very answer it has told, or on nothing.
  const view = patched(since === undefined ? undefined : had?.view, patch) as BuildView;
  answers.set(id, { number, view });
  return view;
}

/** Starts the workers, lays out what was kept or the demo, and keeps an answer for every build as it changes. */
export async function startWork(): Promise<void> {
  const made = { quick: extraWorker().desk, full: extraWorker().desk };
  workers = made;
  const ask = latestWins(
    (question: Question) => followed(made.quick, question),
    (id, answer, stillWaiting) => receive(id, answer, stillWaiting),
  );
  try {
    const kept = await fetchKept();
    const { brief, builds, shelf, parts, demo, faults } = await made.quick.open(kept?.files);
    await made.full.layShelf(kept?.files.shelf);
    useAnswers.setState({
      shelf,
      demo,
      partCount: parts.length,
      ...(kept?.files.shelf === undefined ? {} : { ownShelf: kept.files.shelf }),
    });
    if (kept) useSnapshots.setState({ snapshots: kept.snapshots });
    if (faults.length > 0) tell('faults', 'Some of what was kept can not be read any more:', faults);
    useDesk.subscribe((now, past) => {
      if (now.brief === undefined) return;
      for (const [id, build] of Object.entries(now.builds)) {
        if (build === past.builds[id] && now.brief === past.brief) continue;
        useAnswers.setState(({ waiting }) => ({ waiting: [...waiting.filter((other) => other !== id), id] }));
        const slid = isSliding(id, now, past);
        ask(id, { id, build, brief: now.brief, slid }, id === now.open ? 'first' : 'last');
      }
    });
    startParts(made.full, parts, () => fillIn(made.quick));
    layOut(builds, brief, kept ?? {});
    const laid = useDesk.getState();
    await takeLink(made.quick);
    await startKeeping(laid);
  } catch (error) {
    useAnswers.setState({ trouble: inWords(error) });
  }
}

/** A build that came by a link is added to the desk, under its own brief when the desk is as it ships. */
async function takeLink(quick: Remote<Desk>): Promise<void> {
  const shared = readFragment(window.location.hash);
  if (shared === undefined) return;
  window.history.replaceState(null, '', '#choice');
  if (typeof shared === 'string') return tell('link', shared);
  const { build: text, brief } = shared;
  const read = await quick.readKept({ brief, builds: [{ id: 'shared', text, came: text }] });
  const build = read.builds[0]?.build;
  if (build === undefined || read.faults.length > 0) {
    return tell('link', 'The build in the link can not be read:', read.faults);
  }
  addBuild(build);
  if (JSON.stringify(read.brief) !== JSON.stringify(useDesk.getState().brief)) {
    rethink(() => read.brief);
    tell('link', `${build.name} came by a link, with its brief: ${read.brief.name}. Undo brings yours back.`);
  } else tell('link', `${build.name} came by a link and lies on the desk.`);
  turnTo('airframe');
}

/** Lays the user's own parts over the shelf, or takes them away; every build is worked out anew. */
export const takeShelf = (text: string | undefined): Promise<readonly string[]> =>
  afterShelf(async () => {
    const { ownShelf } = useAnswers.getState();
    const reasons = await layOwnShelf(text);
    if (reasons.length === 0 && text !== ownShelf) rememberShelf(ownShelf);
    return reasons;
  });

/** The user's shelf as it was one change before, or after; refused changes nothing. */
export const turnShelf = (way: 'back' | 'forward'): Promise<readonly string[]> =>
  afterShelf(() => stepShelf(way, useAnswers.getState().ownShelf, layOwnShelf));

/** Changes of the shelf follow one another: each starts from what the last one left. */
let laying: Promise<unknown> = Promise.resolve();
function afterShelf(change: () => Promise<readonly string[]>): Promise<readonly string[]> {
  const next = laying.then(change);
  laying = next.catch(() => undefined);
  return next;
}

async function layOwnShelf(text: string | undefined): Promise<readonly string[]> {
  const { quick, full } = theWorkers();
  const laid = await quick.layShelf(text);
  if (!laid.ok) return laid.reasons;
  await full.layShelf(text);
  const { ownShelf: _, ...rest } = useAnswers.getState();
  useAnswers.setState(
    { ...rest, shelf: laid.shelf, ...(text === undefined ? {} : { ownShelf: text }) },
    true,
  );
  // A brief of the same words is another brief to those who wait for changes: all is asked anew.
  const { brief } = useDesk.getState();
  if (brief) useDesk.setState({ brief: { ...brief } });
  return [];
}

/** The sheets of a build open on the one that leads, unless the user has opened or changed one before. */
function openLeader(): void {
  const { views } = useAnswers.getState();
  const { builds, came, open, wants, brief } = useDesk.getState();
  const ids = Object.keys(builds);
  const untouched = ids.every((id) => builds[id] === came[id]);
  if (usePlace.getState().sheet !== 'choice' || open !== ids[0] || !untouched) return;
  const assessments = ids.flatMap((id) => {
    const view = views[id];
    return view?.ok === true ? [view.assessment] : [];
  });
  if (brief === undefined || assessments.length !== ids.length || assessments.length < 2) return;
  const leader = ids[orderOf(assessments.map(candidateOf), usualSoftWants(brief, wants))[0] ?? 0];
  if (leader !== undefined) openBuild(leader);
}

/** As deep as `joined` makes lists and records anew: of the answer, of the assessment, of its lists. */
const JOINED = 3;

function receive(id: string, answer: PromiseSettledResult<BuildView>, stillWaiting: boolean): void {
  const view: BuildView =
    answer.status === 'fulfilled' ? answer.value : { ok: false, reasons: [inWords(answer.reason)] };
  useAnswers.setState(({ views, quick, parts, waiting }) => ({
    quick: { ...quick, [id]: view },
    views: { ...views, [id]: sameKept(views[id], joined(view, parts[id]), JOINED) },
    waiting: stillWaiting ? waiting : waiting.filter((other) => other !== id),
  }));
  if (useAnswers.getState().waiting.length === 0) openLeader();
}

const inWords = (error: unknown): string => (error instanceof Error ? error.message : String(error));
