import { create } from 'zustand';
import type { Build } from '../../build/schema/build.ts';
import { change, useDesk } from '../state/desk.ts';
import { assessNow, theWorkers } from '../state/work.ts';
import type { BuildView, Glance } from '../worker/protocol.ts';
import type { Remedy } from './remedies.ts';

/** A change that is looked at before it is kept. */
interface Trial {
  /** Of the finding it is to mend. */
  readonly finding: string;
  readonly says: string;
  /** The build it was made for: on any other it is gone. */
  readonly base: Build;
  readonly stage:
    | { readonly at: 'searching'; readonly tried: number; readonly of: number }
    | { readonly at: 'nothing'; readonly says: string }
    | { readonly at: 'shown'; readonly build: Build; readonly view: BuildView };
}

export const useTrial = create<{ readonly trial?: Trial }>()(() => ({}));

export const dropTrial = (): void => useTrial.setState({}, true);

/** Keeps the change that is looked at: one step of undo. */
export function keepTrial(): void {
  const { trial } = useTrial.getState();
  if (trial?.stage.at !== 'shown') return;
  const { build } = trial.stage;
  dropTrial();
  change(() => build);
}

/** Works a remedy out beside the open build. A search tries every part and takes the one that mends most. */
export async function tryRemedy(finding: string, remedy: Remedy): Promise<void> {
  const { builds, open, brief } = useDesk.getState();
  const base = builds[open];
  if (base === undefined || brief === undefined) return;
  const head = { finding, says: remedy.says, base };
  const { full } = theWorkers();
  const show = (stage: Trial['stage']) => useTrial.setState({ trial: { ...head, stage } });
  // Another remedy, another build or another change since: nobody waits for this one any more.
  const wanted = () => {
    const { trial } = useTrial.getState();
    return (
      trial?.finding === finding && trial.says === remedy.says && useDesk.getState().builds[open] === base
    );
  };
  let chosen: Build | undefined = remedy.kind === 'change' ? remedy.build : undefined;
  if (remedy.kind === 'search') {
    const of = remedy.builds.length;
    show({ at: 'searching', tried: 0, of });
    const now = await full.glance(base, brief);
    let best: { readonly build: Build; readonly cost: number } | undefined;
    for (const [tried, build] of remedy.builds.entries()) {
      const glance = await full.glance(build, brief);
      if (!wanted()) return;
      show({ at: 'searching', tried: tried + 1, of });
      const cost = costOf(glance, now, finding);
      if (cost !== undefined && (best === undefined || cost < best.cost)) best = { build, cost };
    }
    chosen = best?.build;
    if (chosen === undefined) {
      show({ at: 'nothing', says: `None of ${of} on the shelf mends it without a worse fault.` });
      return;
    }
  } else show({ at: 'searching', tried: 0, of: 1 });
  if (chosen === undefined) return;
  const view = await assessNow(chosen, brief);
  if (wanted()) show({ at: 'shown', build: chosen, view });
}

/** Fewer stops first, then fewer risks, then the least change in how it flies; undefined where it does not mend. */
function costOf(glance: Glance, now: Glance, finding: string): number | undefined {
  if (glance.trouble !== undefined || glance.findings.includes(finding) || glance.stops > now.stops)
    return undefined;
  const relative = (a: number | undefined, b: number | undefined): number =>
    a === undefined || b === undefined ? 1 : Math.abs(a / b - 1);
  const flown =
    relative(glance.flownTime, now.flownTime) + relative(glance.thrustToWeight, now.thrustToWeight);
  return 100 * glance.stops + 10 * glance.risks + Math.min(flown, 9);
}
