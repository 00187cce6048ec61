import { existsSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { unpackRotors } from '../build/read/packedRotors.ts';
import { unpackShelf } from '../build/read/packedShelf.ts';
import { BadInput, exitCode, type Io } from './io.ts';
import { openPool } from './openPool.ts';
import { runProgram } from './program.ts';

/** Larger files are not read at all: no honest build is that long. */
const LARGEST_FILE = 5_000_000;

const readBeside = (name: string) => readFileSync(new URL(`./${name}`, import.meta.url), 'utf8');

const io: Io = {
  readText: (path) => {
    try {
      const { size } = statSync(path);
      if (size > LARGEST_FILE) {
        throw new BadInput(`${path}: ${size} bytes; at most ${LARGEST_FILE} are read. Is it the right file?`);
      }
      return readFileSync(path, 'utf8');
    } catch (error) {
      if (error instanceof BadInput) throw error;
      const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
      const why: Record<string, string> = {
        ENOENT: 'there is no such file',
        EISDIR: 'it is a folder, not a file',
        EACCES: 'it may not be read',
      };
      throw new BadInput(`${path}: ${why[code] ?? `it cannot be read (${code})`}. Check the path.`);
    }
  },
  shippedShelf: () => unpackShelf(readBeside('shelf.json')),
  shippedRotors: () => unpackRotors(readBeside('rotors.json')),
  writeOut: (text) => process.stdout.write(text),
  writeError: (text) => process.stderr.write(text),
  colours: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  columns: process.stdout.columns,
  machine: {
    writeText: (path, text) => {
      writeFileSync(`${path}.part`, text);
      renameSync(`${path}.part`, path);
    },
    exists: existsSync,
    now: () => performance.now(),
    messagesOnTerminal: process.stderr.isTTY === true,
    cores: availableParallelism(),
    onInterrupt: (then) => {
      process.once('SIGINT', then);
      return () => process.off('SIGINT', then);
    },
    openPool,
  },
};

// A reader that closes the pipe early (`| head`) is no error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  process.exit(error.code === 'EPIPE' ? exitCode.fine : exitCode.internal);
});

process.exitCode = await runProgram(process.argv.slice(2), io);
