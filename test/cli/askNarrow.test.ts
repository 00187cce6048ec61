// Every question of a build as a newcomer reads it: in 80 columns, no number without a unit. Wide tables once wrapped in the
// terminal, a `trim` at 150 columns; what a figure leans on pushed others to 180.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { quadwright } from './fakeIo.ts';

const turnstone = readFileSync('demo/first-freestyle/turnstone.yaml', 'utf8');
const onFrame = (frame: string) =>
  turnstone.replace(/^frame: .*/m, `frame: ${frame}`).replace(/^name: .*/m, `name: On ${frame}`);

/** Layouts that no demo has: three, six and eight motors. */
const OWN: Readonly<Record<string, string>> = {
  'tri.yaml': onFrame('avocet-tri'),
  'hexa.yaml': onFrame('eider-hexa'),
  'x8.yaml': onFrame('smew-x8'),
};
const demos = ['cruiser', 'first-freestyle', 'guarded', 'micro'].flatMap((folder) =>
  readdirSync(`demo/${folder}`)
    .filter((file) => file !== 'brief.yaml')
    .map((file) => `demo/${folder}/${file}`),
);
const builds = [...demos, 'demo/own-build.yaml', ...Object.keys(OWN)];
const VERBS = [
  ['trim'],
  ['point'],
  ['heat', '--how'],
  ['minutes'],
  ['speed'],
  ['wind'],
  ['reserve'],
  ['mission'],
  ['fly', '--scene', 'bank'],
  ['picture'],
  ['shake'],
  ['hits'],
  ['knocks'],
];

const UNIT =
  /^(gf|g|mm|m|km|N|N m|m\/s|ms|s|min|h|days|deg|deg\/s2?|rpm|A|V|W|mW|%|degC|Wh|J|Hz|px|GBP|EUR|USD)\*?$/;
/** Columns and measures that are counts or ratios. */
const BARE =
  /felt|reserve|broken|90th|lift over weight|rings at throttle|shape|failures|full control|hardest motor|crashes/;

/** Cells of every table as [column's title, row's label, text]. */
function cellsOf(text: string): readonly (readonly [title: string, label: string, cell: string])[] {
  const lines = text.split('\n');
  return lines.flatMap((line, at) => {
    if (!/^ *-+( +-+)* *$/.test(line)) return [];
    const spans = [...line.matchAll(/-+/g)].map(
      ({ 0: dashes, index }) => [index, index + dashes.length] as const,
    );
    const above = lines.slice(0, at);
    const first = above.findLastIndex((each) => each === '' || each.includes(':')) + 1;
    const titles = spans.map(([from, to]) =>
      above
        .slice(first)
        .map((each) => each.slice(from, to).trim())
        .join(' ')
        .trim(),
    );
    const end = lines.findIndex((each, i) => i > at && each === '');
    return lines.slice(at + 1, end < 0 ? undefined : end).flatMap((row) => {
      const cells = row.trim().split(/ {2,}/);
      // An empty first title or an empty cell leaves fewer: told by position only where all are there.
      return cells.length === spans.length
        ? cells.slice(1).map((cell, i) => [titles[i + 1] ?? '', cells[0] ?? '', cell] as const)
        : [];
    });
  });
}

function expectUnits(text: string): number {
  const cells = cellsOf(text).filter(([, , cell]) => /\d/.test(cell) && !cell.endsWith('states of doubt'));
  for (const [title, label, cell] of cells) {
    const own = /\d\)?[ \u00a0]([^ \u00a0\d]+( m)?)$/.exec(cell.replace(/, or .*/, ''))?.[1];
    const last = title.split(' ').at(-1) ?? '';
    const told =
      (own !== undefined && UNIT.test(own)) ||
      UNIT.test(last) ||
      / (N m|at m\/s)$/.test(title) ||
      (title === 'by' && /\d (mm|degrees|%)/.test(cell));
    expect(told || BARE.test(title) || BARE.test(label), `${label} | ${title} | ${cell}`).toBe(true);
  }
  return cells.length;
}

describe.each(builds)('%s', (build) => {
  it.each(VERBS)('ask %s', async (verb, ...more) => {
    const shelf = build === 'demo/own-build.yaml' ? ['--shelf', 'demo/own-shelf.yaml'] : [];
    const { code, out, error } = await quadwright(['ask', verb!, build, ...more, ...shelf], OWN);
    // The simulation tilts no servo, and says so.
    if (verb === 'fly' && build === 'tri.yaml') {
      expect(error).toContain('servo');
      return;
    }
    expect(error).toBe('');
    expect([0, 1]).toContain(code);
    for (const line of out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
    expect(out).not.toMatch(/NaN|undefined|Infinity|null|\[object|\d[eE][+-]?\d/);
    expectUnits(out);
  });
});

it('finds numbers without a unit', () => {
  expect(() =>
    expectUnits('motor  thrust gf  mass\n-----  ---------  ----\nfront  3 (2 to 4)  12\n'),
  ).toThrow();
  expect(expectUnits('motor  thrust gf  mass g\n-----  ---------  ------\nfront  3 (2 to 4)  12\n')).toBe(2);
});
