import { create } from 'zustand';

type Theme = 'light' | 'dark';
const KEY = 'quadwright-theme';

/** What was chosen last, or else what the machine is set to. Storage may be forbidden: then no memory. */
function first(): Theme {
  try {
    const kept = window.localStorage.getItem(KEY);
    if (kept === 'light' || kept === 'dark') return kept;
  } catch {
    // Falls through to the machine's setting.
  }
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}

export const useTheme = create<{ readonly theme: Theme }>()(() => ({ theme: first() }));

const show = (theme: Theme): void => {
  document.documentElement.dataset.theme = theme;
};
show(useTheme.getState().theme);

export function setTheme(theme: Theme): void {
  useTheme.setState({ theme });
  show(theme);
  try {
    window.localStorage.setItem(KEY, theme);
  } catch {
    // The choice then lasts as long as the page.
  }
}
