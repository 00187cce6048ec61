import type { Quantity } from '../../assess/types.ts';

/** Measures of the quick tier by what kind of number they are; a bare one where none is told. */
const QUANTITIES: Readonly<Record<string, Quantity>> = {
  'first-flight-cost': 'money',
  'aircraft-cost': 'money',
  'missing-cost': 'money',
  'all-up-mass': 'mass',
  'pack-share': 'share',
  'hover-throttle': 'share',
  'flown-time': 'time',
  'hover-endurance': 'time',
  'full-throttle-time-to-limit': 'time',
  'hover-winding-temperature': 'temperature',
  'hover-case-temperature': 'temperature',
  'motor-diagonal': 'length',
  'least-tip-gap': 'length',
};

export const quantityOf = (measure: string): Quantity => QUANTITIES[measure] ?? 'ratio';
