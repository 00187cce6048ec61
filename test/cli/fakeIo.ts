import { readFileSync } from 'node:fs';
import { BadInput, type ExitCode, type Io, type Machine } from '../../src/cli/io.ts';
import { runProgram } from '../../src/cli/program.ts';
import { shippedShelf } from '../build/shippedShelf.ts';

export { shippedShelf };

export interface Ran {
  readonly code: ExitCode;
  readonly out: string;
  readonly error: string;
}

/** Runs the command line in-process; `files` stand in for files of these names, `written` takes what is written. */
export async function quadwright(
  words: readonly string[],
  files: Readonly<Record<string, string>> = {},
  written?: Map<string, string | Uint8Array>,
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
    ...(written === undefined ? {} : { machine: machineThatWrites(written) }),
  };
  const code = await runProgram(words, io);
  return { code, out, error };
}

/** A machine without workers, clock or other files. */
const machineThatWrites = (written: Map<string, string | Uint8Array>): Machine => ({
  writeFile: (path, content) => {
    written.set(path, content);
  },
  exists: (path) => written.has(path),
  now: () => 0,
  messagesOnTerminal: false,
  cores: 1,
  openPool: async () => {
    throw new Error('no workers here');
  },
});

export const demo = 'demo/first-freestyle';
export const candidates = ['bonxie', 'kittiwake', 'redshank', 'turnstone', 'tystie', 'whimbrel'].map(
  (name) => `${demo}/${name}.yaml`,
);
