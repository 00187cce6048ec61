import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { atRest, expectNoFaults, expectNoSidewaysScroll, openBench, pressEscape } from './browser.ts';

const LIST =
  'Artikel;Gewicht;Price (EUR);KV;Stator\nTern 2306;32,5;17,90;1.950;2306\nSkua;;21,00;1.750;2207\nTern 2306;33;18,00;1.950;2306\n';

const { share, visit } = openBench();

/** A page without parts of one's own, narrow at first. */
const any = share({ width: 390 });

async function give(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: 'desk', exact: true }).click();
  await page
    .getByLabel('files to take in')
    .setInputFiles({ name: 'motors.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await page.getByRole('heading', { name: 'Parts from motors.csv' }).waitFor();
}

const pick = async (page: Page, label: string, option: string): Promise<void> =>
  void (await page.getByRole('combobox', { name: label, exact: true }).selectOption(option));

describe('a list of parts', () => {
  it('is shown first, told column by column, and laid on the shelf; the next one is read by itself', async () => {
    const { page, complaints } = await visit();
    await give(page, LIST);
    await pick(page, 'kind of part', 'motor');
    await pick(page, 'what Artikel is', 'name');
    await pick(page, 'what Gewicht is', 'mass');
    await page.getByText('has no unit').first().waitFor();
    await pick(page, 'unit of Gewicht', 'g');
    await page.getByText('1 of 3 rows can not be read').waitFor();
    await expect
      .poll(() => page.locator('.list-errors').textContent())
      .toContain('motors.csv:3:2 "Gewicht" (mass)');
    await expect.poll(() => page.getByRole('button', { name: /^lay/ }).isDisabled()).toBe(true);
    await page.getByLabel('put the new ones in their place').check();
    await page.getByLabel('take the rows that read').check();
    await page.getByText('known in line 2: takes its place').waitFor();
    await page.getByRole('button', { name: 'lay 1 part on your shelf' }).click();
    await page.getByText('On your shelf now: 1 from').waitFor();
    // The columns are kept before that is said; the shelf a little later.
    await page.getByText('kept in this browser').waitFor();

    await page.reload();
    await atRest(page);
    await give(page, LIST);
    await page.getByText('as remembered from last time').waitFor();
    await page.getByText('known on the own shelf').first().waitFor();
    expect(complaints).toEqual([]);
  });

  it('has no accessibility fault and does not scroll sideways, narrow and wide', async () => {
    const { page } = await any();
    await give(page, LIST);
    await pick(page, 'kind of part', 'motor');
    await page.getByRole('combobox', { name: 'what Gewicht is', exact: true }).waitFor();
    for (const width of [390, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      await expectNoFaults(page, `${width} px`);
      await expectNoSidewaysScroll(page, 'html', `${width} px`);
      await expectNoSidewaysScroll(page, '.list-dialog', `${width} px`);
    }
    await pressEscape(page);
  });

  it('that is none is told in words', async () => {
    const { page } = await any();
    await give(page, 'name,mass\n"a,b\n');
    await expect
      .poll(() => page.getByRole('alert').first().textContent())
      .toContain('a quote is opened and not closed');
  });
});
