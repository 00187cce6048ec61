import { describe, expect, test } from 'vitest';
import { readBuild } from '../../src/build/read/readBuild.ts';
import { demo, quadwright } from './fakeIo.ts';

const build = `${demo}/turnstone.yaml`;
const brief = ['--brief', `${demo}/brief.yaml`];

async function writing(words: readonly string[]) {
  const written = new Map<string, string | Uint8Array>();
  const ran = await quadwright(words, {}, written);
  return { ...ran, written: (path: string) => String(written.get(path) ?? '') };
}

describe('tune', () => {
  // Four equal motors share a hover equally only with the balance in their middle (static equilibrium).
  test('brings the pack to where the motors share the load, writes the build and tells the way', async () => {
    const words = [
      'tune',
      build,
      ...brief,
      '--turn',
      'pack-position=-20 mm..20 mm',
      '--want',
      'hardest-motor-load=5',
    ];
    const { code, out, written } = await writing([
      ...words,
      '--most',
      '60',
      '--write',
      'tuned.yaml',
      '--json',
    ]);
    expect(code).toBe(0);
    const report = JSON.parse(out);
    expect(report.after).toBeGreaterThan(report.before);
    expect(report.valuesAfter['hardest-motor-load']).toBeLessThan(report.valuesBefore['hardest-motor-load']);
    expect(report.trace.at(-1).standing).toBe(report.after);
    expect(report.knobs[0].before).toBeCloseTo(-0.004, 9);
    const read = readBuild(written('tuned.yaml'), 'tuned.yaml');
    expect(read.ok && read.value.build.pack.offset).toBeCloseTo(report.knobs[0].after, 9);
  });

  test('a true X swept is a stretched or a squashed one', async () => {
    const words = [
      'tune',
      build,
      ...brief,
      '--turn',
      'layout-sweep=0.7..0.8',
      '--want',
      'least-tip-gap=5@0 mm..60 mm',
    ];
    const { written } = await writing([...words, '--most', '20', '--write', 'tuned.yaml']);
    expect(written('tuned.yaml')).toContain('squashed X');
  });

  test.each([
    [[], '--turn: nothing to turn'],
    [['--turn', 'pack-positon=1 mm..2 mm'], 'Did you mean "pack-position"?'],
    [['--turn', 'pack-position=2 mm..1 mm'], 'must lie above'],
    [['--turn', 'pack-position=-2 m..1 mm'], 'out of range'],
    [['--turn', 'camera-tilt=10..20'], 'has no unit'],
    [['--turn', 'layout-size=0.9..1.1', '--turn', 'layout-size=0.9..1.2'], 'given twice'],
  ])('tells in words what is wrong with %j', async (words, says) => {
    const { code, error } = await quadwright(['tune', build, ...brief, ...words]);
    expect(code).toBe(2);
    expect(error).toContain(says);
  });
});

describe('leanings', () => {
  test('bars and shares agree on what the flown minutes lean on, and the figure is drawn', async () => {
    const { out, written } = await writing([
      'leanings',
      build,
      ...brief,
      '--rows',
      '64',
      '--svg',
      'l.svg',
      '--json',
    ]);
    const report = JSON.parse(out);
    expect(report.figure).toBe('flown-time');
    expect(report.tornado[0].label).toBe(report.sobol[0].label);
    const sum = report.sobol.reduce((total: number, { total: own }: { total: number }) => total + own, 0);
    // Totals add up to at least the whole (Homma and Saltelli 1996), within what 64 rows scatter.
    const scatter = Math.hypot(...report.sobol.map(({ totalError }: { totalError: number }) => totalError));
    expect(sum).toBeGreaterThan(1 - 2 * scatter);
    expect(scatter).toBeLessThan(0.25);
    expect(written('l.svg')).toMatch(/^<svg .*how hard it is flown/s);
  });

  test('as text, without a value of nothing', async () => {
    const { code, out } = await quadwright([
      'leanings',
      build,
      ...brief,
      '--rows',
      '16',
      '--of',
      'thrust-to-weight',
    ]);
    expect(code).toBe(0);
    expect(out).toContain('Sobol indices');
    expect(out).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('a misspelt figure is told with its nearest', async () => {
    const { code, error } = await quadwright(['leanings', build, ...brief, '--of', 'flown-tim']);
    expect(code).toBe(2);
    expect(error).toContain('Did you mean "flown-time"?');
  });
});
