import { create } from 'zustand';
import type { KeptFiles } from '../worker/protocol.ts';

/** A desk as it stood once, under a name. */
export interface Snapshot {
  readonly name: string;
  readonly files: KeptFiles;
}

export const useSnapshots = create<{ readonly snapshots: readonly Snapshot[] }>()(() => ({ snapshots: [] }));

/** The same name replaces the older one. */
export const addSnapshot = (snapshot: Snapshot): void =>
  useSnapshots.setState(({ snapshots }) => ({
    snapshots: [...snapshots.filter(({ name }) => name !== snapshot.name), snapshot],
  }));

export const removeSnapshot = (name: string): void =>
  useSnapshots.setState(({ snapshots }) => ({
    snapshots: snapshots.filter((each) => each.name !== name),
  }));
