import { create } from 'zustand';
import type { PartResult } from '../../assess/parts/types.ts';
import type { BuildView, Opened, ShelfRow } from '../worker/protocol.ts';

interface Answers {
  readonly shelf: readonly ShelfRow[];
  /** The user's own parts as their file wrote them. */
  readonly ownShelf?: string;
  /** The latest answer for each build with its parts; an older one stays up until the newer arrives. */
  readonly views: Readonly<Record<string, BuildView>>;
  /** The quick answers alone. */
  readonly quick: Readonly<Record<string, BuildView>>;
  /** Parts of the full assessment that have arrived, by build and part. */
  readonly parts: Readonly<Record<string, Readonly<Record<string, PartResult>>>>;
  /** How many parts a full assessment has. */
  readonly partCount: number;
  /** Labels of the parts of a build that are older than the build itself. */
  readonly behind: Readonly<Record<string, readonly string[]>>;
  /** Builds asked about and not yet answered. */
  readonly waiting: readonly string[];
  /** Whether the browser has the desk as it stands. */
  readonly keeping?: 'waiting' | 'kept' | 'failed';
  /** Why nothing can be shown at all. */
  readonly trouble?: string;
  /** The demo as it ships. */
  readonly demo?: Opened['demo'];
}

export const useAnswers = create<Answers>()(() => ({
  shelf: [],
  views: {},
  quick: {},
  parts: {},
  partCount: 0,
  behind: {},
  waiting: [],
}));
