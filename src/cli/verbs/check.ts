import { type FileError, fileErrorText } from '../../build/read/fileError.ts';
import { parseText } from '../../build/read/parseText.ts';
import { readBrief, readBuild } from '../../build/read/readBuild.ts';
import { readShelf } from '../../build/read/readShelf.ts';
import { BRIEF_FORMAT } from '../../build/schema/brief.ts';
import { BUILD_FORMAT } from '../../build/schema/build.ts';
import { SHELF_FORMAT } from '../../build/schema/shelfFile.ts';
import type { Shelf } from '../../build/shelf.ts';
import { nearestName } from '../../units/nearestName.ts';
import { type ExitCode, exitCode, type Io } from '../io.ts';

interface Checked {
  readonly file: string;
  readonly what: string;
  readonly errors: readonly FileError[];
}

const FORMATS = [BUILD_FORMAT, BRIEF_FORMAT, SHELF_FORMAT];

/** `check`: whether files read as what their `format` line says, with everything wrong at once. */
export function checkFiles(
  files: readonly string[],
  options: { readonly json?: boolean },
  shelf: Shelf,
  io: Io,
): ExitCode {
  const results = files.map((file) => checkOne(io.readText(file), file, shelf));
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

function checkOne(text: string, file: string, shelf: Shelf): Checked {
  const parsed = parseText(text, file);
  if (!parsed.ok) return { file, what: 'unreadable', errors: parsed.errors };
  const { data, placeOf } = parsed.value;
  const format = typeof data === 'object' && data !== null && 'format' in data ? data.format : undefined;
  const errorsOf = (reading: { readonly ok: boolean; readonly errors?: readonly FileError[] }) =>
    reading.errors ?? [];
  if (format === BUILD_FORMAT) return { file, what: 'a build', errors: errorsOf(readBuild(text, file)) };
  if (format === BRIEF_FORMAT) return { file, what: 'a brief', errors: errorsOf(readBrief(text, file)) };
  if (format === SHELF_FORMAT)
    return { file, what: 'a shelf', errors: errorsOf(readShelf(text, file, shelf)) };
  const near = typeof format === 'string' ? nearestName(format, FORMATS) : undefined;
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
        allowed: FORMATS.join(', '),
        remedy: near ? `Did you mean "${near}"?` : `Begin the file with "format: ${BUILD_FORMAT}".`,
      },
    ],
  };
}
