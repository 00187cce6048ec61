import { useEffect, useRef, useState } from 'react';
import type { Build } from '../../build/schema/build.ts';
import type { CraftSolids } from '../../report/solids/solidsOf.ts';
import { theWorkers } from '../state/work.ts';

/** The open build in the round, from the worker; while a newer one is made the older stays up.
 * @throws what the worker said, while drawing, for the guard round it to tell */
export function useSolids(build: Build | undefined): CraftSolids | undefined {
  const [solids, setSolids] = useState<CraftSolids>();
  const [fault, setFault] = useState<{ readonly reason: unknown }>();
  const wanted = useRef<Build>(undefined);
  const busy = useRef(false);
  useEffect(() => {
    wanted.current = build;
    const ask = async (): Promise<void> => {
      if (busy.current) return;
      busy.current = true;
      try {
        // Only the latest wish is answered: those between are passed over.
        for (let next = wanted.current, last: Build | undefined; next !== undefined && next !== last; ) {
          const made = await theWorkers().quick.solids(next);
          last = next;
          next = wanted.current;
          if (made !== undefined) setSolids(made);
        }
      } catch (reason) {
        setFault({ reason });
      } finally {
        busy.current = false;
      }
    };
    void ask();
    return () => {
      wanted.current = undefined;
    };
  }, [build]);
  if (fault) throw fault.reason;
  return solids;
}
