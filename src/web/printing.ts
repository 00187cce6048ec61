/** Between the margins of A4 on its side [px], as `print.css` has the page. */
const PAPER = 1058;
/** A sheet narrower than this is a phone's: it flows over the paper as it likes [px]. */
const WIDE = 1000;

/**
 * Prints a wide sheet as it stands on the screen, made smaller: leaders, balloons and charts were measured there, and on
 * a page with another width they would point at nothing. Gives what ends it.
 */
export function fitToPaper(page: Document): () => void {
  const view = page.defaultView;
  const root = page.documentElement;
  const before = () => {
    const width = page.querySelector<HTMLElement>('.sheet')?.offsetWidth ?? 0;
    if (width < WIDE) return;
    root.style.setProperty('--sheet-width', `${width}px`);
    root.style.setProperty('--sheet-zoom', String(PAPER / width));
    root.dataset.print = 'as shown';
  };
  const after = () => {
    delete root.dataset.print;
  };
  view?.addEventListener('beforeprint', before);
  view?.addEventListener('afterprint', after);
  return () => {
    view?.removeEventListener('beforeprint', before);
    view?.removeEventListener('afterprint', after);
  };
}
