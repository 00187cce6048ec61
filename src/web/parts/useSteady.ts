import { useLayoutEffect, useMemo, useRef } from 'react';

/** A function that stays the same from render to render and does what the latest one given does. */
export function useSteady<In extends readonly unknown[], Out>(
  latest: (...given: In) => Out,
): (...given: In) => Out {
  const held = useRef(latest);
  useLayoutEffect(() => {
    held.current = latest;
  });
  return useMemo(
    () =>
      (...given: In) =>
        held.current(...given),
    [],
  );
}
