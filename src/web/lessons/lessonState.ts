import { create } from 'zustand';
import { useAnswers } from '../state/answers.ts';
import { useDesk } from '../state/desk.ts';
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

/** Opens on the build that is open, against the first other one unless told. */
export function openLesson(against?: string): void {
  const { open, builds } = useDesk.getState();
  const other = against ?? Object.keys(builds).find((id) => id !== open) ?? 'mass';
  useLesson.setState({ open: true, from: open, against: other, ...EMPTY });
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
