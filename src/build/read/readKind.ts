import { BRIEF_FORMAT } from '../schema/brief.ts';
import { BUILD_FORMAT } from '../schema/build.ts';
import { SHELF_FORMAT } from '../schema/shelfFile.ts';
import { failed, type Reading } from './fileError.ts';
import { parseText } from './parseText.ts';
import type { Located } from './plainData.ts';

/** What a file is, by its `format` line. */
export const KINDS_OF_FILE = {
  [BUILD_FORMAT]: 'a build',
  [BRIEF_FORMAT]: 'a brief',
  [SHELF_FORMAT]: 'a shelf',
} as const;

/**
 * The plain data of a file that should be of one kind. A file of another kind is one error: held against the
 * schema it would be an error at every field.
 *
 * @param wanted the kind's `format`, or in words what a file without a format line is, such as `an arm`
 */
export function readKind(text: string, file: string, wanted: string): Reading<Located> {
  const parsed = parseText(text, file);
  if (!parsed.ok) return parsed;
  const found = formatOf(parsed.value.data);
  const kinds: Readonly<Record<string, string>> = KINDS_OF_FILE;
  if (typeof found !== 'string' || found === wanted || !Object.hasOwn(kinds, found)) return parsed;
  const what = kinds[wanted] ?? wanted;
  return failed([
    {
      file,
      ...parsed.value.placeOf(['format']),
      path: 'format',
      says: `this is ${kinds[found]}, not ${what}`,
      found: `"${found}"`,
      allowed: kinds[wanted] === undefined ? `${what}, without a format line` : wanted,
      remedy: `Give the file of ${what} here.`,
    },
  ]);
}

/** What the `format` line says, if there is one. */
export const formatOf = (data: unknown): unknown =>
  typeof data === 'object' && data !== null && 'format' in data ? data.format : undefined;
