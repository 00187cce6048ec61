/** Whether this reader asked their machine for less movement. */
export const calm = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;
