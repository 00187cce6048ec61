import { type FileError, fileErrorText } from '../../build/read/fileError.ts';
import { parseText } from '../../build/read/parseText.ts';
import { readBrief, readBuild } from '../../build/read/readBuild.ts';
import { formatOf, KINDS_OF_FILE } from '../../build/read/readKind.ts';
import { readShelf } from '../../build/read/readShelf.ts';
import { resolveBuild } from '../../build/resolve/resolveBuild.ts';
import { BRIEF_FORMAT } from '../../build/schema/brief.ts';
import { BUILD_FORMAT } from '../../build/schema/build.ts';
import { SHELF_FORMAT } from '../../build/schema/shelfFile.ts';
import type { Shelf } from '../../build/shelf.ts';
import { nearestName } from '../../units/nearestName.ts';
import { loadShelf } from '../context.ts';
import { type ExitCode, exitCode, type Io } from '../io.ts';

export interface CheckOptions {
  readonly shelf: readonly string[];
  readonly json?: boolean;
}

interface Checked {
  readonly file: string;
  readonly what: string;
  readonly errors: readonly FileError[];
}

/**
 * `check`: whether files read as what their `format` line says, and whether the parts of a build are on the
 * shelf, with everything wrong at once. Shelves among the files lie over the shipped one for the builds.
 */
export function checkFiles(files: readonly string[], options: CheckOptions, io: Io): ExitCode {
  const texts = files.map((file) => ({ file, text: io.readText(file) }));
  let shelf: Shelf | undefined = loadShelf(options.shelf, io);
  const shelves = new Map<string, Checked>();
  for (const { file, text } of texts) {
    if (!isOf(SHELF_FORMAT, text, file) || shelves.has(file)) continue;
    const read = readShelf(text, file, shelf ?? loadShelf(options.shelf, io));
    shelves.set(file, { file, what: KINDS_OF_FILE[SHELF_FORMAT], errors: read.ok ? [] : read.errors });
    // A part of a shelf with errors is not there for a build: that would be the same fault told twice.
    shelf = read.ok && shelf !== undefined ? read.value : undefined;
  }
  const results = texts.map(({ file, text }) => shelves.get(file) ?? checkOne(text, file, shelf, io));
  if (options.json) {
    io.writeOut(`${JSON.stringify(results, null, 2)}\n`);
  } else {
    for (const { file, what, errors } of results) {
      io.writeOut(
        errors.length === 0 ? `${file}: fine (${what})\n` : `${errors.map(fileErrorText).join('\n')}\n`,
      );
    }
  }
  return results.some((result) => result.errors.length > 0) ? exitCode.badInput : exitCode.fine;
}

function isOf(format: string, text: string, file: string): boolean {
  const parsed = parseText(text, file);
  return parsed.ok && formatOf(parsed.value.data) === format;
}

/** A build or a brief; `shelf` is absent where it has errors itself. */
function checkOne(text: string, file: string, shelf: Shelf | undefined, io: Io): Checked {
  const parsed = parseText(text, file);
  if (!parsed.ok) return { file, what: 'unreadable', errors: parsed.errors };
  const { data, placeOf } = parsed.value;
  const format = formatOf(data);
  if (format === BUILD_FORMAT) {
    return { file, what: KINDS_OF_FILE[BUILD_FORMAT], errors: buildErrors(text, file, shelf, io) };
  }
  if (format === BRIEF_FORMAT) {
    const read = readBrief(text, file);
    return { file, what: KINDS_OF_FILE[BRIEF_FORMAT], errors: read.ok ? [] : read.errors };
  }
  const formats = Object.keys(KINDS_OF_FILE);
  const near = typeof format === 'string' ? nearestName(format, formats) : undefined;
  const found = format === undefined ? 'no format line' : `format ${JSON.stringify(format).slice(0, 60)}`;
  return {
    file,
    what: 'unknown',
    errors: [
      {
        file,
        ...placeOf(format === undefined ? [] : ['format']),
        path: 'format',
        says: 'cannot tell what kind of file this is',
        found,
        allowed: formats.join(', '),
        remedy: near ? `Did you mean "${near}"?` : `Begin the file with "format: ${BUILD_FORMAT}".`,
      },
    ],
  };
}

function buildErrors(text: string, file: string, shelf: Shelf | undefined, io: Io): readonly FileError[] {
  const read = readBuild(text, file);
  if (!read.ok) return read.errors;
  if (shelf === undefined) return [];
  const resolved = resolveBuild(read.value.build, shelf, read.value, io.shippedRotors());
  return resolved.ok ? [] : resolved.errors;
}
