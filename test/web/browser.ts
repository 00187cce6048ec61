import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { SheetName } from '../../src/web/state/place.ts';
import { type Look, launch, openPage, settled, type WatchedPage, workedOut } from './launch.ts';
import { PATIENCE } from './patience.ts';
import { servePage } from './servePage.ts';

/** The sheet on top. While sheets change the one that leaves is still there for a frame, and inert. */
export const TOP = '[role=tabpanel]:not([hidden]):not([inert])';

interface Bench {
  /** Where the page is served from. */
  readonly address: () => string;
  /** A page of its own memory that has not gone anywhere yet. */
  readonly open: (look?: Look) => Promise<WatchedPage>;
  /** A page at rest on a sheet; `before` is done to it before it goes there. */
  readonly visit: (
    sheet?: SheetName,
    look?: Look,
    before?: (page: Page) => Promise<void>,
  ) => Promise<WatchedPage>;
  /**
   * The same page for all tests of a `describe`, for those that leave it as they found it: loading one costs more than
   * most tests. Each turns to its own sheet. What a failed test leaves is not used again: the next one has a fresh page.
   */
  readonly share: (
    look?: Look,
    before?: (page: Page) => Promise<void>,
  ) => (sheet?: SheetName) => Promise<WatchedPage>;
}

/** What the tests of one file stand on: a browser and a server for all of them; pages are closed after their test. */
export function openBench(): Bench {
  let browser: Browser | undefined;
  let server: Awaited<ReturnType<typeof servePage>> | undefined;
  const contexts: BrowserContext[] = [];
  beforeAll(async () => {
    [browser, server] = await Promise.all([launch(), servePage()]);
  });
  afterAll(async () => {
    await browser?.close();
    server?.close();
  });
  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
  });
  const address = () => server!.address;
  const open = async (look?: Look) => {
    const watched = await openPage(browser!, look);
    contexts.push(watched.page.context());
    return watched;
  };
  const arrive = async (watched: WatchedPage, sheet: SheetName) => {
    await watched.page.goto(`${address()}#${sheet}`);
    await atRest(watched.page);
    return watched;
  };
  return {
    address,
    open,
    visit: async (sheet = 'choice', look, before) => {
      const watched = await open(look);
      await before?.(watched.page);
      return await arrive(watched, sheet);
    },
    share: (look, before) => {
      let kept: WatchedPage | undefined;
      const leave = async () => {
        const left = kept;
        kept = undefined;
        await left?.page.context().close();
      };
      afterEach(async ({ task }) => {
        if (task.result?.state === 'fail') await leave();
      });
      afterAll(leave);
      return async (sheet = 'choice') => {
        if (kept === undefined) {
          kept = await openPage(browser!, look);
          await before?.(kept.page);
          return await arrive(kept, sheet);
        }
        await turnTo(kept.page, sheet);
        await atRest(kept.page);
        return kept;
      };
    },
  };
}

/** Waits until the sheet on top has come and all that it shows is worked out. */
export async function atRest(page: Page): Promise<void> {
  await settled(page);
  await workedOut(page);
  await page.locator(TOP).filter({ hasNotText: 'Laying out the sheet.' }).waitFor();
  await drawn(page);
}

/** Waits until what was rendered is drawn: then its effects have run too, and its keys are listened for. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)))),
  );
}

/** What of a sheet comes in a piece of its own, after the sheet. */
const LATER: Readonly<Partial<Record<string, string>>> = {
  flight: 'flown by the simulation',
  wind: 'flown by the simulation',
  knocks: 'your own crash log',
  money: 'your own crash log',
};

/** Turns to a sheet by its tab, and waits until it is there with all that comes in files of its own. */
export async function turnTo(page: Page, sheet: string): Promise<void> {
  await page.getByRole('tab', { name: sheet }).click();
  await page.getByRole('tab', { name: sheet, selected: true }).waitFor();
  await page.locator(TOP).filter({ hasNotText: 'Laying out the sheet.' }).waitFor();
  const later = LATER[sheet];
  if (later) await page.getByRole('region', { name: later }).waitFor();
  await drawn(page);
}

/** What `look` sees once it sees the same three times running of a page at rest: to hold a later reading against. */
export async function steady<T>(page: Page, look: () => Promise<T>): Promise<T> {
  const until = performance.now() + PATIENCE;
  let [same, last] = [0, ''];
  while (performance.now() < until) {
    await atRest(page);
    const seen = await look();
    const words = JSON.stringify(seen) ?? '';
    same = words === last ? same + 1 : 1;
    if (same === 3) return seen;
    last = words;
  }
  throw new Error(`never stood still; seen last: ${last.slice(0, 400)}`);
}

/** Where a thing lies in the window, once it has come to lie there. */
export async function placeOf(
  locator: Locator,
): Promise<{ readonly x: number; readonly y: number; readonly width: number; readonly height: number }> {
  const box = await steady(locator.page(), async () => {
    await locator.scrollIntoViewIfNeeded();
    return await locator.boundingBox();
  });
  if (box === null) throw new Error(`${locator} is not drawn`);
  return box;
}

/** Closes by Escape what lies over the sheet, and waits until it is gone. */
export async function pressEscape(page: Page, over: Locator = page.getByRole('dialog')): Promise<void> {
  await over.first().waitFor();
  await drawn(page);
  await page.keyboard.press('Escape');
  await expect.poll(() => over.count()).toBe(0);
}

/** A build's figure on the sheet on top, by its measure. */
export const figure = (page: Page, measure: string): Locator =>
  page.locator(`${TOP} [data-measure="${measure}"] .figure`).first();

/** Opens the list of a schedule's entry and takes the first that is named so. */
export async function choose(page: Page, label: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label, exact: true }).click();
  await page.getByRole('option', { name: option }).first().click();
  await expect.poll(() => page.locator('.picker-item').count()).toBe(0);
  await atRest(page);
}

/** What a button hands to be saved. */
export async function saved(button: Locator): Promise<Buffer> {
  const [download] = await Promise.all([button.page().waitForEvent('download'), button.click()]);
  return readFileSync(await download.path());
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeWindow {
  readonly axe?: {
    readonly run: () => Promise<{
      readonly violations: readonly {
        readonly id: string;
        readonly nodes: readonly { readonly html: string }[];
      }[];
    }>;
  };
}

/** No fault of accessibility that axe finds; each is told with the first element at fault. */
export async function expectNoFaults(page: Page, where = ''): Promise<void> {
  await drawn(page);
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(AXE);
  const faults = () =>
    page.evaluate(async () => {
      const found = await (window as AxeWindow).axe?.run();
      return (found?.violations ?? [{ id: 'axe is missing', nodes: [] }]).map(
        ({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`,
      );
    });
  await expect.poll(faults, { message: where }).toEqual([]);
}

/** Nothing sticks out of the window, or of what scrolls within it. */
export async function expectNoSidewaysScroll(page: Page, of = 'html', where = ''): Promise<void> {
  await drawn(page);
  const over = () => page.locator(of).evaluate((element) => element.scrollWidth - element.clientWidth);
  await expect.poll(over, { message: where }).toBeLessThanOrEqual(0);
}

/** The light that the page is in. */
export const light = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.documentElement.dataset.theme);

/** Turns from paper to blueprint, or back, by the page's own button. */
export async function otherLight(page: Page): Promise<void> {
  const before = await light(page);
  await page.getByRole('button', { name: /^turn to (blueprint|paper)$/ }).click();
  await expect.poll(() => light(page)).not.toBe(before);
}
