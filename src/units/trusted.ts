/**
 * How a number is known. `measured`: by the user, on this part; `maker`: from the maker's
 * sheet or shop listing; `inferred`: by us, from other values of the part.
 */
export type Trust = 'measured' | 'maker' | 'inferred';

/** A value in SI with what is known of its uncertainty and origin. */
export interface Trusted {
  /** [SI unit of the quantity] */
  readonly value: number;
  /** One standard deviation, [same unit as value], >= 0. */
  readonly deviation: number;
  readonly trust: Trust;
  /** A published source, 'common practice, no source', 'from memory', or whose sheet it stands on. */
  readonly source: string;
}
