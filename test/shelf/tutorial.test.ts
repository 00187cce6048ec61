import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { quadwright } from '../cli/fakeIo.ts';

/** The tutorial's own commands, run as written. A newcomer who types them must meet what it says. */

const page = readFileSync('docs/tutorial.md', 'utf8');
const commandsIn = (text: string): readonly string[] =>
  [...text.matchAll(/```(?:sh)?\n([\s\S]*?)```/g)]
    .flatMap(([, block]) => (block ?? '').trim().split('\n'))
    .filter((line) => line.startsWith('./bin/quadwright'));
const commands = commandsIn(page);
/** But the one whose files a shell finds, which the tutorial has name by name. */
const first = commandsIn(readFileSync('README.md', 'utf8')).filter((line) => !line.includes('*'));

const wordsOf = (line: string) =>
  (line.match(/"[^"]*"|\S+/g) ?? []).slice(1).map((word) => word.replaceAll('"', ''));

/** The copy that step 5 asks for. */
const bonxie = readFileSync('demo/first-freestyle/bonxie.yaml', 'utf8');
const files = { 'my-bonxie.yaml': bonxie.replace('motorLength: 10 mm', 'motorLength: 9 mm') };

describe('docs/tutorial.md', () => {
  it('shows a dozen commands', () => {
    expect(commands.length).toBeGreaterThanOrEqual(10);
  });

  it.each(commands)('%s', async (line) => {
    const { code, out, error } = await quadwright(wordsOf(line), files);
    expect(error).toBe('');
    expect(out.length).toBeGreaterThan(20);
    // As the page says: 1 where the Bonxie with its long screws is among them, else 0.
    expect(code).toBe(line.includes('/bonxie.yaml') ? 1 : 0);
  });

  it('tells of the Bonxie what assess tells', async () => {
    const before = await quadwright(['assess', 'demo/first-freestyle/bonxie.yaml'], files);
    expect(before.out).toContain('reaches 4 mm into the motor');
    const after = await quadwright(['assess', 'my-bonxie.yaml'], files);
    expect(after.out).not.toContain('STOP');
  });

  it('narrows the band by the calipers', async () => {
    const nameplate = ['ask', 'rotor', '--diameter', '5.1 in', '--pitch', '3.6 in', '--blades', '3'];
    const asked = [...nameplate, '--rpm', '22000', '--json'];
    const bandOf = async (words: readonly string[]) => {
      const [{ band }] = JSON.parse((await quadwright(words)).out) as [
        { band: { thrustCoefficient: [number, number] } },
      ];
      return band.thrustCoefficient[1] - band.thrustCoefficient[0];
    };
    expect(await bandOf([...asked, '--chord', '10.3 mm'])).toBeLessThan(await bandOf(asked));
  });

  it('links to pages and names files that exist', () => {
    const links = [...page.matchAll(/\]\(([^)]+)\)/g)].map(([, link]) => `docs/${link}`);
    const named = [...page.matchAll(/`(demo\/[^`]+)`/g)].map(([, name]) => name ?? '');
    for (const path of [...links, ...named]) expect(existsSync(path), path).toBe(true);
  });
});

describe("README.md's first session", () => {
  it.each(first)('%s', async (line) => {
    const { code, out, error } = await quadwright(wordsOf(line), {}, new Map());
    expect(error).toBe('');
    expect(out.length).toBeGreaterThan(20);
    expect(code).toBe(0);
  });

  it('is there', () => {
    expect(first.length).toBeGreaterThanOrEqual(4);
  });
});
