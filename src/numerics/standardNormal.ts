import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';

/**
 * One draw from the standard normal distribution (Box and Muller 1958, Annals of Mathematical
 * Statistics 29), exact. Two uniform draws a number, so that the stream stays in step whatever is drawn.
 *
 * @param random advanced in place
 */
export function standardNormal(random: RandomGenerator): number {
  const radius = Math.sqrt(-2 * Math.log(1 - uniformFloat64(random)));
  return radius * Math.cos(2 * Math.PI * uniformFloat64(random));
}
