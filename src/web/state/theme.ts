import { create } from 'zustand';
import { keptTheme, showTheme, THEME_KEY, type Theme } from './keptTheme.ts';

export const useTheme = create<{ readonly theme: Theme }>()(() => ({ theme: keptTheme() }));

export function setTheme(theme: Theme): void {
  useTheme.setState({ theme });
  showTheme(theme);
  try {
    window.localStorage.setItem(THEME_KEY, theme);
  } catch {
    // The choice then lasts as long as the page.
  }
}
