// Every command that docs/command-line.md sets beside a question, as it stands there.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { quadwright } from './fakeIo.ts';

const page = readFileSync('docs/command-line.md', 'utf8');
const table = page.slice(page.indexOf('## Which question'), page.indexOf('## Legs of a mission'));
const commands = [...table.matchAll(/^\| .+? \| `([^`]+)` \|$/gm)].map(([, command]) => command ?? '');

/** Words as a shell parts them, with double quotes. */
const wordsOf = (command: string): readonly string[] =>
  [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? '');

// One command changes a line of a build with `sed` and pipes it on: another frame, read from `-`.
function piped(
  command: string,
): readonly [words: readonly string[], files: Readonly<Record<string, string>>] {
  const pipe = command.match(
    /^sed "s\/\^frame: \.\*\/(frame: [a-z0-9-]+)\/" (\S+) \\\| \.\/bin\/quadwright (.+)$/,
  );
  if (pipe === null) return [wordsOf(command), {}];
  const [, frame = '', file = '', rest = ''] = pipe;
  return [wordsOf(rest), { '-': readFileSync(file, 'utf8').replace(/^frame: .*$/m, frame) }];
}

it('stands beside every kind of question', () => {
  expect(commands.length).toBeGreaterThan(25);
});

it.each(commands)('%s', async (command) => {
  const [words, files] = piped(command);
  const { code, out, error } = await quadwright(words, files);
  expect([0, 1], error).toContain(code);
  expect(out.length).toBeGreaterThan(80);
  expect(out).not.toMatch(/NaN|undefined|Infinity|\d[eE][+-]\d/);
});
