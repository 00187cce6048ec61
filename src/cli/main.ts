import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { unpackRotors } from '../build/read/packedRotors.ts';
import { unpackShelf } from '../build/read/packedShelf.ts';
import { exitCode, type Io } from './io.ts';
import { openPool } from './openPool.ts';
import { runProgram } from './program.ts';
import { textReader } from './readText.ts';

const readBeside = (name: string) => readFileSync(new URL(`./${name}`, import.meta.url), 'utf8');

const io: Io = {
  readText: textReader(),
  shippedShelf: () => unpackShelf(readBeside('shelf.json')),
  shippedRotors: () => unpackRotors(readBeside('rotors.json')),
  writeOut: (text) => process.stdout.write(text),
  writeError: (text) => process.stderr.write(text),
  colours: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  columns: process.stdout.columns,
  machine: {
    writeFile: (path, content) => {
      const part = `${path}.part`;
      try {
        writeFileSync(part, content);
        renameSync(part, path);
      } catch (error) {
        rmSync(part, { force: true });
        throw error;
      }
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

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // A reader that closes the pipe early (`| head`) is no error.
  if (error.code === 'EPIPE') process.exit(exitCode.fine);
  process.stderr.write(
    `The output cannot be written (${error.code ?? 'unknown'}). Check where it goes, and the room there.\n`,
  );
  process.exit(exitCode.badInput);
});

process.exitCode = await runProgram(process.argv.slice(2), io);
