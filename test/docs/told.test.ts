// Everything computed that README and docs show, told anew. CONTRIBUTING.md says how a page is written for it.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { figures } from '../../scripts/told/figures.ts';
import { pages } from '../../scripts/told/pages.ts';
import { retell } from '../../scripts/told/retell.ts';

const shown: string[] = [];
const said: Parameters<typeof retell>[2] = new Map();

it.each(pages())(
  '%s shows what is computed today (else: npm run retell, and read what changed)',
  async (file) => {
    const { page, problems, shows } = await retell(readFileSync(file, 'utf8'), figures, said);
    shown.push(...shows);
    await expect(page).toMatchFileSnapshot(resolve(file));
    expect(problems).toEqual([]);
  },
);

it('every figure is on a page', () => {
  expect(Object.keys(figures).filter((name) => !shown.includes(name))).toEqual([]);
});
