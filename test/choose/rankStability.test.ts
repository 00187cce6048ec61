import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { assessCraft } from '../../src/assess/assess.ts';
import { airOf } from '../../src/assess/dayOf.ts';
import { type PreparedRotors, prepareRotors } from '../../src/assess/prepareRotors.ts';
import { readBrief, readBuild } from '../../src/build/read/readBuild.ts';
import { resolveBuild } from '../../src/build/resolve/resolveBuild.ts';
import { doubtedCraft } from '../../src/choose/doubtedCraft.ts';
import { drawBuilds } from '../../src/choose/drawBuilds.ts';
import { rankStability } from '../../src/choose/rankStability.ts';
import { sensitivities } from '../../src/choose/sensitivities.ts';
import { usualSoftWants } from '../../src/choose/shortlist/usualScales.ts';
import { tornado } from '../../src/choose/tornado.ts';
import { sectionTables } from '../../src/rotor/sections.ts';
import { shippedShelf as shelf } from '../shelf/shippedFiles.ts';

const sections = sectionTables();
const brief = mustBe(readBrief(readFileSync('demo/first-freestyle/brief.yaml', 'utf8'), 'brief'));
let rotors: PreparedRotors = new Map();
const crafts = ['turnstone', 'bonxie', 'tystie'].map((name) => {
  const file = mustBe(readBuild(readFileSync(`demo/first-freestyle/${name}.yaml`, 'utf8'), name));
  const craft = mustBe(resolveBuild(file.build, shelf));
  rotors = mustBe(prepareRotors(craft, airOf(brief), sections, rotors));
  return craft;
});
const context = { brief, shelf, sections, rotors };
const wants = usualSoftWants(brief);

function mustBe<T>(reading: { ok: true; value: T } | { ok: false }): T {
  if (!reading.ok) throw new Error(JSON.stringify(reading));
  return reading.value;
}

describe('rank stability', () => {
  it('shares of each build and of each place add to one, and a seed fixes them', () => {
    const run = () => rankStability(drawBuilds(crafts, context, { draws: 40, seed: 11 }), wants);
    const { places } = run();
    for (const row of places) expect(row.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    for (const place of [0, 1, 2]) {
      expect(places.reduce((sum, row) => sum + row[place]!, 0)).toBeCloseTo(1, 12);
    }
    expect(run().places).toEqual(places);
  });

  it('a build against itself never changes place: what two builds share is drawn once', () => {
    const { places } = rankStability(
      drawBuilds([crafts[0]!, crafts[0]!], context, { draws: 30, seed: 3 }),
      wants,
    );
    expect(places[0]).toEqual([1, 0]);
  });
});

describe('what a figure leans on', () => {
  const craft = mustBe(doubtedCraft(crafts[0]!, context));

  it('nominal is the assessed value', () => {
    const assessed = assessCraft(crafts[0]!, context).measures.find(({ id }) => id === 'flown-time')!;
    expect(craft.figuresAt(() => 0)['flown-time']).toBe(assessed.value);
  });

  it('a tornado is widest first and heavier is shorter', () => {
    const bars = tornado(craft, 'flown-time');
    const width = ({ low, high }: (typeof bars)[number]) =>
      Math.max(...[low, high].map((value) => Math.abs(value! - craft.figures['flown-time']!)));
    for (const [i, bar] of bars.slice(1).entries()) expect(width(bar)).toBeLessThanOrEqual(width(bars[i]!));
    const mass = bars.find(({ label }) => label === 'mass')!;
    expect(mass.low!).toBeGreaterThan(mass.high!);
  });

  // JCGM 100 linear shares of `assess` and variance-based totals agree where the model is nearly straight.
  it('total indices agree with the linear shares of assess to a tenth', () => {
    const found = sensitivities(craft, 'hover-current', 1000, 2);
    const assessed = assessCraft(crafts[0]!, context).measures.find(({ id }) => id === 'hover-current')!;
    const lift = assessed.leansOn
      .filter(({ input }) => input.startsWith('propeller'))
      .reduce((sum, { share }) => sum + share, 0);
    expect(Math.abs(found.find(({ label }) => label === 'propeller')!.total - lift)).toBeLessThan(0.1);
  });
});
