import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ARM_FILE, FRAME_FILE } from '../../src/cli/print/questionExamples.ts';
import { demo, quadwright } from './fakeIo.ts';

/** Sections of the reference by their heading. */
const sections = new Map(
  readFileSync('docs/json.md', 'utf8')
    .split(/^## /m)
    .slice(1)
    .map((section) => {
      const end = section.indexOf('\n');
      return [section.slice(0, end), section.slice(end)] as const;
    }),
);

/** Names of fields down to a depth; what stands under a field of `keyed` is named by ids, not by fields. */
function fieldsOf(value: unknown, depth: number, keyed: readonly string[]): Set<string> {
  const found = new Set<string>();
  const look = (each: unknown, left: number): void => {
    if (left === 0 || typeof each !== 'object' || each === null) return;
    if (Array.isArray(each)) {
      for (const item of each) look(item, left);
      return;
    }
    for (const [field, inner] of Object.entries(each)) {
      found.add(field);
      if (!keyed.includes(field)) look(inner, left - 1);
    }
  };
  look(value, depth);
  return found;
}

const turnstone = `${demo}/turnstone.yaml`;
const rotor = 'ask rotor --diameter 5in --pitch 3.75in --blades 3 --rpm 6000';
const files = { 'arm.yaml': ARM_FILE, 'frame.yaml': FRAME_FILE, 'bad.yaml': 'format: quadwright-build-1\n' };

describe('every field of --json stands in docs/json.md', () => {
  it.each([
    ['`assess --json`', `assess ${turnstone}`],
    ['`compare --json`', `compare ${turnstone} ${demo}/tystie.yaml`],
    ['`ask rotor --json`', `${rotor} --speed 0m/s`],
    ['`ask rotor --json`', `${rotor} --speed=-4m/s`],
    ['`ask point --json`', `ask point ${turnstone}`],
    ['`ask gusts --json`', 'ask gusts --wind 7m/s'],
    ['`ask trim --json`', `ask trim ${turnstone}`],
    ['`ask arm`, `ask frame`, with `--json`', 'ask arm --file arm.yaml'],
    ['`ask arm`, `ask frame`, with `--json`', 'ask frame --file frame.yaml'],
    ['`ask motor --json`', 'ask motor --part haar-2306-1720 --rpm 24000 --torque 120mNm'],
    ['`ask pack --json`', 'ask pack --part samphire-1300-6s'],
    ['`ask air --json`', 'ask air'],
    ['`tune --json`', `tune ${turnstone} --turn pack-position=-20mm..20mm --most 20`],
    ['`leanings --json`', `leanings ${turnstone} --rows 16`],
    ['`check --json`', 'check bad.yaml'],
  ])('%s: %s', async (heading, words) => {
    const section = sections.get(heading) ?? '';
    const { code, out, error } = await quadwright([...words.split(' '), '--json'], files);
    expect([0, 1, words.startsWith('check') ? 2 : 0], error).toContain(code);
    const fields = fieldsOf(JSON.parse(out), 4, [
      'assessments',
      'scale',
      'banded',
      'hover',
      'fullThrottle',
      'effects',
      'model',
      'valuesBefore',
      'valuesAfter',
    ]);
    expect(fields.size).toBeGreaterThan(3);
    for (const field of fields) expect(section).toMatch(new RegExp(`\\b${field}\\b`));
  });
});
