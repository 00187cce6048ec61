import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { HardLimit } from '../../choose/shortlist/types.ts';
import type { KnobRange } from '../../choose/tune.ts';
import type { Want } from '../../choose/wants.ts';

export interface TuneAsk {
  readonly build: Build;
  readonly brief: Brief;
  readonly wants: readonly Want[];
  readonly limits: readonly HardLimit[];
  readonly ranges: readonly KnobRange[];
}

/** What turning knobs of a build brought, and the way there. */
export interface TuneView {
  readonly build: Build;
  /** 0 to 1; absent where a limit or a rule stops the build. */
  readonly before?: number;
  readonly after?: number;
  /** The rule or limit that stops the build as it is. */
  readonly stoppedBy?: string;
  readonly evaluations: number;
  readonly settled: boolean;
  readonly turned: readonly {
    readonly label: string;
    readonly was: string;
    readonly is: string;
  }[];
  /** Standing, 0 to 1, over settings tried. */
  readonly trace: readonly { readonly tried: number; readonly standing: number }[];
  /** Why nothing was tried, in words. */
  readonly trouble?: string;
}
