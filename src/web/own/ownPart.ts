import { create } from 'zustand';
import type { Build } from '../../build/schema/build.ts';
import type { PartKind } from '../../build/schema/partKinds.ts';
import { slotsOf } from '../schedule/slots.ts';
import { useAnswers } from '../state/answers.ts';
import { change, useDesk } from '../state/desk.ts';
import { tell } from '../state/notices.ts';
import { takeShelf, theWorkers } from '../state/work.ts';
import type { OwnPart, PartDraft } from '../worker/ownPartProtocol.ts';

/** The part being filled in, and the place of a build that it is for. */
interface Entering {
  readonly draft: PartDraft;
  readonly put?: (build: Build, part: string) => Build;
}

export const useOwnPart = create<{ readonly entering?: Entering }>()(() => ({}));

/** Opens an empty part; kept, it goes where `put` puts it. */
export function enterPart(kind: PartKind, put?: Entering['put']): void {
  useOwnPart.setState({ entering: { draft: { kind, told: {}, ...its() }, ...(put ? { put } : {}) } });
}

export const changePart = ({ draft }: OwnPart): void =>
  useOwnPart.setState({ entering: { draft: { ...draft, ...its() } } });

/** Prices are in the brief's currency where they do not tell another. */
function its(): { readonly currency?: string } {
  const { brief } = useDesk.getState();
  return brief === undefined ? {} : { currency: brief.currency };
}

export const leavePart = (): void => useOwnPart.setState({}, true);

/** Lays the part on the user's shelf and, where a place asked for it, on board. Why it can't, when it can't. */
export async function keepPart(raw: Readonly<Record<string, unknown>>): Promise<readonly string[]> {
  const put = useOwnPart.getState().entering?.put;
  const text = await theWorkers().quick.withPart(useAnswers.getState().ownShelf, raw);
  const reasons = await takeShelf(text);
  if (reasons.length > 0) return reasons;
  if (put) change((build) => put(build, String(raw.id)));
  leavePart();
  return [];
}

/** Takes a part off the user's shelf, unless a build has it on board. */
export async function removePart({ id, name }: OwnPart): Promise<void> {
  const { ownShelf } = useAnswers.getState();
  if (ownShelf === undefined) return;
  const users = Object.values(useDesk.getState().builds).filter((build) =>
    JSON.stringify(build).includes(`"${id}"`),
  );
  if (users.length > 0) {
    const words = users.map((build) => build.name).join(', ');
    tell('own-part', `${name} is on board of ${words}: choose another part there first.`);
    return;
  }
  const reasons = await takeShelf(await theWorkers().quick.withoutPart(ownShelf, id));
  if (reasons.length > 0) tell('own-part', `${name} can not be taken off the shelf:`, reasons);
}

/** The build with the part in the place it is for, else in the first place that takes its kind. */
export function withOwnPart(build: Build, { put, draft }: Entering, id: string): Build | undefined {
  if (put) return put(build, id);
  return slotsOf(build)
    .find(({ kind, part }) => kind === draft.kind && part !== undefined)
    ?.put(build, id);
}
