interface Question {
  readonly asks: string;
  /** Measures that answer it, by id. */
  readonly ids: readonly string[];
  /** The ones that answer it where there is little room. */
  readonly brief: readonly string[];
}

/** What the first screen must answer for a newcomer. */
export const QUESTIONS: readonly Question[] = [
  {
    asks: 'Is it right for me?',
    ids: ['all-up-mass', 'thrust-to-weight', 'hover-throttle'],
    brief: ['all-up-mass', 'thrust-to-weight'],
  },
  {
    asks: 'Do the parts stay inside their ratings?',
    ids: ['full-throttle-motor-current', 'full-throttle-cell-voltage', 'full-throttle-time-to-limit'],
    brief: ['full-throttle-time-to-limit'],
  },
  {
    asks: 'What do I spend?',
    ids: ['first-flight-cost', 'aircraft-cost', 'missing-cost', 'knocks-money'],
    brief: ['first-flight-cost'],
  },
  {
    asks: 'How many minutes, in how much wind?',
    ids: ['flown-time', 'hover-endurance', 'wind-held', 'top-speed'],
    brief: ['flown-time', 'wind-held'],
  },
];
