/** What the Tab key stops at. */
const STOPS =
  'a[href], button:not(:disabled), input:not(:disabled):not([hidden]), select:not(:disabled), textarea:not(:disabled), [tabindex]:not([tabindex="-1"])';
/** Long enough for what gives the focus on by itself, a dialog that opens or closes, to have done so [ms]. */
const GRACE = 120;

/**
 * The focus is never lost: where the element that has it goes away, is hidden or switched off (a remedy that is kept,
 * the last step undone, a sheet turned over), it goes to what stands nearest. Gives what ends the watch.
 */
export function keepFocus(page: Document): () => void {
  let path: readonly Element[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;

  const took = ({ target }: FocusEvent) => {
    if (!(target instanceof Element)) return;
    const up: Element[] = [];
    for (let at: Element | null = target; at !== null; at = at.parentElement) up.push(at);
    path = up;
  };
  // Let go of by the reader, with a click beside it: no loss. An element that goes is still there for this moment.
  const letGo = ({ target, relatedTarget }: FocusEvent) => {
    if (relatedTarget !== null) return;
    setTimeout(() => {
      if (target === path[0] && page.activeElement === page.body && isThere(path[0])) path = [];
    });
  };
  const look = () => {
    timer = undefined;
    const active = page.activeElement;
    const lost = active === null || active === page.body || !isThere(active);
    if (lost && path[0] !== undefined && page.hasFocus()) nearest(path)?.focus();
  };
  const later = () => {
    if (path[0] === undefined || (page.activeElement === path[0] && isThere(path[0]))) return;
    clearTimeout(timer);
    timer = setTimeout(look, GRACE);
  };
  const watch = new MutationObserver(later);
  watch.observe(page.body, {
    subtree: true,
    childList: true,
    attributes: true,
    attributeFilter: ['disabled', 'hidden', 'inert'],
  });
  page.addEventListener('focusin', took);
  page.addEventListener('focusout', letGo);
  return () => {
    clearTimeout(timer);
    watch.disconnect();
    page.removeEventListener('focusin', took);
    page.removeEventListener('focusout', letGo);
  };
}

const isThere = (element: Element): boolean =>
  element.isConnected &&
  !element.matches(':disabled') &&
  element.closest('[hidden], [inert], [aria-hidden="true"]') === null;

/** Up from where the focus was, the first that still holds something to stop at: what follows there, else its first. */
function nearest(path: readonly Element[]): HTMLElement | undefined {
  const [was] = path;
  for (const around of path) {
    if (!isThere(around)) continue;
    const stops = [...around.querySelectorAll<HTMLElement>(STOPS)].filter(
      (each) => isThere(each) && each.getClientRects().length > 0,
    );
    const after = stops.find(
      (each) =>
        was?.isConnected && (was.compareDocumentPosition(each) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0,
    );
    const stop = after ?? stops[0];
    if (stop !== undefined) return stop;
  }
  return undefined;
}
