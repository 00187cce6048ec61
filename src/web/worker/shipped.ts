import text from 'virtual:shipped';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { Part } from '../../build/schema/part.ts';
import type { Shelf } from '../../build/shelf.ts';

interface Shipped {
  readonly shelf: Shelf;
  readonly brief: Brief;
  readonly builds: readonly { readonly id: string; readonly build: Build }[];
}

/**
 * The shelf and the demo, read and checked when the page was built (`scripts/shippedFiles.ts`). The shelf has
 * no raw parts to base others on: for a user's own file `readers.ts` reads the shipped files anew.
 */
export function shippedFiles(): Shipped {
  // Our own text, checked by our own readers a moment before it was written.
  const { parts, brief, builds }: Omit<Shipped, 'shelf'> & { readonly parts: readonly Part[] } =
    JSON.parse(text);
  const byId = new Map(parts.map((part) => [part.id, part]));
  return { shelf: { parts: byId, raw: new Map(), replaced: [] }, brief, builds };
}
