import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { launch, openPage, settled, type WatchedPage } from './browser.ts';
import { servePage } from './servePage.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const LIST =
  'Artikel;Gewicht;Price (EUR);KV;Stator\nTern 2306;32,5;17,90;1.950;2306\nSkua;;21,00;1.750;2207\nTern 2306;33;18,00;1.950;2306\n';

let browser: Browser;
let server: Awaited<ReturnType<typeof servePage>>;
const opened: WatchedPage[] = [];

beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePage()]);
});
afterAll(async () => {
  await browser.close();
  server.close();
});
afterEach(async () => {
  for (const { page } of opened.splice(0)) await page.context().close();
});

async function visit(width = 1440): Promise<WatchedPage> {
  const watched = await openPage(browser, { width });
  opened.push(watched);
  await watched.page.goto(server.address);
  await settled(watched.page);
  return watched;
}

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
    expect(await page.locator('.list-errors').textContent()).toContain('motors.csv:3:2 "Gewicht" (mass)');
    const keep = page.getByRole('button', { name: /^lay/ });
    expect(await keep.isDisabled()).toBe(true);
    await page.getByLabel('put the new ones in their place').check();
    await page.getByLabel('take the rows that read').check();
    await page.getByText('known in line 2: takes its place').waitFor();
    await page.getByRole('button', { name: 'lay 1 part on your shelf' }).click();
    await page.getByText('On your shelf now: 1 from').waitFor();

    await page.reload();
    await settled(page);
    await give(page, LIST);
    await page.getByText('as remembered from last time').waitFor();
    await page.getByText('known on the own shelf').first().waitFor();
    expect(complaints).toEqual([]);
  });

  it.each([390, 1440])('has no accessibility fault and does not scroll sideways, %i px', async (width) => {
    const { page } = await visit(width);
    await give(page, LIST);
    await pick(page, 'kind of part', 'motor');
    await page.evaluate(AXE);
    const faults = await page.evaluate(async () => {
      const { axe } = window as unknown as {
        axe: {
          run: () => Promise<{ violations: readonly { id: string; nodes: readonly { html: string }[] }[] }>;
        };
      };
      const { violations } = await axe.run();
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
    });
    expect(faults).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );
    expect(
      await page.locator('.list-dialog').evaluate((dialog) => dialog.scrollWidth - dialog.clientWidth),
    ).toBeLessThanOrEqual(0);
  });

  it('that is none is told in words', async () => {
    const { page } = await visit();
    await give(page, 'name,mass\n"a,b\n');
    expect(await page.getByRole('alert').first().textContent()).toContain('a quote is opened and not closed');
  });
});
