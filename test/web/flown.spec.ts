import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { expectNoFaults, expectNoSidewaysScroll, openBench } from './browser.ts';

const { visit } = openBench();

const flown = (page: Page) => page.getByRole('region', { name: 'flown by the simulation' });

describe('a flight by the simulation', () => {
  it('is flown on demand, drawn over time and held beside the closed forms, by keyboard', async () => {
    const { page } = await visit('flight', { width: 390 });
    await flown(page).getByRole('button', { name: 'fly a roll to the right' }).press('Enter');
    const row = flown(page).getByRole('row', { name: /until it passes 90 degrees/ });
    const ratio = async () => {
      const [closed, simulated] = await row.getByRole('cell').allTextContents();
      return Number.parseFloat(simulated ?? '') / Number.parseFloat(closed ?? '');
    };
    await expect.poll(ratio).toBeGreaterThan(0.8);
    await expect.poll(ratio).toBeLessThan(1.25);
    await expect.poll(() => flown(page).locator('svg.chart').count()).toBe(5);
    await expectNoFaults(page);
    await expectNoSidewaysScroll(page);
  });

  it('can be stopped, and the wind has flights of its own', async () => {
    const { page } = await visit('wind');
    const stop = flown(page).getByRole('button', { name: 'stop' });
    // A quick machine may have flown it before it is stopped: then it is flown again.
    const stopped = async () => {
      await flown(page).getByRole('button', { name: 'fly in rough air' }).click();
      return await stop.click({ timeout: 5000 }).then(
        () => true,
        () => false,
      );
    };
    await expect.poll(stopped).toBe(true);
    await stop.waitFor({ state: 'detached' });
    await flown(page).getByRole('button', { name: 'fly into a gust' }).click();
    await flown(page)
      .getByRole('row', { name: /pushed in the first/ })
      .waitFor();
    await expect.poll(() => flown(page).locator('svg.chart').count()).toBe(5);
  });
});
