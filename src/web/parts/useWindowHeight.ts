import { useSyncExternalStore } from 'react';

const subscribe = (look: () => void): (() => void) => {
  window.addEventListener('resize', look);
  return () => window.removeEventListener('resize', look);
};

/** The window's inner height, kept current [px]. */
export const useWindowHeight = (): number => useSyncExternalStore(subscribe, () => window.innerHeight);
