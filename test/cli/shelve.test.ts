import { describe, expect, test } from 'vitest';
import { BadInput, type ExitCode, type Io } from '../../src/cli/io.ts';
import { runProgram } from '../../src/cli/program.ts';
import { shippedShelf } from './fakeIo.ts';

const LIST = 'Artikel;Gewicht;Preis;KV;Stator\nTern 2306;32,5;17,90;1.950;2306\nSkua;;21,00;1.750;2207\n';
const COLUMNS = [
  '--column',
  'Artikel=name',
  '--column',
  'Gewicht=mass in g',
  '--column',
  'Preis=price in EUR',
];

/** A folder in memory. */
function folder(files: Record<string, string>) {
  return async (...words: readonly string[]): Promise<{ code: ExitCode; out: string; error: string }> => {
    let [out, error] = ['', ''];
    const io: Io = {
      readText: (path) => {
        const text = files[path];
        if (text === undefined) throw new BadInput(`${path}: there is no such file.`);
        return text;
      },
      shippedShelf,
      shippedRotors: () => new Map(),
      writeOut: (text) => {
        out += text;
      },
      writeError: (text) => {
        error += text;
      },
      colours: false,
      columns: undefined,
      machine: {
        writeFile: (path, content) => {
          files[path] = String(content);
        },
        exists: (path) => files[path] !== undefined,
        now: () => 0,
        messagesOnTerminal: false,
        cores: 1,
        openPool: async () => {
          throw new Error('no workers here');
        },
      },
    };
    return { code: await runProgram(['shelve', ...words], io), out, error };
  };
}

describe('shelve', () => {
  test('shows first and writes nothing; rows that can not be read are told with line and column', async () => {
    const files: Record<string, string> = { 'm.csv': LIST };
    const { code, out } = await folder(files)('m.csv', '--onto', 'my.yaml', '--kind', 'motor', ...COLUMNS);
    expect(code).toBe(2);
    expect(out).toContain('m.csv:3:2 "Gewicht" (mass): is missing');
    expect(out).toContain('Nothing is written yet');
    expect(Object.keys(files)).toEqual(['m.csv']);
  });

  test('keeps the good rows when told, remembers the columns, and knows the parts the next time', async () => {
    const files: Record<string, string> = { 'm.csv': LIST };
    const shelve = folder(files);
    const kept = await shelve(
      'm.csv',
      '--onto',
      'my.yaml',
      '--kind',
      'motor',
      ...COLUMNS,
      '--good-rows',
      '--keep',
    );
    expect(kept.code).toBe(0);
    expect(files['my.yaml']).toContain('tern-2306');
    expect(files['my.columns.yaml']).toContain('mass in g');
    files['m.csv'] = LIST.replace('32,5', '33');
    const again = await shelve('m.csv', '--onto', 'my.yaml', '--good-rows', '--keep');
    expect(again.code).toBe(2);
    expect(again.error).toContain('--same old, new or both');
    const replaced = await shelve(
      'm.csv',
      '--onto',
      'my.yaml',
      '--good-rows',
      '--keep',
      '--same',
      'new',
      '--json',
    );
    const report = JSON.parse(replaced.out);
    expect(report.by).toBe('remembered');
    expect(report.settled.taken).toMatchObject([{ id: 'tern-2306', mass: '33 g' }]);
    expect(report.written).toEqual(['my.yaml', 'my.columns.yaml']);
    expect(files['my.yaml']).toContain('33 g');
    expect(files['my.yaml']).not.toContain('32.5 g');
  });

  test.each([
    [['--kind', 'moter'], 'Did you mean "motor"?'],
    [['--column', 'Gewicht'], 'NAME=FIELD in UNIT'],
    [['--kind', 'motor', '--column', 'Gewicht=mas in g'], 'Did you mean "mass"?'],
    [['--kind', 'motor', '--column', 'Gewich=mass in g'], 'Did you mean "Gewicht"?'],
    [['--same', 'newer'], 'Allowed: old, new, both'],
    [['--decimals', 'dot'], 'point, comma'],
  ])('tells in words what is wrong with %j', async (words, says) => {
    const { code, error } = await folder({ 'm.csv': LIST })('m.csv', '--onto', 'my.yaml', ...words);
    expect(code).toBe(2);
    expect(error).toContain(says);
  });
});
