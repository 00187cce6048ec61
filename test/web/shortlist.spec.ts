import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { atRest, choose, openBench } from './browser.ts';
import type { WatchedPage } from './launch.ts';

const { visit } = openBench();

/** The sheet with a question small enough for a test: the motors and packs of one frame with one propeller. */
async function ask(seats: readonly string[] = ['motors', 'pack']): Promise<WatchedPage> {
  const watched = await visit('shortlist');
  const { page } = watched;
  await page.getByRole('button', { name: 'search the shelf' }).waitFor();
  for (const seat of ['frame', 'motors', 'propellers', 'pack', 'motor controllers']) {
    await page.getByLabel(seat, { exact: true }).setChecked(seats.includes(seat));
  }
  await choose(page, 'build to start from', /Kittiwake/);
  return watched;
}

const search = (page: Page) => page.getByRole('button', { name: 'search the shelf' }).click();
const names = (page: Page) => page.locator('.found-parts').allTextContents();

interface Checkpoint {
  readonly state: { readonly done: readonly number[] };
}

interface Noted {
  /** The first checkpoint in which something is done: what a page torn down then leaves. */
  left?: Checkpoint;
  /** Whether the search has been taken out of the store again. */
  forgotten?: boolean;
}

/** Notes on the window what the page puts in the browser's store of a search. */
const noteCheckpoints = () => {
  const put = IDBObjectStore.prototype.put;
  const noted = window as Noted;
  IDBObjectStore.prototype.put = function (this: IDBObjectStore, value?: Checkpoint, key?: IDBValidKey) {
    if (key === 'search' && value === undefined) noted.forgotten = noted.left !== undefined;
    else if (key === 'search' && value && noted.left === undefined && value.state.done.length > 0)
      noted.left = structuredClone(value);
    return Reflect.apply(put, this, [value, key]);
  };
};

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
    await expect.poll(() => names(page).then(({ length }) => length)).toBeGreaterThan(1);
    const first = await names(page);
    await expect.poll(() => page.locator('.found-sum').textContent()).toContain('Exact');
    await page.locator('summary').first().click();
    await expect.poll(() => page.locator('details[open]').first().textContent()).toContain('against');
    await page.locator('.found-list').evaluate((list) => list.setAttribute('data-old', ''));
    await search(page);
    await page.locator('.found-list:not([data-old])').waitFor();
    await expect.poll(() => names(page)).toEqual(first);
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
    await expect.poll(() => new URL(page.url()).hash).toBe('#airframe');
  });

  it('gone on with after the page was torn down in the middle, it finds what it would have found', async () => {
    const { page } = await ask();
    await search(page);
    await page.locator('.found-list').waitFor();
    await expect.poll(() => names(page).then(({ length }) => length)).toBeGreaterThan(0);
    const whole = await names(page);
    await page.evaluate(noteCheckpoints);
    await search(page);
    // Done, it takes its own checkpoints away: only then is one put back.
    await expect.poll(() => page.evaluate(() => (window as Noted).forgotten)).toBe(true);
    const left = await page.evaluate(() => (window as Noted).left);
    await page.evaluate(putBack, left);
    await page.reload();
    await atRest(page);
    await page.getByRole('button', { name: 'go on with it' }).click();
    await page.getByText('Exact: the same list').waitFor();
    await expect.poll(() => names(page)).toEqual(whole);
  });

  it('tunes the build to start from, and shows the way there', async () => {
    const { page, complaints } = await ask();
    await choose(page, 'build to start from', /Turnstone/);
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
    await expect.poll(() => table.getByRole('rowheader').allTextContents()).toEqual(['budget', 'mass limit']);
    await expect.poll(() => table.textContent()).toMatch(/new among the best|buys nothing|still nothing/);
    expect(complaints).toEqual([]);
  });

  it('says in words when nothing passes', async () => {
    const { page } = await ask();
    await page.getByLabel('weigh at most').fill('50');
    await page.getByLabel('weigh at most').press('Enter');
    await search(page);
    await page.getByText('Nothing on the shelf passes').waitFor();
    await expect.poll(() => page.locator('.found-out').textContent()).toContain('limit: all up mass');
  });
});
