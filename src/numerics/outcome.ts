/**
 * The result of a computation that may honestly have no answer: no convergence
 * or no physical solution is a typed outcome with its reason in words, never a zero or a NaN.
 */
export type Outcome<T> = { readonly ok: true; readonly value: T } | NoSolution;

export interface NoSolution {
  readonly ok: false;
  /** What could not be solved and why, as a sentence a builder can read. */
  readonly reason: string;
}

export const solved = <T>(value: T): Outcome<T> => ({ ok: true, value });

export const noSolution = (reason: string): NoSolution => ({ ok: false, reason });
