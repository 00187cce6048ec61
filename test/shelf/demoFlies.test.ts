import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import type { Assessment } from '../../src/assess/assessment.ts';
import { readBrief, readBuild } from '../../src/build/read/readBuild.ts';
import { sectionTables } from '../../src/rotor/sections.ts';
import { shippedShelf } from './shippedFiles.ts';

/* Whether the demo holds together: windows of the trade (common practice, no source), by the whole of `assess`. */

const sections = sectionTables();

function assessFolder(folder: string): ReadonlyMap<string, Assessment> {
  const brief = readBrief(readFileSync(`demo/${folder}/brief.yaml`, 'utf8'), 'brief.yaml');
  if (!brief.ok) throw new Error(JSON.stringify(brief, null, 1));
  const names = readdirSync(`demo/${folder}`).filter((name) => name !== 'brief.yaml');
  return new Map(
    names.map((name) => {
      const build = readBuild(readFileSync(`demo/${folder}/${name}`, 'utf8'), name);
      if (!build.ok) throw new Error(JSON.stringify(build, null, 1));
      const context = { brief: brief.value, shelf: shippedShelf, sections, where: build.value };
      const assessment = assess(build.value.build, context);
      if (!assessment.ok) throw new Error(JSON.stringify(assessment, null, 1));
      return [name.replace('.yaml', ''), assessment.value];
    }),
  );
}

const measured = ({ measures }: Assessment, id: string) =>
  measures.find((measure) => measure.id === id)?.value ?? fail(id);
function fail(id: string): never {
  throw new Error(`no measure ${id}`);
}

const stops = ({ findings }: Assessment) =>
  findings.filter(({ severity }) => severity === 'stop').map(({ id }) => id);

describe('the six first freestyle builds', () => {
  const six = assessFolder('first-freestyle');

  it.each([...six.keys()])(
    '%s hovers on a quarter to a third of its throttle and lifts 6 to 10 times its weight',
    (name) => {
      const assessment = six.get(name) as Assessment;
      const throttle = measured(assessment, 'hover-throttle');
      expect(throttle).toBeGreaterThan(0.2);
      expect(throttle).toBeLessThan(0.35);
      const ratio = measured(assessment, 'thrust-to-weight');
      expect(ratio).toBeGreaterThan(6);
      expect(ratio).toBeLessThan(10);
    },
  );

  it.each([...six.keys()])('%s is flown for three and a half to six minutes', (name) => {
    const minutes = measured(six.get(name) as Assessment, 'flown-time') / 60;
    expect(minutes).toBeGreaterThan(3.5);
    expect(minutes).toBeLessThan(6);
  });

  it('hold one mistake, the screws of the Bonxie, and no other stop', () => {
    for (const [name, assessment] of six) {
      expect(stops(assessment), name).toEqual(name === 'bonxie' ? ['motor-screw-into-winding'] : []);
    }
  });

  it('have no plain winner: no build is best in mass, minutes, price and missing parts at once', () => {
    const best = (id: string, sign: 1 | -1) =>
      [...six].sort(([, a], [, b]) => sign * (measured(a, id) - measured(b, id)))[0]?.[0];
    const winners = [best('all-up-mass', 1), best('flown-time', -1), best('first-flight-cost', 1)];
    const complete = best('missing-cost', 1);
    expect(new Set([...winners, complete]).size).toBeGreaterThanOrEqual(3);
  });

  it('load the front of the dead cat most', () => {
    const loads = [...six].map(
      ([name, assessment]) => [name, measured(assessment, 'hardest-motor-load')] as const,
    );
    expect([...loads].sort((a, b) => b[1] - a[1])[0]?.[0]).toBe('kittiwake');
  });
});

describe('the later builds', () => {
  it.each(['micro', 'guarded'] as const)('%s has no stop', (folder) => {
    for (const assessment of assessFolder(folder).values()) expect(stops(assessment)).toEqual([]);
  });

  it('the cruiser has none on LiPo, and one on round cells, for their amps', () => {
    const cruiser = assessFolder('cruiser');
    const of = (name: string) => stops(cruiser.get(name) as Assessment);
    expect(of('curlew')).toEqual([]);
    expect(of('curlew-li-ion')).toEqual(['pack-current']);
  });

  it('the round cells stay in the air a third longer', () => {
    const cruiser = assessFolder('cruiser');
    const minutes = (name: string) => measured(cruiser.get(name) as Assessment, 'hover-endurance') / 60;
    expect(minutes('curlew-li-ion')).toBeGreaterThan(1.33 * minutes('curlew'));
  });
});
