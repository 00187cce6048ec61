import type { Craft } from '../build/craft.ts';

/** One standard deviation of the all-up mass, relative: parts as listed and what no list has. */
export const massDeviationOf = ({ unknowns }: Pick<Craft, 'unknowns'>): number =>
  Math.hypot(...unknowns.filter(({ lever }) => lever === 'massScale').map(({ deviation }) => deviation));

/** 90th percentile of the all-up mass [kg]. */
export const heaviestOf = (craft: Craft): number =>
  craft.massProperties.mass * (1 + 1.28 * massDeviationOf(craft));
