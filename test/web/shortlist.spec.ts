import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { launch, openPage, settled, type WatchedPage } from './browser.ts';
import { servePage } from './servePage.ts';

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

/** The sheet with a question small enough for a test: the motors and packs of one frame with one propeller. */
async function ask(seats: readonly string[] = ['motors', 'pack']): Promise<WatchedPage> {
  const watched = await openPage(browser);
  opened.push(watched);
  const { page } = watched;
  await page.goto(`${server.address}#shortlist`);
  await settled(page);
  await page.getByRole('button', { name: 'search the shelf' }).waitFor();
  for (const seat of ['frame', 'motors', 'propellers', 'pack', 'motor controllers']) {
    await page.getByLabel(seat, { exact: true }).setChecked(seats.includes(seat));
  }
  await page.getByRole('combobox', { name: 'build to start from' }).click();
  await page.getByRole('option', { name: /Kittiwake/ }).click();
  return watched;
}

const search = (page: Page) => page.getByRole('button', { name: 'search the shelf' }).click();
const names = (page: Page) => page.locator('.found-parts').allTextContents();

/** Watches the browser's store until a checkpoint lies in it, and gives it back: what a torn-down page leaves. */
const checkpoint = () =>
  new Promise<unknown>((answer) => {
    const opening = indexedDB.open('quadwright', 1);
    opening.onsuccess = () => {
      const look = () => {
        const asked = opening.result.transaction('desk').objectStore('desk').get('search');
        asked.onsuccess = () => {
          if (asked.result === undefined) return setTimeout(look, 1);
          opening.result.close();
          answer(asked.result);
        };
      };
      look();
    };
  });

const putBack = (left: unknown) =>
  new Promise<void>((done) => {
    const opening = indexedDB.open('quadwright', 1);
    opening.onsuccess = () => {
      const writing = opening.result.transaction('desk', 'readwrite');
      writing.objectStore('desk').put(left, 'search');
      writing.oncomplete = () => {
        opening.result.close();
        done();
      };
    };
  });

describe('the shortlist', () => {
  it('searches in workers of its own, accounts for every combination, and says the same twice', async () => {
    const { page, complaints } = await ask();
    await search(page);
    await page.locator('.found-list').waitFor();
    const first = await names(page);
    expect(first.length).toBeGreaterThan(1);
    expect(await page.locator('.found-sum').textContent()).toContain('Exact');
    await page.locator('summary').first().click();
    expect(await page.locator('details[open]').first().textContent()).toContain('against');
    await search(page);
    await page.getByRole('progressbar', { name: 'search' }).waitFor();
    await page.locator('.found-list').waitFor();
    expect(await names(page)).toEqual(first);
    expect(complaints).toEqual([]);
  });

  it('opens what it found as a build, by keyboard', async () => {
    const { page } = await ask();
    await search(page);
    await page.locator('.found-list').waitFor();
    await page
      .getByRole('button', { name: /open as a build/ })
      .first()
      .focus();
    await page.keyboard.press('Enter');
    await page.locator('.stage-drawing').waitFor();
    expect(new URL(page.url()).hash).toBe('#airframe');
  });

  it('gone on with after the page was torn down in the middle, it finds what it would have found', async () => {
    const { page } = await ask();
    await search(page);
    await page.locator('.found-list').waitFor();
    const whole = await names(page);
    await page.waitForTimeout(200);
    const watching = page.evaluate(checkpoint);
    await search(page);
    const left = await watching;
    await page.locator('.found-list').waitFor();
    const { done } = (left as { readonly state: { readonly done: readonly number[] } }).state;
    expect(done.length).toBeGreaterThan(0);
    await page.evaluate(putBack, left);
    await page.reload();
    await settled(page);
    await page.getByRole('button', { name: 'go on with it' }).click();
    await page.getByText('Exact: the same list').waitFor();
    expect(await names(page)).toEqual(whole);
  });

  it('tunes the build to start from, and shows the way there', async () => {
    const { page, complaints } = await ask();
    await page.getByRole('combobox', { name: 'build to start from' }).click();
    await page.getByRole('option', { name: /Turnstone/ }).click();
    await page.getByRole('button', { name: 'tune it' }).click();
    await page.getByText(/to [\d.]+ of 100, \d+ settings tried/).waitFor();
    await page.getByRole('button', { name: 'open the tuned build' }).click();
    await page
      .getByRole('heading', { name: /Turnstone.*tuned/ })
      .first()
      .waitFor();
    expect(complaints).toEqual([]);
  });

  it('tells what each limit a tenth wider would bring', async () => {
    const { page, complaints } = await ask();
    await page.getByRole('checkbox', { name: /a tenth wider/ }).check();
    await search(page);
    const table = page.locator('.found-out', { hasText: 'Each limit a tenth wider' });
    await table.waitFor();
    expect(await table.getByRole('rowheader').allTextContents()).toEqual(['budget', 'mass limit']);
    expect(await table.textContent()).toMatch(/new among the best|buys nothing|still nothing/);
    expect(complaints).toEqual([]);
  });

  it('says in words when nothing passes', async () => {
    const { page } = await ask();
    await page.getByLabel('weigh at most').fill('50');
    await page.getByLabel('weigh at most').press('Enter');
    await search(page);
    await page.getByText('Nothing on the shelf passes').waitFor();
    expect(await page.locator('.found-out').textContent()).toContain('limit: all up mass');
  });
});
