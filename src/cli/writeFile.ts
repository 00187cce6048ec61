import { BadInput, type Io } from './io.ts';

/** Writes a file that an option asked for, all of it or nothing. */
export function writeFile(
  option: string,
  path: string,
  content: string | Uint8Array,
  { machine }: Pick<Io, 'machine'>,
): void {
  if (machine === undefined) throw new BadInput(`${option}: there is nowhere to write to here.`);
  try {
    machine.writeFile(path, content);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    throw new BadInput(`${option}: ${path} cannot be written (${code}). Check the path.`);
  }
}
