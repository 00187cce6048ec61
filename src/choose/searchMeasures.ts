import type { Quantity } from '../assess/types.ts';

/** Measures of the quick tier that can be wanted or limited, and how their values are written. */
export const SEARCH_MEASURES = {
  'first-flight-cost': 'money',
  'aircraft-cost': 'money',
  'missing-cost': 'money',
  'all-up-mass': 'mass',
  'pack-share': 'share',
  'thrust-to-weight': 'ratio',
  'thrust-to-weight-at-reserve': 'ratio',
  'hover-throttle': 'share',
  'hardest-motor-load': 'ratio',
  'flown-time': 'time',
  'hover-endurance': 'time',
  'full-throttle-time-to-limit': 'time',
  'hover-winding-temperature': 'temperature',
  'hover-case-temperature': 'temperature',
  'motor-diagonal': 'length',
  'least-tip-gap': 'length',
} as const satisfies Readonly<Record<string, Quantity>>;

export type SearchMeasure = keyof typeof SEARCH_MEASURES;

/** A bare number where none is told. */
export const quantityOf = (measure: string): Quantity => SEARCH_MEASURES[measure as SearchMeasure] ?? 'ratio';
