/** What the first screen must answer for a newcomer, and the measures that answer it. */
export const QUESTIONS: readonly { readonly asks: string; readonly ids: readonly string[] }[] = [
  { asks: 'Is it right for me?', ids: ['all-up-mass', 'thrust-to-weight', 'hover-throttle'] },
  { asks: 'Do the parts stay inside their ratings?', ids: ['peak-current-share', 'pack-sag'] },
  { asks: 'What do I spend?', ids: ['cost-to-first-flight'] },
  { asks: 'How many minutes?', ids: ['flown-time', 'hover-time'] },
];
