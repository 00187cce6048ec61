import { describe, expect, it } from 'vitest';
import { demo, quadwright } from './fakeIo.ts';

const turnstone = `${demo}/turnstone.yaml`;
const brief = ['--brief', `${demo}/brief.yaml`];
const ask = (...words: string[]) => quadwright(['ask', ...words, ...brief]);

describe.each(['picture', 'shake', 'hits', 'knocks'])('ask %s', (verb) => {
  it('reads well for people', async () => {
    const { code, out } = await ask(verb, turnstone);
    expect(code).toBe(0);
    expect(out).not.toMatch(/NaN|undefined|\[object|Infinity| {4}at /);
    expect(out.split('\n').length).toBeGreaterThan(5);
  });

  it('gives measures, findings and data in SI as JSON', async () => {
    const { code, out } = await ask(verb, turnstone, '--json');
    expect(code).toBe(0);
    const found = JSON.parse(out);
    expect(found.measures.length).toBeGreaterThan(1);
    expect(found.data).toBeDefined();
    for (const { value, band } of found.measures) {
      expect(Number.isFinite(value)).toBe(true);
      expect(band).toHaveLength(2);
    }
  });

  it('has help with an example that runs', async () => {
    const { out } = await quadwright(['ask', verb, '--help']);
    const example = out.match(/quadwright (ask .*first-freestyle\/brief\.yaml)/)?.[1];
    expect(example).toBeDefined();
    expect((await quadwright(example!.split(' '))).code).toBe(0);
  });

  it('says which file is missing', async () => {
    const { code, error } = await ask(verb, 'nowhere.yaml');
    expect(code).toBe(2);
    expect(error).toContain('nowhere.yaml');
  });
});

describe('what each says', () => {
  it('picture: both cameras, and a change in millimetres', async () => {
    const { out } = await ask('picture', turnstone);
    expect(out).toMatch(/flying/);
    expect(out).toMatch(/forward +the cheeks carry it 4 mm further forward at most/);
  });

  it('shake: modes by name, and what a millimetre more weighs', async () => {
    const { out } = await ask('shake', turnstone);
    expect(out).toContain('out-of-plane together');
    expect(out).toMatch(/arms 1 mm thicker +\d+ +\d+ +\d+\.\d +5\.20/);
  });

  it('hits: the weakest arm for each way and surface, or all of them', async () => {
    const few = JSON.parse((await ask('hits', turnstone, '--json')).out).data.hits.length;
    // Four arms, three ways on three surfaces, two of them from ahead as well, and a propeller strike each.
    expect(few).toBe(4 * 9 + 2 * 3 + 4);
    const lines = (text: string) => text.split('\n').length;
    expect(lines((await ask('hits', turnstone, '--all')).out)).toBeGreaterThan(
      lines((await ask('hits', turnstone)).out) + 20,
    );
  });

  it('knocks: a crash log is held against the forecast of as many flights', async () => {
    const files = {
      'log.yaml': 'flights: 24\ncrashedOn: [2, 5, 6, 11]\nmoney: 41.50 GBP\nbroken: { arm: 1 }\n',
    };
    const words = ['ask', 'knocks', turnstone, ...brief, '--log', 'log.yaml'];
    const { code, out } = await quadwright(words, files);
    expect(code).toBe(0);
    expect(out).toMatch(/crashes +4\.0/);
    expect(out).toMatch(/By this log you crash \d/);
    const { data } = JSON.parse((await quadwright([...words, '--json'], files)).out);
    expect(data.curve.mean).toHaveLength(24);
    expect(data.log.money.found).toBe(41.5);
    const bad = await quadwright(words, { 'log.yaml': 'flights: 24\ncrashedOn: [5, 2]\n' });
    expect(bad.code).toBe(2);
    expect(bad.error).toContain('crashedOn');
    const worse = await quadwright(words, { 'log.yaml': 'flights: lots\n' });
    expect(worse.code).toBe(2);
    expect(worse.error).toContain('log.yaml');
  });

  it('knocks: the same seed tells the same, another does not; flights are counted', async () => {
    const [a, b, c] = await Promise.all(
      ['1', '1', '2'].map((seed) => ask('knocks', turnstone, '--flights', '40', '--seed', seed, '--json')),
    );
    expect(a!.out).toBe(b!.out);
    expect(a!.out).not.toBe(c!.out);
    expect(JSON.parse(a!.out).data.curve.mean).toHaveLength(40);
    const { code, error } = await ask('knocks', turnstone, '--flights', 'many');
    expect(code).toBe(2);
    expect(error).toContain('--flights');
  });
});
