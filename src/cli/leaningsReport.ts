import type { Quantity } from '../assess/types.ts';
import type { Sensitivity } from '../choose/sensitivities.ts';
import type { TornadoBar } from '../choose/tornado.ts';

/** What `leanings --json` prints: what one figure of a build leans on. */
export interface LeaningsReport {
  readonly build: string;
  readonly figure: string;
  readonly label: string;
  readonly quantity: Quantity;
  /** At the most likely value of every input, SI. */
  readonly nominal: number;
  readonly band: readonly [p10: number, p90: number];
  /** One group at a time, widest first. */
  readonly tornado: readonly TornadoBar[];
  /** Sobol indices, largest total first. */
  readonly sobol: readonly Sensitivity[];
  readonly rows: number;
  readonly seed: number;
}
