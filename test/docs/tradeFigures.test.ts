import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { tradeFigures } from '../../scripts/tradeFacts.ts';

const folder = new URL('../../docs/method/figures/', import.meta.url);
const css = readFileSync(new URL('../../src/report/drawing.css', import.meta.url), 'utf8');
const pages = ['trade-facts', 'airframe-facts']
  .map((name) => readFileSync(new URL(`../../docs/method/${name}.md`, import.meta.url), 'utf8'))
  .join('');
const figures = tradeFigures(css);
const NUMBER = /-?\d+(?:\.\d+)?/g;

/** How far a line may wander before the committed figure counts as stale [px of 560]: no reader sees less. */
const SEEN = 1.5;

it.each([...figures])(
  '%s shows what the physics says today (else: npx tsx scripts/figures.ts)',
  (name, fresh) => {
    const drawn = readFileSync(new URL(name, folder), 'utf8');
    expect(drawn.replace(NUMBER, '#')).toBe(fresh.replace(NUMBER, '#'));
    const [was, is] = [drawn, fresh].map((svg) => (svg.match(NUMBER) ?? []).map(Number));
    const furthest = Math.max(...was!.map((value, i) => Math.abs(value - is![i]!)));
    expect(furthest).toBeLessThan(SEEN);
  },
);

it('every figure is on a page, and the pages show no other', () => {
  const shown = [...pages.matchAll(/\(figures\/([\w-]+\.svg)\)/g)].map(([, name]) => name);
  expect(shown.sort()).toEqual([...figures.keys()].sort());
  expect(readdirSync(folder).sort()).toEqual([...figures.keys()].sort());
});
