import { create } from 'zustand';
import { compare } from '../../choose/compare.ts';
import { usualSoftWants } from '../../choose/shortlist/usualScales.ts';
import { useAnswers } from '../state/answers.ts';
import { MOST_COMPARED, useDesk } from '../state/desk.ts';
import { usePlace } from '../state/place.ts';
import { assessNow } from '../state/work.ts';
import type { BuildView } from '../worker/protocol.ts';
import type { Step } from './lesson.ts';

export interface SeenStep extends Step {
  readonly before: BuildView;
  readonly after: BuildView;
}

interface Lesson {
  readonly open: boolean;
  readonly from: string;
  /** A build by its id, or a single change by its own. */
  readonly against: string;
  readonly steps: readonly SeenStep[];
  /** How many there will be. */
  readonly of: number;
  readonly at: number;
}

const EMPTY = { steps: [], of: 0, at: 0 } as const;

export const useLesson = create<Lesson>()(() => ({ open: false, from: '', against: '', ...EMPTY }));

/**
 * On the choice sheet: the one that leads and its runner-up; on a build's sheet the build that is open and the best of
 * the others. As they lie on the desk while there is no order yet.
 */
export function openLesson(): void {
  const { open, builds } = useDesk.getState();
  const order = inOrder();
  const from = usePlace.getState().sheet === 'choice' ? (order[0] ?? open) : open;
  const against = [...order, ...Object.keys(builds)].find((id) => id !== from) ?? 'mass';
  useLesson.setState({ open: true, from, against, ...EMPTY });
}

/** Ids of the builds that are compared, the leader first, as the choice sheet has them; empty until all are worked out. */
function inOrder(): readonly string[] {
  const { builds, aside, brief, wants } = useDesk.getState();
  const { views, quick, parts, partCount } = useAnswers.getState();
  const compared = Object.keys(builds)
    .filter((id) => !aside.includes(id))
    .slice(0, MOST_COMPARED);
  const complete = compared.every((id) => Object.keys(parts[id] ?? {}).length === partCount);
  const assessments = compared.flatMap((id) => {
    const view = (complete ? views : quick)[id];
    return view?.ok ? [view.assessment] : [];
  });
  if (brief === undefined || assessments.length < 2 || assessments.length < compared.length) return [];
  return compare(assessments, usualSoftWants(brief, wants)).order.flatMap((index) => compared[index] ?? []);
}

export const closeLesson = (): void => useLesson.setState({ open: false, ...EMPTY });

/** Works the steps out one after another; stops when another lesson has been begun or this one closed. */
export async function workOut(steps: readonly Step[]): Promise<void> {
  const { from } = useLesson.getState();
  const { brief } = useDesk.getState();
  let before = useAnswers.getState().quick[from];
  if (brief === undefined || before === undefined) return;
  const begun: readonly SeenStep[] = [];
  useLesson.setState({ steps: begun, of: steps.length, at: 0 });
  let seen = begun;
  for (const step of steps) {
    const after = await assessNow(step.build, brief);
    const now = useLesson.getState();
    if (!now.open || now.steps !== seen) return;
    seen = [...seen, { ...step, before, after }];
    useLesson.setState({ steps: seen });
    before = after;
  }
}
