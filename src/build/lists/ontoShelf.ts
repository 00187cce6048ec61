import { isMap, isSeq, parseDocument } from 'yaml';
import { SHELF_FORMAT } from '../schema/shelfFile.ts';
import { yamlText } from '../write/yamlText.ts';
import { freeId } from './ids.ts';
import type { ListedPart } from './listedPart.ts';

/** What to do with a part that is known already: leave the old one, take the new one in its place, or have both. */
export type SameChoice = 'old' | 'new' | 'both';
export const SAME_CHOICES = ['old', 'new', 'both'] as const;

/** What becomes of the rows of a list. */
export interface Settled {
  /** Parts to lay onto the user's shelf, as its file writes them, each id once. */
  readonly taken: readonly Readonly<Record<string, unknown>>[];
  /** Known and left as they are. */
  readonly left: readonly ListedPart[];
  /** Known, and nothing said of them. */
  readonly open: readonly ListedPart[];
  readonly bad: readonly ListedPart[];
}

/** Sorts the rows of a list by what was said of those that are known already. */
export function settle(
  listed: readonly ListedPart[],
  choiceOf: (part: ListedPart) => SameChoice | undefined,
  known: { readonly has: (id: string) => boolean },
): Settled {
  const taken = new Map<string, Readonly<Record<string, unknown>>>();
  const [left, open, bad]: [ListedPart[], ListedPart[], ListedPart[]] = [[], [], []];
  for (const each of listed) {
    if (each.part === undefined) {
      bad.push(each);
      continue;
    }
    const { same } = each;
    if (same === undefined) {
      taken.set(each.id, each.raw);
      continue;
    }
    const choice = same.unchanged ? 'old' : choiceOf(each);
    if (choice === undefined) open.push(each);
    else if (choice === 'old') left.push(each);
    else if (choice === 'new') taken.set(same.id, { ...each.raw, id: same.id });
    else {
      const id = freeId(same.id, { has: (wanted) => known.has(wanted) || taken.has(wanted) });
      taken.set(id, { ...each.raw, id });
    }
  }
  return { taken: [...taken.values()], left, open, bad };
}

/**
 * The text of a user's shelf with parts laid onto it: those of the same id replaced where they stand, others added at
 * the end. What else its owner wrote, comments too, stays.
 *
 * @param text of the shelf as it is; nothing for a new one. It must be one that `readShelf` reads.
 */
export function ontoShelf(
  text: string | undefined,
  parts: readonly Readonly<Record<string, unknown>>[],
): string {
  if (text === undefined) {
    return `${[`format: ${SHELF_FORMAT}`, 'parts:', ...parts.map(entry)].join('\n')}\n`;
  }
  const document = parseDocument(text);
  const list = document.get('parts');
  if (!isSeq(list)) throw new RangeError('text: must be a shelf with a list of parts');
  for (const part of parts) {
    const at = list.items.findIndex((item) => isMap(item) && item.get('id') === part.id);
    const node = document.createNode(part);
    if (at < 0) list.items.push(node);
    else list.items[at] = node;
  }
  // An empty list is written `[]`, and would go on in brackets.
  list.flow = false;
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

/** The text of a user's shelf without one of its parts; nothing when it was the last. What else it says stays. */
export function offShelf(text: string, id: string): string | undefined {
  const document = parseDocument(text);
  const list = document.get('parts');
  if (!isSeq(list)) throw new RangeError('text: must be a shelf with a list of parts');
  list.items = list.items.filter((item) => !(isMap(item) && item.get('id') === id));
  return list.items.length === 0
    ? undefined
    : document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

/** One part of a list of parts, indented. */
const entry = (part: Readonly<Record<string, unknown>>): string =>
  yamlText(part)
    .trimEnd()
    .split('\n')
    .map((line, index) => `${index === 0 ? '  - ' : '    '}${line}`)
    .join('\n');
