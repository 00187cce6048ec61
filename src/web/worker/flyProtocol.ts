import type { Flown, Scene } from '../../assess/fly/types.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';

export interface FlyAsk {
  readonly build: Build;
  readonly brief: Brief;
  readonly scene: Scene;
  /** Of the rough air. */
  readonly seed: number;
}

/** What the simulation flew, or why it can not, in words. */
export type FlyView =
  | { readonly ok: true; readonly flown: Flown }
  | { readonly ok: false; readonly reason: string };
