import { type FileError, fileErrorText, type Reading } from '../../build/read/fileError.ts';
import { parseText } from '../../build/read/parseText.ts';
import { readBrief, readBuild } from '../../build/read/readBuild.ts';
import { readCrashNotes } from '../../build/read/readCrashLog.ts';
import { readShelf } from '../../build/read/readShelf.ts';
import { BRIEF_FORMAT, type Brief } from '../../build/schema/brief.ts';
import { BUILD_FORMAT } from '../../build/schema/build.ts';
import { SHELF_FORMAT } from '../../build/schema/shelfFile.ts';
import { EMPTY_SHELF, type Shelf } from '../../build/shelf.ts';

export { offShelf, ontoShelf } from '../../build/lists/ontoShelf.ts';
export { draftPart, ownParts, partFields } from './ownParts.ts';
export { partsListView } from './partsList.ts';

import type { CrashLogRead } from './crashLogProtocol.ts';
import type { FileRead, KeptBuild, OpenBuild } from './protocol.ts';

const SHELF: Readonly<Record<string, string>> = import.meta.glob('../../../shelf/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

let whole: Shelf | undefined;

/**
 * The shipped shelf with its parts as their files wrote them, for parts of the user's to be based on. Read once: it takes
 * a good part of a second, and is asked for at every letter of a part and every column of a list.
 */
export function wholeShelf(): Shelf {
  whole ??= readWhole();
  return whole;
}

function readWhole(): Shelf {
  const faults: string[] = [];
  return Object.entries(SHELF).reduce((under: Shelf, [path, text]) => {
    return taken(readShelf(text, path, under), faults) ?? under;
  }, EMPTY_SHELF);
}

/** The user's own parts over the shipped ones. */
export const readOwnShelf = (text: string): Reading<Shelf> => readShelf(text, 'your shelf', wholeShelf());

/** The shipped parts and the user's, with the texts of both for parts based on them. */
export function shelfWith(ownShelf: string | undefined): Shelf {
  const read = ownShelf === undefined ? undefined : readOwnShelf(ownShelf);
  return read?.ok ? read.value : wholeShelf();
}

/** What was wrong with a file, line by line. */
export const inWords = (errors: readonly FileError[]): readonly string[] => errors.map(fileErrorText);

/** A file that a user gave, by what its `format` says it is. */
export function readAny(text: string, file: string): FileRead {
  const parsed = parseText(text, file);
  if (!parsed.ok) return unreadable(parsed.errors);
  const { data } = parsed.value;
  // No file of ours: a list of parts in someone's own words.
  if (Array.isArray(data)) return { is: 'list' };
  const format = typeof data === 'object' && data !== null && 'format' in data ? data.format : undefined;
  switch (format) {
    case BUILD_FORMAT: {
      const read = readBuild(text, file);
      return read.ok ? { is: 'build', build: read.value.build } : unreadable(read.errors);
    }
    case BRIEF_FORMAT: {
      const read = readBrief(text, file);
      return read.ok ? { is: 'brief', brief: read.value } : unreadable(read.errors);
    }
    case SHELF_FORMAT: {
      const read = readShelf(text, file, wholeShelf());
      return read.ok ? { is: 'shelf', text } : unreadable(read.errors);
    }
    default:
      return {
        is: 'unreadable',
        reasons: [
          `${file}: its format is ${format === undefined ? 'not told' : JSON.stringify(String(format).slice(0, 40))}; a build says ${BUILD_FORMAT}, a brief ${BRIEF_FORMAT}, a shelf ${SHELF_FORMAT} in its first lines.`,
        ],
      };
  }
}

/** A build that was kept; one that can't be read any more is left out and told. */
export function readKeptBuild({ id, text, came, log }: KeptBuild, faults: string[]): readonly OpenBuild[] {
  const build = taken(readBuild(text, id), faults)?.build;
  if (build === undefined) return [];
  const notes = log === undefined ? undefined : taken(readCrashNotes(log, `crash log of ${id}`), faults);
  return [
    {
      id,
      build,
      came: came === text ? build : (taken(readBuild(came, id), faults)?.build ?? build),
      ...(notes === undefined ? {} : { log: notes }),
    },
  ];
}

/** A crash log that a user gave. */
export function readLog(text: string, file: string): CrashLogRead {
  const read = readCrashNotes(text, file);
  return read.ok ? { ok: true, notes: read.value } : { ok: false, reasons: inWords(read.errors) };
}

export const readKeptBrief = (text: string, faults: string[]): Brief | undefined =>
  taken(readBrief(text, 'brief'), faults);

function taken<T>(reading: Reading<T>, faults: string[]): T | undefined {
  if (reading.ok) return reading.value;
  faults.push(...reading.errors.map(fileErrorText));
  return undefined;
}

const unreadable = (errors: readonly FileError[]): FileRead => ({
  is: 'unreadable',
  reasons: errors.map(fileErrorText),
});
