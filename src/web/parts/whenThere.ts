/** Given up after this many drawn frames, half a minute: a sheet may come over a slow line [count]. */
const MOST = 1800;

/**
 * Waits for an element that a sheet draws once it has come.
 *
 * @param then is given it; not called when it never comes
 * @returns leaves off waiting
 */
export function whenThere(selector: string, then: (found: HTMLElement) => void): () => void {
  let left = MOST;
  let frame = requestAnimationFrame(function look() {
    const found = document.querySelector<HTMLElement>(selector);
    if (found !== null) then(found);
    else if (left-- > 0) frame = requestAnimationFrame(look);
  });
  return () => cancelAnimationFrame(frame);
}
