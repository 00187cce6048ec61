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
    for (const width of [390, 1440])
      for (const [button, theme] of [
        ['turn to blueprint', 'dark'],
        ['turn to paper', 'light'],
      ] as const) {
        await page.setViewportSize({ width, height: 900 });
        await page.getByRole('button', { name: button, exact: true }).click();
        await page.locator(`html[data-theme="${theme}"]`).waitFor();
        await expectNoFaults(page, `${width} ${theme}`);
        await expectNoSidewaysScroll(page, 'html', `${width} ${theme}`);
      }
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
    await flown(page).getByText('Stopped before its end.').waitFor();
    // The button that had the focus is gone; the keyboard goes on from the one that flew it.
    const starter = flown(page).getByRole('button', { name: 'fly in rough air' });
    await expect.poll(() => starter.evaluate((each) => each === document.activeElement)).toBe(true);
    await flown(page).getByRole('button', { name: 'fly into a gust' }).click();
    await flown(page)
      .getByRole('row', { name: /pushed in the first/ })
      .waitFor();
    await expect.poll(() => flown(page).locator('svg.chart').count()).toBe(5);
  });

  it('says its figures, sentences and axes in the units of the page', async () => {
    const { page } = await visit('wind', {}, async (fresh) => {
      await fresh.addInitScript(() => localStorage.setItem('quadwright-units', 'imperial'));
    });
    await flown(page).getByRole('button', { name: 'fly into a gust' }).click();
    await flown(page)
      .getByRole('row', { name: /pushed in the first/ })
      .waitFor();
    await expect.poll(() => flown(page).textContent()).toMatch(/in \d+\smph from ahead/);
    await expect.poll(() => flown(page).textContent()).toContain('speed, mph');
    await expect.poll(() => flown(page).textContent()).toContain('away from the start, ft');
    await expect.poll(() => flown(page).textContent()).not.toMatch(/m\/s|\d\s(mm|m)\b/);
  });

  it('says in words that its worker is lost, and flies again when it can', async () => {
    const { page } = await visit('flight', {}, async (fresh) => {
      await fresh.addInitScript(() => {
        const Sound = window.Worker;
        window.Worker = class extends Sound {
          constructor(url: string | URL, options?: WorkerOptions) {
            super('broken' in window ? new URL('gone.js', url) : url, options);
          }
        };
      });
    });
    const hover = flown(page).getByRole('button', { name: 'fly a hover' });
    await page.evaluate(() => Object.assign(window, { broken: true }));
    await hover.click();
    await flown(page)
      .getByText(/^It can not be flown: the worker that does it could not start, .* your builds are kept\.$/)
      .waitFor();
    await page.evaluate(() => Reflect.deleteProperty(window, 'broken'));
    await hover.click();
    await flown(page).getByText('flown', { exact: true }).waitFor();
  });
});
