import { readdirSync, readFileSync } from 'node:fs';
import { quadwright } from '../../test/cli/fakeIo.ts';

/** What a line of a page's shell printed; undefined where the line is not ours to run. */
export type Shell = (line: string) => Promise<Printed | undefined>;

export interface Printed {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

/** Lines that set up or serve, and are tried out by hand. */
const NOT_OURS = /^(npm|npx|git|cd) /;

/**
 * The little of a shell that pages use, run in this process: `./bin/quadwright`, `cp A B`, `sed 's/A/B/' FILE`, pipes,
 * `> FILE`, a `*` in a file's name. Files that a line writes are kept in `files` for the lines after; nothing is
 * written to disk. `said` keeps what lines printed that need no file of the page, for the next page that shows them.
 *
 * @throws RangeError for a line that it doesn't know how to run
 */
export function openShell(
  files: Map<string, string> = new Map(),
  said: Map<string, Printed> = new Map(),
): Shell {
  const read = (path: string): string => files.get(path) ?? readFileSync(path, 'utf8');

  async function stage(words: readonly string[], piped: string | undefined): Promise<Printed> {
    const [verb = '', ...rest] = words;
    if (verb === './bin/quadwright') {
      const written = new Map<string, string | Uint8Array>(files);
      const given = { ...Object.fromEntries(files), ...(piped === undefined ? {} : { '-': piped }) };
      const ran = await quadwright(rest, given, written);
      for (const [path, content] of written) if (typeof content === 'string') files.set(path, content);
      return ran;
    }
    const [first = '', second = ''] = rest;
    if (verb === 'cp' && rest.length === 2) {
      files.set(second, read(first));
      return { code: 0, out: '', error: '' };
    }
    const change = verb === 'sed' && rest.length === 2 ? first.match(/^s\/(.+)\/(.*)\/$/) : null;
    if (change !== null) {
      const [, from = '', to = ''] = change;
      return { code: 0, out: read(second).replace(new RegExp(from, 'gm'), to), error: '' };
    }
    throw new RangeError(`line: only ./bin/quadwright, cp A B and sed 's/A/B/' FILE are run, not ${verb}`);
  }

  return async (line) => {
    if (line === '' || line.startsWith('#') || NOT_OURS.test(line)) return undefined;
    const bare = files.size === 0;
    const known = bare ? said.get(line) : undefined;
    if (known !== undefined) return known;
    let piped: string | undefined;
    let printed: Printed = { code: 0, out: '', error: '' };
    for (const words of stagesOf(line)) {
      const to = words.at(-2) === '>' ? words.at(-1) : undefined;
      printed = await stage(to === undefined ? words : words.slice(0, -2), piped);
      piped = printed.out;
      if (to === undefined) continue;
      files.set(to, printed.out);
      printed = { ...printed, out: '' };
    }
    if (bare && files.size === 0) said.set(line, printed);
    return printed;
  };
}

/** Words as a shell parts them, of each command of a pipe. */
function stagesOf(line: string): readonly (readonly string[])[] {
  const stages: string[][] = [[]];
  for (const [, double, single, plain = ''] of line.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)) {
    const quoted = double ?? single;
    if (quoted === undefined && plain === '|') stages.push([]);
    else stages.at(-1)?.push(...(quoted === undefined ? found(plain) : [quoted]));
  }
  return stages;
}

/** The files that a name with a `*` stands for, in the order of their names. */
function found(word: string): readonly string[] {
  const [, folder = '', head = '', tail = ''] = word.match(/^(.*\/)([^/*]*)\*([^/*]*)$/) ?? [];
  if (folder === '') return [word];
  const names = readdirSync(folder).filter((name) => name.startsWith(head) && name.endsWith(tail));
  return names.sort().map((name) => folder + name);
}
