/** What wants are called until a build with the measure is worked out, which has the name in full. */
const NAMES: Readonly<Record<string, string>> = {
  'first-flight-cost': 'to the first flight',
  'flown-time': 'minutes flown',
  'full-throttle-time-to-limit': 'full throttle until a motor is too hot',
  'hardest-motor-load': 'hardest-worked motor in hover',
  'all-up-mass': 'all-up mass',
};

/** A measure in words where no build has told its label yet. */
export const measureName = (id: string): string => NAMES[id] ?? id.replaceAll('-', ' ');
