import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { quadwright } from './fakeIo.ts';

/** The verbs that a help lists. */
const verbsIn = (help: string): readonly string[] =>
  [...help.slice(help.indexOf('Commands:')).matchAll(/^ {2}([a-z]+) /gm)].map(([, verb]) => verb ?? '');

const everyVerb = async (): Promise<readonly string[][]> => {
  const top = verbsIn((await quadwright(['--help'])).out).filter((verb) => verb !== 'ask');
  const asked = verbsIn((await quadwright(['ask', '--help'])).out);
  return [...top.map((verb) => [verb]), ...asked.map((verb) => ['ask', verb])];
};

describe('help', () => {
  it('has an example for every verb, and shows no empty list', async () => {
    const verbs = await everyVerb();
    expect(verbs.length).toBeGreaterThan(20);
    for (const verb of verbs) {
      const { code, out } = await quadwright([...verb, '--help']);
      expect(code, verb.join(' ')).toBe(0);
      expect(out, verb.join(' ')).toMatch(/Examples?:\n {2}quadwright /);
      expect(out, verb.join(' ')).not.toContain('[])');
    }
  });

  it('knows no verb that the reference does not tell', async () => {
    const reference = readFileSync('docs/command-line.md', 'utf8');
    for (const verb of await everyVerb())
      expect(reference).toMatch(new RegExp(`^\\|.*\`${verb.join(' ')}[ \`]`, 'm'));
  });

  it('tells the version of the package', async () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
    expect(await quadwright(['--version'])).toEqual({ code: 0, out: `${version}\n`, error: '' });
  });

  it('says which verbs there are when none is given', async () => {
    const { code, error } = await quadwright([]);
    expect(code).toBe(2);
    expect(error).toContain('Commands:');
  });
});
