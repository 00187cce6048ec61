import { readdirSync, readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileErrorText, type Reading } from '../../src/build/read/fileError.ts';
import { parseText } from '../../src/build/read/parseText.ts';
import { readBrief, readBuild } from '../../src/build/read/readBuild.ts';
import { briefData } from '../../src/build/write/briefData.ts';
import { buildData } from '../../src/build/write/buildData.ts';
import { yamlText } from '../../src/build/write/yamlText.ts';

const DEMO = 'demo/first-freestyle';
const files = readdirSync(DEMO).filter((name) => name.endsWith('.yaml'));
const taken = <T>(reading: Reading<T>): T => {
  if (!reading.ok) throw new Error(reading.errors.map(fileErrorText).join('\n'));
  return reading.value;
};

/** Numbers to nine places: a file rounds the last bits of a conversion away. */
const rounded = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value), (_, each) =>
    typeof each === 'number' ? Number(each.toPrecision(9)) : each,
  );

describe('files written', () => {
  for (const file of files.filter((name) => name !== 'brief.yaml'))
    it(`${file} comes back as it was, as YAML and as JSON`, () => {
      const { build } = taken(readBuild(readFileSync(`${DEMO}/${file}`, 'utf8'), file));
      const data = buildData(build);
      expect(rounded(taken(readBuild(yamlText(data), 'written')).build)).toEqual(rounded(build));
      expect(rounded(taken(readBuild(JSON.stringify(data), 'written')).build)).toEqual(rounded(build));
    });

  it('the brief comes back as it was', () => {
    const brief = taken(readBrief(readFileSync(`${DEMO}/brief.yaml`, 'utf8'), 'brief.yaml'));
    expect(rounded(taken(readBrief(yamlText(briefData(brief)), 'written')))).toEqual(rounded(brief));
  });

  it('every field of a build survives, layouts of positions among them', () => {
    const text = readFileSync(`${DEMO}/bonxie.yaml`, 'utf8');
    const { build } = taken(readBuild(text, 'bonxie.yaml'));
    const full = {
      ...build,
      frame: {
        part: build.frame.part,
        armThickness: 0.0055,
        layout: {
          kind: 'positions' as const,
          motors: [
            { name: 'one', x: 0.1, y: 0.08, spin: 'clockwise' as const },
            { name: 'two', x: -0.1, y: 0.0801234, spin: 'counterclockwise' as const },
            { name: 'three', x: -0.1, y: -0.08, spin: 'clockwise' as const },
          ],
        },
      },
      motors: { part: 'haar-2207-1720', except: [{ at: 'one', part: 'haar-2306-1720' }] },
      pack: { ...build.pack, side: 'below' as const, cycles: 40 },
      cameras: build.cameras.map((camera) => ({ ...camera, place: { x: 0.06, y: 0.001, z: -0.02 } })),
      measured: {
        mass: { value: 0.7441, deviation: 0.001, trust: 'measured' as const, source: 'scale: kitchen' },
      },
    };
    expect(rounded(taken(readBuild(yamlText(buildData(full)), 'written')).build)).toEqual(rounded(full));
  });

  it('any plain data comes back from its YAML', () => {
    const key = fc.stringMatching(/^[a-z][a-zA-Z0-9]{0,10}$/).filter((name) => name !== 'constructor');
    const leaf = fc.oneof(
      fc.string({ maxLength: 40 }),
      fc.integer(),
      fc.boolean(),
      fc.constantFrom(
        'yes',
        'no',
        '12',
        '1e5',
        '0x10',
        '~',
        'null',
        '- a',
        'a: b',
        'a #b',
        "it's",
        '5 %',
        '',
        ' ',
      ),
    );
    const { tree } = fc.letrec((tie) => ({
      tree: fc.dictionary(
        key,
        fc.oneof({ maxDepth: 3 }, leaf, fc.array(leaf, { maxLength: 4 }), tie('tree')),
        {
          maxKeys: 5,
          noNullPrototype: true,
        },
      ),
    }));
    fc.assert(
      fc.property(tree, (data) => {
        fc.pre(Object.keys(data as object).length > 0);
        const read = parseText(yamlText(data as Record<string, unknown>), 'written');
        expect(read.ok && read.value.data).toEqual(data);
      }),
    );
  });
});
