/** What the first screen must answer for a newcomer, and the measures that answer it. */
export const QUESTIONS: readonly { readonly asks: string; readonly ids: readonly string[] }[] = [
  { asks: 'Is it right for me?', ids: ['all-up-mass', 'thrust-to-weight', 'hover-throttle'] },
  {
    asks: 'Do the parts stay inside their ratings?',
    ids: ['full-throttle-motor-current', 'full-throttle-cell-voltage', 'full-throttle-time-to-limit'],
  },
  { asks: 'What do I spend?', ids: ['first-flight-cost', 'aircraft-cost', 'missing-cost'] },
  { asks: 'How many minutes?', ids: ['flown-time', 'hover-endurance'] },
];
