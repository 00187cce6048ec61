// Every command that docs/command-line.md sets beside a question, as it stands there.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { openShell } from '../../scripts/told/shell.ts';

const page = readFileSync('docs/command-line.md', 'utf8');
const table = page.slice(page.indexOf('## Which question'), page.indexOf('## Legs of a mission'));
const commands = [...table.matchAll(/^\| .+? \| `([^`]+)` \|$/gm)].map(([, command]) =>
  (command ?? '').replaceAll('\\|', '|'),
);

it('stands beside every kind of question', () => {
  expect(commands.length).toBeGreaterThan(25);
});

// The table leaves out what each of them begins with, but where another command feeds it.
it.each(commands)('%s', async (command) => {
  const line = command.includes('./bin/quadwright') ? command : `./bin/quadwright ${command}`;
  const { code, out, error } = (await openShell()(line)) ?? { code: -1, out: '', error: 'not run' };
  expect([0, 1], error).toContain(code);
  expect(out.length).toBeGreaterThan(80);
  expect(out).not.toMatch(/NaN|undefined|Infinity|\d[eE][+-]\d/);
});
