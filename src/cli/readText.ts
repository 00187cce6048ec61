import { closeSync, openSync, readSync } from 'node:fs';
import { BadInput } from './io.ts';

/** No honest file is that long; a pipe may have no end at all. */
const LARGEST_FILE = 5_000_000;
const CHUNK = 65_536;

/**
 * A reader of files, and of what comes through the pipe for `-`, however often it is asked for that. Throws BadInput
 * in words where a file cannot be read.
 */
export function textReader(): (path: string) => string {
  let piped: string | undefined;
  return (path) => {
    if (path !== '-') return readText(path);
    piped ??= readText(path);
    return piped;
  };
}

function readText(path: string): string {
  const piped = path === '-';
  const name = piped ? 'standard input' : path;
  try {
    const file = piped ? 0 : openSync(path, 'r');
    const bytes = upToLimit(file, name);
    if (!piped) closeSync(file);
    return bytes.toString('utf8');
  } catch (error) {
    if (error instanceof BadInput) throw error;
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    const why: Readonly<Record<string, string>> = {
      ENOENT: 'there is no such file',
      EISDIR: 'it is a folder, not a file',
      EACCES: 'it may not be read',
    };
    throw new BadInput(`${name}: ${why[code] ?? `it cannot be read (${code})`}. Check the path.`);
  }
}

function upToLimit(file: number, name: string): Buffer {
  const chunks: Buffer[] = [];
  for (let total = 0; total <= LARGEST_FILE; ) {
    const chunk = Buffer.alloc(CHUNK);
    const count = readSync(file, chunk);
    if (count === 0) return Buffer.concat(chunks);
    chunks.push(chunk.subarray(0, count));
    total += count;
  }
  throw new BadInput(`${name}: at most ${LARGEST_FILE} bytes are read. Is it the right file?`);
}
