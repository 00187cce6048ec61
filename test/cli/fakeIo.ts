import { readdirSync, readFileSync } from 'node:fs';
import { readShelf } from '../../src/build/read/readShelf.ts';
import { EMPTY_SHELF, type Shelf } from '../../src/build/shelf.ts';
import { BadInput, type ExitCode, type Io } from '../../src/cli/io.ts';
import { runProgram } from '../../src/cli/program.ts';

let shipped: Shelf | undefined;

/** The shipped shelf, read once for all command-line tests. */
export function shippedShelf(): Shelf {
  if (shipped !== undefined) return shipped;
  let shelf = EMPTY_SHELF;
  for (const name of readdirSync('shelf').sort()) {
    if (!name.endsWith('.yaml')) continue;
    const reading = readShelf(readFileSync(`shelf/${name}`, 'utf8'), name, shelf);
    if (!reading.ok) throw new Error(`shelf/${name} does not read`);
    shelf = reading.value;
  }
  shipped = shelf;
  return shelf;
}

export interface Ran {
  readonly code: ExitCode;
  readonly out: string;
  readonly error: string;
}

/** Runs the command line in-process; `files` stand in for files of these names. */
export async function quadwright(
  words: readonly string[],
  files: Readonly<Record<string, string>> = {},
): Promise<Ran> {
  let out = '';
  let error = '';
  const io: Io = {
    readText: (path) => {
      const own = files[path];
      if (own !== undefined) return own;
      try {
        return readFileSync(path, 'utf8');
      } catch {
        throw new BadInput(`${path}: there is no such file. Check the path.`);
      }
    },
    shippedShelf,
    shippedRotors: () => new Map(),
    writeOut: (text) => {
      out += text;
    },
    writeError: (text) => {
      error += text;
    },
    colours: false,
    columns: undefined,
  };
  const code = await runProgram(words, io);
  return { code, out, error };
}

export const demo = 'demo/first-freestyle';
export const candidates = ['bonxie', 'kittiwake', 'redshank', 'turnstone', 'tystie', 'whimbrel'].map(
  (name) => `${demo}/${name}.yaml`,
);
