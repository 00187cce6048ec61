import { useEffect, useRef, useState } from 'react';
import type { Build } from '../../build/schema/build.ts';
import { useDesk } from '../state/desk.ts';
import { theWorkers } from '../state/work.ts';
import type { Glance, ShelfRow } from '../worker/protocol.ts';

/**
 * Tries the rows one after another in the background while their list is open, and tells what each would
 * do. Stops between two when the list closes or the build changes.
 */
export function useGlances(
  rows: readonly ShelfRow[],
  tried: ((build: Build, part: string) => Build) | undefined,
): Readonly<Record<string, Glance>> {
  const [glances, setGlances] = useState<Readonly<Record<string, Glance>>>({});
  const open = rows.length > 0 && tried !== undefined;
  // Closed, it need not hear of every step of a slider.
  const brief = useDesk((desk) => (open ? desk.brief : undefined));
  const build = useDesk((desk) => (open ? desk.builds[desk.open] : undefined));
  const how = useRef(tried);
  how.current = tried;
  useEffect(() => {
    if (!open || brief === undefined || build === undefined) return;
    let stopped = false;
    setGlances({});
    void (async () => {
      for (const { id } of rows) {
        const change = how.current?.(build, id);
        if (stopped || change === undefined) return;
        const glance = await theWorkers().full.glance(change, brief);
        if (stopped) return;
        setGlances((now) => ({ ...now, [id]: glance }));
      }
    })();
    return () => {
      stopped = true;
    };
  }, [open, rows, brief, build]);
  return glances;
}
