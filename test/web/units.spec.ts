import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { SHEETS as ALL } from '../../src/web/state/sheetNames.ts';
import { atRest, openBench, TOP, turnTo } from './browser.ts';

const { visit } = openBench();

/** The shortlist has nothing to say before a search. */
const SHEETS = ALL.filter((sheet) => sheet !== 'shortlist');

/** All that the sheet on top says, drawings, labels for screen readers and fields included. */
const said = (page: Page) =>
  page
    .locator(TOP)
    .evaluate((sheet) =>
      [
        ...[...sheet.querySelectorAll('p, li, dt, dd, th, td, text, label, small, span, option, button')].map(
          (each) => (each.children.length === 0 ? (each.textContent ?? '') : ''),
        ),
        ...[...sheet.querySelectorAll('p, li, dd')].map((each) => each.textContent ?? ''),
        ...[...sheet.querySelectorAll('[aria-label]')].map((each) => each.getAttribute('aria-label') ?? ''),
      ].filter((words) => words !== ''),
    );

describe('a page in other units', () => {
  it('says no quantity in metric units on any sheet', async () => {
    const { page } = await visit('choice', {}, async (fresh) => {
      await fresh.addInitScript(() => localStorage.setItem('quadwright-units', 'imperial'));
    });
    for (const sheet of SHEETS) {
      await turnTo(page, sheet);
      await atRest(page);
      const metric = async () =>
        (await said(page)).filter(
          (words) =>
            // Marked as a quantity, or a unit by itself; names, sizes parts are sold by and limits of laws have plain spaces.
            /\d\u00a0(mm|cm|m|km|g|kg|m\/s|degC)(?![\w/]| cm2)/.test(words) || /\b(m\/s|degC)\b/.test(words),
        );
      await expect.poll(metric, { message: sheet }).toEqual([]);
    }
  });
});

describe('a page in another language of numbers', () => {
  // Names of the shelf with a point in them, and printed sizes, are called so everywhere.
  const names = /Halyard 2\.4|Tiller 2\.4|1\.5, 2, 2\.5 mm|\d(\.\d)? x \d(\.\d)?( x \d)?/g;

  for (const locale of ['de-DE', 'fr-FR'])
    it(`has no decimal points on any sheet (${locale}), and every name as it is`, async () => {
      const { page } = await visit('choice', { locale });
      let named = '';
      for (const sheet of SHEETS) {
        await turnTo(page, sheet);
        await atRest(page);
        const points = async () =>
          (await said(page)).filter((words) =>
            /\d\.\d|\b(Tiller|Halyard) 2,4/.test(words.replaceAll(names, '')),
          );
        await expect.poll(points, { message: sheet }).toEqual([]);
        named += (await said(page)).join('\n');
      }
      expect(named).toMatch(/Tiller 2\.4/);
    });
});
