import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Numbers drawn one after another; the only thing in this room that changes as it is used. */
export interface RandomSource {
  /** Even between 0 and 1, both excluded. */
  readonly uniform: () => number;
  /** Mean 0, standard deviation 1. */
  readonly normal: () => number;
  /** Gamma with mean 1 and variance 1/shape. */
  readonly gamma: (shape: number) => number;
}

/**
 * Streams 0, 1, ... of one seed do not overlap: each starts 2^64 draws further on (xoroshiro128+,
 * Blackman and Vigna 2018).
 *
 * @param seed whole number
 */
export function randomSource(seed: number, stream: number): RandomSource {
  const generator = xoroshiro128plus(seed);
  for (let i = 0; i <= stream; i++) generator.jump();
  const uniform = () => ((generator.next() >>> 0) + 0.5) / 4294967296;
  // Box and Muller 1958 (Ann. Math. Stat. 29(2)); the second of each pair is left unused.
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal, gamma: (shape) => gammaDraw(shape, uniform, normal) };
}

/** Marsaglia and Tsang 2000 (ACM Trans. Math. Softw. 26(3)), with their boost for shapes below 1. */
function gammaDraw(shape: number, uniform: () => number, normal: () => number): number {
  const boost = shape < 1 ? uniform() ** (1 / shape) : 1;
  const d = (shape < 1 ? shape + 1 : shape) - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal();
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v))
      return (boost * d * v) / shape;
  }
}
