import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { candidates, demo, quadwright } from './fakeIo.ts';

const turnstone = readFileSync(`${demo}/turnstone.yaml`, 'utf8');
const brief = `${demo}/brief.yaml`;

describe('check', () => {
  it('passes every file of the demo', async () => {
    const { code } = await quadwright(['check', ...candidates, brief]);
    expect(code).toBe(0);
  });

  it('tells line, column, field, found, allowed and remedy of everything wrong at once', async () => {
    const text = turnstone
      .replace('motors: ', 'moters: ')
      .replace(/motorLength: [^ }]+ mm/, 'motorLength: 8');
    const { code, out } = await quadwright(['check', 'bad.yaml'], { 'bad.yaml': text });
    expect(code).toBe(2);
    expect(out).toMatch(/bad\.yaml:\d+:\d+ moters/);
    expect(out).toContain('Did you mean "motors"?');
    expect(out).toContain('motorLength');
    expect(out).toContain('allowed');
  });

  it('tells every part of a build that is not on the shelf, or is of another kind', async () => {
    const text = turnstone.replace('haar-2306-1720', 'haar-2306-1721').replace('groyne-45', 'turnstone-5');
    const { code, out } = await quadwright(['check', 'bad.yaml'], { 'bad.yaml': text });
    expect(code).toBe(2);
    expect(out).toContain('bad.yaml:6:9 motors.part: no motor with the id "haar-2306-1721" is on the shelf');
    expect(out).toContain('Did you mean "haar-2306-1720"?');
    expect(out).toContain('"turnstone-5" is a frame, not a controller');
  });

  it('looks for the parts of a build in the shelves beside it, wherever they stand', async () => {
    const own = ['demo/own-build.yaml', 'demo/own-shelf.yaml'];
    for (const files of [own, [...own].reverse()]) {
      expect((await quadwright(['check', ...files])).code).toBe(0);
    }
    expect((await quadwright(['check', 'demo/own-build.yaml'])).code).toBe(2);
  });

  it('does not tell a fault of a shelf again at the builds that use it', async () => {
    const shelf = readFileSync('demo/own-shelf.yaml', 'utf8').replace('mass: 119 g', 'mass: -119 g');
    const { code, out } = await quadwright(['check', 'demo/own-build.yaml', 'shelf.yaml'], {
      'shelf.yaml': shelf,
    });
    expect(code).toBe(2);
    expect(out).toContain('demo/own-build.yaml: fine (a build)');
    expect(out.match(/Found/g)).toHaveLength(1);
  });
});

describe('a file of another kind than wanted', () => {
  it.each([
    [['assess', brief], 'this is a brief, not a build'],
    [
      ['assess', `${demo}/turnstone.yaml`, '--brief', `${demo}/turnstone.yaml`],
      'this is a build, not a brief',
    ],
    [['shelf', '--shelf', brief], 'this is a brief, not a shelf'],
    [['ask', 'arm', '--file', brief], 'this is a brief, not an arm'],
    [['ask', 'frame', '--file', brief], 'this is a brief, not a frame'],
  ])('%j is one error', async (words, says) => {
    const { code, error } = await quadwright(words);
    expect(code).toBe(2);
    expect(error).toContain(`:3:9 format: ${says}`);
    expect(error.match(/Found/g)).toHaveLength(1);
  });
});
