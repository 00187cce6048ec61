import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileErrorText, type Reading } from '../../src/build/read/fileError.ts';
import { LONGEST_FILE } from '../../src/build/read/parseText.ts';
import { readBrief, readBuild, readBuildData } from '../../src/build/read/readBuild.ts';
import { BRIEF, BUILD } from './files.ts';

const errorsOf = (reading: Reading<unknown>) => (reading.ok ? [] : reading.errors);
const errors = (text: string) => errorsOf(readBuild(text, 'first.yaml'));

describe('a good build', () => {
  test('reads into SI with its defaults', () => {
    const read = readBuild(BUILD, 'first.yaml');
    if (!read.ok) throw new Error(read.errors.map(fileErrorText).join('\n'));
    expect(read.value.build.pack).toMatchObject({ part: 'gannet-pack', offset: 0.004, cycles: 0 });
    expect(read.value.build.motors).toEqual({ part: 'gannet-motor', except: [] });
    expect(read.value.build.cameras[0]?.tilt).toBeCloseTo((20 * Math.PI) / 180, 12);
  });

  test('reads alike from JSON', () => {
    const data = {
      format: 'quadwright-build-1',
      name: 'First of the club',
      frame: 'gannet-frame',
      motors: 'gannet-motor',
      propellers: 'gannet-propeller',
      controllers: 'gannet-controller',
      flightController: 'gannet-brain',
      pack: { part: 'gannet-pack', offset: '4 mm' },
      cameras: [{ part: 'gannet-camera', tilt: '20 deg' }],
    };
    const yaml = readBuild(BUILD, 'first.yaml');
    const json = readBuild(JSON.stringify(data, null, 2), 'first.json');
    const plain = readBuildData(data, 'first');
    expect(json.ok && json.value.build).toEqual(yaml.ok && yaml.value.build);
    expect(plain.ok && plain.value.build).toEqual(yaml.ok && yaml.value.build);
  });

  test('a brief reads too', () => {
    const read = readBrief(BRIEF, 'brief.yaml');
    expect(read.ok && read.value.site).toMatchObject({ temperature: 283.15, wind: { value: 7 } });
  });
});

describe('errors name file, line, column, field, found, allowed, remedy', () => {
  test('several at once, in the order of the lines', () => {
    const broken = BUILD.replace('name: First of the club', 'nmae: First')
      .replace('offset: 4 mm', 'offset: 4')
      .replace('tilt: 20 deg', 'tilt: 20 dge, rolle: flying');
    expect(errors(broken).map(fileErrorText)).toEqual([
      'first.yaml:1:1 name: is missing\n  Found nothing; allowed: text. Add the field.',
      expect.stringContaining('first.yaml:2:1 nmae: unknown field "nmae"'),
      'first.yaml:8:36 pack.offset: 4 is not a length with its unit\n' +
        '  Found 4; allowed: text such as "5.1 in". Write the number with its unit, like "5.1 in".',
      'first.yaml:10:34 cameras[0].tilt: "dge" is not a unit of angle\n' +
        '  Found "20 dge"; allowed: a number with one of deg, rad. Did you mean "20 deg"?',
      expect.stringContaining('first.yaml:10:42 cameras[0].rolle: unknown field "rolle"'),
    ]);
  });

  test('the nearest name is offered', () => {
    expect(errors(BUILD.replace('propellers:', 'properllers:'))).toContainEqual(
      expect.objectContaining({ line: 5, column: 1, remedy: 'Did you mean "propellers"?' }),
    );
    expect(errors(BUILD.replace('part: gannet-camera', 'part: gannet-camera, role: recrding'))).toEqual([
      expect.objectContaining({ path: 'cameras[0].role', remedy: 'Did you mean "recording"?' }),
    ]);
  });

  test('a number beyond its limits', () => {
    expect(errors(BUILD.replace('4 mm', '4 m'))).toEqual([
      expect.objectContaining({
        says: '"4 m" is outside -300 mm to 300 mm',
        allowed: '-300 mm to 300 mm',
        remedy: 'Give at most 300 mm.',
      }),
    ]);
  });

  test('an id that is none', () => {
    expect(errors(BUILD.replace('motors: gannet-motor', 'motors: Gannet Motor'))).toEqual([
      expect.objectContaining({ line: 4, column: 9, path: 'motors.part', found: '"Gannet Motor"' }),
    ]);
  });
});

