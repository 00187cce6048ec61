import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * Latin hypercube sample of the unit cube: every column has one number in each of `count` equal slices
 * (McKay, Beckman and Conover 1979, Technometrics 21(2)). The same seed gives the same sample anywhere.
 *
 * @param count rows, >= 1
 * @param columns >= 1
 * @param seed whole number
 * @returns row by row, each number inside (0, 1)
 */
export function latinHypercube(count: number, columns: number, seed: number): Float64Array {
  if (!(Number.isInteger(count) && count >= 1)) {
    throw new RangeError(`count must be a whole number of at least 1; found ${count}`);
  }
  if (!(Number.isInteger(columns) && columns >= 1)) {
    throw new RangeError(`columns must be a whole number of at least 1; found ${columns}`);
  }
  const random = xoroshiro128plus(seed);
  const sample = new Float64Array(count * columns);
  const slices = new Int32Array(count);
  for (let column = 0; column < columns; column++) {
    for (let row = 0; row < count; row++) slices[row] = row;
    for (let row = count - 1; row > 0; row--) {
      const other = uniformInt(random, 0, row);
      const held = slices[row] as number;
      slices[row] = slices[other] as number;
      slices[other] = held;
    }
    for (let row = 0; row < count; row++) {
      // Never exactly 0, where a normal's quantile would be infinite.
      const inside = Math.min(Math.max(uniformFloat64(random), 1e-9), 1 - 1e-9);
      sample[row * columns + column] = ((slices[row] as number) + inside) / count;
    }
  }
  return sample;
}
