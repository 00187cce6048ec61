import { useEffect, useState } from 'react';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { CrashNotes } from '../../build/schema/crashLogFile.ts';
import { theWorkers } from '../state/work.ts';
import type { CrashLogView } from '../worker/crashLogProtocol.ts';

/** After the last change [ms]. */
const REST = 200;

/** The log held against the forecast in the worker that has time; undefined while it is being worked out. */
export function useJudged(
  build: Build,
  brief: Brief,
  notes: CrashNotes | undefined,
): CrashLogView | undefined {
  const [view, setView] = useState<CrashLogView>();
  useEffect(() => {
    setView(undefined);
    if (notes === undefined) return;
    let old = false;
    const settle = (told: CrashLogView) => {
      if (!old) setView(told);
    };
    const timer = setTimeout(() => {
      theWorkers()
        .full.judgeLog({ build, brief, notes })
        .then(settle, (error: unknown) =>
          settle({ ok: false, reason: error instanceof Error ? error.message : String(error) }),
        );
    }, REST);
    return () => {
      old = true;
      clearTimeout(timer);
    };
  }, [build, brief, notes]);
  return view;
}