describe('hostile text gives one clear error', () => {
  const quick = (text: string) => {
    const found = errors(text); // a parser that recurses or compares pairs takes minutes: the test's time limit ends it
    expect(found.length).toBeGreaterThan(0);
    return found;
  };

  test('2 MB of brackets', () => {
    const found = quick('['.repeat(2_000_000));
    expect(found.map(({ says }) => says)).toEqual(['the file is too large']);
  });

  test.each(['[', '{a: ', '- ', '? '])('"%s" without end', (piece) => {
    const found = quick(piece.repeat(Math.floor(LONGEST_FILE / piece.length)));
    expect(found.map(({ says }) => says)).toEqual(['brackets or lists are nested too deeply']);
  });

  test('a staircase of fields', () => {
    const text = Array.from({ length: 900 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n');
    expect(quick(text)[0]).toMatchObject({ says: 'brackets or lists are nested too deeply', line: 25 });
  });

  test('very many fields or quotes', () => {
    const fields = Array.from({ length: 40_000 }, (_, index) => `a${index}: 1`).join('\n');
    expect(quick(fields)).toEqual([expect.objectContaining({ says: 'the file holds too much' })]);
    expect(quick('"'.repeat(LONGEST_FILE))).toEqual([
      expect.objectContaining({ says: 'the file holds too much' }),
    ]);
  });

  test('a billion laughs, and a list that holds itself', () => {
    const laughs = Array.from({ length: 9 }, (_, level) => {
      const inner = Array(9).fill(level === 0 ? 'ha' : `*a${level - 1}`);
      return `a${level}: &a${level} [${inner.join(', ')}]`;
    });
    expect(quick(laughs.join('\n'))[0]?.says).toContain('too many references');
    expect(quick('a: &a [*a]')).toEqual([expect.objectContaining({ found: '*a', path: 'a[0]' })]);
  });

  test("names of JavaScript's own machinery", () => {
    const found = quick(`${BUILD}__proto__: { polluted: true }\nconstructor: 1\n`);
    expect(found.map(({ path }) => path)).toEqual(['__proto__', 'constructor']);
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  test('tags, second documents, repeated fields, tabs, nothing at all', () => {
    expect(quick('name: !!js/function "x"')[0]?.says).toContain('tag');
    expect(quick('a: 1\n---\nb: 2')[0]?.says).toContain('more than one document');
    expect(quick('name: a\nname: b')[0]?.says).toBe('"name" is given twice, first in line 1');
    expect(quick('a:\n\tb: 1')[0]?.says).toContain('tab');
    expect(quick('')[0]?.says).toBe('the file is empty');
    expect(quick('name: [1, 2\nb: "x')[0]?.line).toBe(2);
  });
});

describe('whatever comes in', () => {
  /** No reading may hold a NaN or an infinity anywhere. */
  const finite = (value: unknown): boolean =>
    typeof value === 'number'
      ? Number.isFinite(value)
      : typeof value !== 'object' || value === null || Object.values(value).every(finite);

  test('arbitrary text never throws', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 300 }), (text) => {
        expect(errors(text).every(({ line, column }) => line >= 1 && column >= 1)).toBe(true);
      }),
    );
  });

  test('arbitrary JSON never throws and is never a build', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(errors(text).length).toBeGreaterThan(0);
      }),
    );
  });

  test('one field replaced by anything gives errors or a build of finite numbers', () => {
    const names = ['name', 'frame', 'motors', 'pack', 'cameras', 'wiring', 'measured', 'screws'];
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.jsonValue(), (name, value) => {
        const data = {
          format: 'quadwright-build-1',
          name: 'x',
          frame: 'a',
          motors: 'b',
          propellers: 'c',
          flightController: 'd',
          pack: 'e',
          [name]: value,
        };
        const read = readBuild(JSON.stringify(data), 'x.json');
        expect(read.ok ? finite(read.value.build) : read.errors.length > 0).toBe(true);
      }),
    );
  });
});
