import type { TestProject } from 'vitest/node';
import { packShelf } from '../src/build/read/packedShelf.ts';
import { readShippedShelf } from './build/readShippedShelf.ts';

/** Before all tests: the shelf read once for the run, packed as the product packs it. */
export default function setup(project: TestProject): void {
  project.provide('packedShelf', packShelf(readShippedShelf()));
}

declare module 'vitest' {
  interface ProvidedContext {
    readonly packedShelf: string;
  }
}
