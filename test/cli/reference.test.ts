// docs/command-line.md against the programs' own help: no option is told that is not there.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { quadwright } from './fakeIo.ts';

const page = readFileSync('docs/command-line.md', 'utf8');
const optionsIn = (text: string): readonly string[] => [
  ...new Set(text.match(/--[a-z]+(?:-[a-z]+)*/g) ?? []),
];
const helpOf = async (verb: string): Promise<string> =>
  (await quadwright([...verb.split(' '), '--help'])).out;

/** Rows of the first table: the verbs of each, and what is said of them. */
const verbs = page
  .slice(0, page.indexOf('Options that several verbs share'))
  .split('\n')
  .filter((line) => line.startsWith('| `'))
  .flatMap((row) => {
    const [, named = '', says = ''] = row.split(/(?<!\\)\|/);
    const words = [...named.matchAll(/`([a-z]+(?: [a-z]+)?)/g)].map(([, verb]) => verb ?? '');
    return words.map((verb) => ({ verb, told: optionsIn(named + says) }));
  });

describe('docs/command-line.md', () => {
  it('has a row for every verb', () => expect(verbs.length).toBeGreaterThan(25));

  it.each(verbs)('tells of `$verb` only options that it has: $told', async ({ verb, told }) => {
    const help = optionsIn(await helpOf(verb));
    expect(told.filter((option) => !help.includes(option))).toEqual([]);
  });

  it('names options of the scenes and legs that are there', async () => {
    const section = (from: string, to: string) => page.slice(page.indexOf(from), page.indexOf(to));
    const fly = optionsIn(await helpOf('ask fly'));
    const scenes = optionsIn(section('## Scenes of', '## Exit codes'));
    expect(scenes.filter((option) => !fly.includes(option))).toEqual([]);
    const mission = await helpOf('ask mission');
    expect(
      optionsIn(section('## Legs of', '## Scenes of')).filter((each) => !mission.includes(each)),
    ).toEqual([]);
  });

  // `--full` of `assess` and `compare`; `--wind` and `--how` of the questions about flight; the rest of every verb on builds.
  it.each([
    [
      '--brief',
      ['assess', 'compare', 'shortlist', 'tune', 'leanings', 'ask picture', 'ask trim', 'ask point'],
    ],
    ['--for', ['assess', 'compare', 'shortlist', 'tune', 'leanings', 'ask hits', 'ask heat', 'ask point']],
    [
      '--shelf',
      ['assess', 'compare', 'draw', 'check', 'calibrate', 'shelf', 'ask motor', 'ask pack', 'ask fly'],
    ],
    ['--full', ['assess', 'compare', 'shortlist']],
    ['--wind', ['ask trim', 'ask speed', 'ask wind', 'ask reserve', 'ask mission', 'ask fly', 'ask gusts']],
    ['--how', ['assess', 'ask trim', 'ask heat', 'ask minutes', 'ask speed', 'ask wind', 'ask mission']],
    [
      '--json',
      ['assess', 'compare', 'shelf', 'check', 'ask air', 'ask rotor', 'ask point', 'ask arm', 'ask frame'],
    ],
  ])('the shared option %s is where the page says', async (option, owners) => {
    expect(page).toContain(`\`${option}`);
    for (const verb of owners) expect(optionsIn(await helpOf(verb)), verb).toContain(option);
  });
});
