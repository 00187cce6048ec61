import { createRequire } from 'node:module';

/**
 * The second integrator: odex 2.0 (Gragg-Bulirsch-Stoer after Hairer and Wanner), by require: the types it
 * ships are source that our compiler settings refuse.
 */
interface Odex {
  readonly Solver: new (
    n: number,
  ) => {
    absoluteTolerance: number;
    relativeTolerance: number;
    solve(
      f: (x: number, y: number[]) => number[],
      from: number,
      start: number[],
      to: number,
    ): { readonly y: number[]; readonly outcome: number };
  };
}

const require = createRequire(import.meta.url);
export const { Solver } = require('odex') as Odex;
