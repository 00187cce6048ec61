import { keptTheme, showTheme } from './state/keptTheme.ts';

showTheme(keptTheme());

// The words of index.html are drawn before the page's own script takes the thread; a hidden tab draws nothing and
// must not wait for it.
let begun = false;
const begin = (): void => {
  if (begun) return;
  begun = true;
  void import('./main.tsx');
};
requestAnimationFrame(() => setTimeout(begin, 0));
setTimeout(begin, 250);
