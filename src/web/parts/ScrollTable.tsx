import type { ReactNode } from 'react';

/** Holds a table that may be wider than its sheet; focusable, so that the keyboard can scroll it there. */
export function ScrollTable({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrollable region
    <section className="table-scroll" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}
