import { LineCounter, parseDocument } from 'yaml';
import { type FileError, failed, type Reading } from './fileError.ts';
import { findExcess } from './findExcess.ts';
import { type Located, plainData } from './plainData.ts';

/** A file may be this long [characters]; the largest shelf we know is a quarter of it. */
export const LONGEST_FILE = 512 * 1024;
export const DEEPEST = 24;

/**
 * YAML or JSON text to plain data with the place of every field. Nothing in the text is run:
 * custom tags, aliases beyond a few, deep nesting and repeated fields are errors.
 */
export function parseText(text: string, file: string): Reading<Located> {
  const whole = (says: string, found: string, allowed: string, remedy: string): Reading<Located> =>
    failed([{ file, line: 1, column: 1, path: '', says, found, allowed, remedy }]);
  if (text.length > LONGEST_FILE) {
    const found = `${Math.ceil(text.length / 1024)} kB`;
    const allowed = `up to ${LONGEST_FILE / 1024} kB`;
    return whole('the file is too large', found, allowed, 'Check that it is the right file, or split it.');
  }
  const excess = findExcess(text, DEEPEST);
  if (excess) {
    const before = text.slice(0, excess.offset).split('\n');
    const place = { file, line: before.length, column: (before.at(-1)?.length ?? 0) + 1, path: '' };
    return failed([{ ...place, ...EXCESS_SAYS[excess.kind] }]);
  }
  const counter = new LineCounter();
  const document = parseDocument(text, {
    lineCounter: counter,
    prettyErrors: false,
    schema: 'core',
    stringKeys: true,
    uniqueKeys: false, // it compares every pair; plainData finds them at once
  });
  const problems = [...document.errors, ...document.warnings];
  if (problems.length > 0) {
    return failed(
      problems.map(({ code, message, pos }): FileError => {
        const { line, col } = counter.linePos(pos[0]);
        const found = JSON.stringify(text.slice(pos[0], Math.min(pos[1], pos[0] + 30)));
        const words = SAYS[code] ?? {
          says: message,
          allowed: 'well-formed YAML or JSON',
          remedy: 'Check the line.',
        };
        return { file, line: Math.max(1, line), column: Math.max(1, col), path: '', found, ...words };
      }),
    );
  }
  if (document.contents === null) {
    return whole('the file is empty', 'nothing', 'YAML or JSON', 'Start from one of the examples.');
  }
  return plainData(document, counter, file);
}

interface Words {
  readonly says: string;
  readonly allowed: string;
  readonly remedy: string;
}

const SAYS: Readonly<Record<string, Words>> = {
  TAG_RESOLVE_FAILED: {
    says: 'a tag (a word after "!") is not read',
    allowed: 'plain text, numbers, lists and fields',
    remedy: 'Take the tag out.',
  },
  MULTIPLE_DOCS: {
    says: 'the file holds more than one document',
    allowed: 'one document a file, so no second line of "---"',
    remedy: 'Put each into a file of its own.',
  },
  TAB_AS_INDENT: {
    says: 'a line is indented with a tab',
    allowed: 'spaces',
    remedy: 'Replace the tab by two spaces.',
  },
  BAD_INDENT: {
    says: 'the indentation does not fit the lines above',
    allowed: 'fields of one group starting in the same column',
    remedy: 'Line the field up with its neighbours, and close every bracket.',
  },
  MISSING_CHAR: {
    says: 'a colon, comma, quote or bracket is missing',
    allowed: '"field: value" with every quote and bracket closed',
    remedy: 'Look at this line and the one above.',
  },
};

const EXCESS_SAYS: Readonly<Record<'depth' | 'length', Words & { readonly found: string }>> = {
  depth: {
    says: 'brackets or lists are nested too deeply',
    found: `more than ${DEEPEST} levels`,
    allowed: `up to ${DEEPEST} levels`,
    remedy: 'Check for brackets that are never closed.',
  },
  length: {
    says: 'the file holds too much',
    found: 'more marks and words than the largest shelf has',
    allowed: 'about 1000 parts',
    remedy: 'Check that it is the right file, or split it.',
  },
};
