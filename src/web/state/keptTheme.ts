export type Theme = 'light' | 'dark';
export const THEME_KEY = 'quadwright-theme';

/** What was chosen last, or else what the machine is set to. Storage may be forbidden: then no memory. */
export function keptTheme(): Theme {
  try {
    const kept = window.localStorage.getItem(THEME_KEY);
    if (kept === 'light' || kept === 'dark') return kept;
  } catch {
    // Falls through to the machine's setting.
  }
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}

/** Before anything is drawn, so that no sheet flashes up on the other paper. */
export const showTheme = (theme: Theme): void => {
  document.documentElement.dataset.theme = theme;
};
