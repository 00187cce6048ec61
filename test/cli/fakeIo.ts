import { readFileSync } from 'node:fs';
import { BadInput, type ExitCode, type Io } from '../../src/cli/io.ts';
import { runProgram } from '../../src/cli/program.ts';
import { shippedShelf } from '../build/shippedShelf.ts';

export { shippedShelf };

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
