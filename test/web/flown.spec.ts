import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launch, settled } from './browser.ts';
import { servePage } from './servePage.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
let server: Awaited<ReturnType<typeof servePage>>;
beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePage()]);
});
afterAll(async () => {
  await browser.close();
  server.close();
});

async function visit(sheet: string, width = 1440): Promise<Page> {
  const context = await browser.newContext({ viewport: { width, height: 900 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  await page.goto(`${server.address}#${sheet}`);
  await settled(page);
  return page;
}

const flown = (page: Page) => page.getByRole('region', { name: 'flown by the simulation' });

describe('a flight by the simulation', () => {
  it('is flown on demand, drawn over time and held beside the closed forms, by keyboard', async () => {
    const page = await visit('flight', 390);
    await flown(page).getByRole('button', { name: 'fly a roll to the right' }).press('Enter');
    const row = flown(page).getByRole('row', { name: /until it passes 90 degrees/ });
    await row.waitFor();
    const [closed, simulated] = await row.getByRole('cell').allTextContents();
    expect(Number.parseFloat(simulated ?? '') / Number.parseFloat(closed ?? '')).toBeGreaterThan(0.8);
    expect(Number.parseFloat(simulated ?? '') / Number.parseFloat(closed ?? '')).toBeLessThan(1.25);
    expect(await flown(page).locator('svg.chart').count()).toBe(5);
    await page.evaluate(AXE);
    const faults = await page.evaluate(async () => {
      const { axe } = window as unknown as {
        axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      };
      return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
    });
    expect(faults).toEqual([]);
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBeLessThanOrEqual(0);
    await page.context().close();
  });

  it('can be stopped, and the wind has flights of its own', async () => {
    const page = await visit('wind');
    await flown(page).getByRole('button', { name: 'fly in rough air' }).click();
    await flown(page).getByRole('button', { name: 'stop' }).click();
    await flown(page).getByRole('button', { name: 'stop' }).waitFor({ state: 'detached' });
    await flown(page).getByRole('button', { name: 'fly into a gust' }).click();
    await flown(page)
      .getByRole('row', { name: /pushed in the first/ })
      .waitFor();
    expect(await flown(page).locator('svg.chart').count()).toBe(5);
    await page.context().close();
  });
});
