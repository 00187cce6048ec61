import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { SHEETS } from '../../src/web/state/sheetNames.ts';
import { launch, openPage, settled, type WatchedPage, workedOut } from './browser.ts';
import { servePage } from './servePage.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

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

async function visit(sheet = 'choice', look: Parameters<typeof openPage>[1] = {}): Promise<WatchedPage> {
  const watched = await openPage(browser, look);
  opened.push(watched);
  await watched.page.goto(`${server.address}#${sheet}`);
  await settled(watched.page);
  await workedOut(watched.page);
  return watched;
}

/** The figures of the sheet on top, by label. */
const figures = (page: Page): Promise<Record<string, string>> =>
  page
    .locator('[role=tabpanel]:not([hidden]) .figure-row')
    .evaluateAll((rows) =>
      Object.fromEntries(
        rows.map((row) => [
          row.querySelector('.figure-label')?.firstChild?.textContent ?? '',
          row.querySelector('.figure')?.textContent ?? '',
        ]),
      ),
    );

async function choose(page: Page, label: string, option: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: label, exact: true }).click();
  await page.getByRole('option', { name: option }).first().click();
  await settled(page);
}

describe('loading', () => {
  it('says nothing on the console and asks nobody else for anything', async () => {
    const { page, complaints, requests } = await visit();
    const before = requests.length;
    for (const sheet of SHEETS) await page.getByRole('tab', { name: sheet }).click();
    await settled(page);
    expect(complaints).toEqual([]);
    expect(requests.filter((url) => !url.startsWith(server.address))).toEqual([]);
    // Sheets that few need come as a piece of script of their own, from the page's own place.
    expect(requests.slice(before).filter((url) => !/\/assets\/[\w-]+\.js$/.test(url))).toEqual([]);
  });

  it('has a policy that lets nothing out', async () => {
    const { page } = await visit();
    const blocked = await page.evaluate(async () => {
      try {
        await fetch('./index.html');
        return false;
      } catch {
        return true;
      }
    });
    expect(blocked).toBe(true);
  });
});

describe('the choice', () => {
  it('draws six candidates at one scale, each with as many discs as motors', async () => {
    const { page } = await visit();
    const drawings = page.locator('.choice .drawing');
    expect(await drawings.count()).toBe(6);
    const scales = await drawings.evaluateAll((all) =>
      all.map((svg) => {
        const box = svg.getAttribute('viewBox')?.split(' ').map(Number) ?? [];
        return (box[2] ?? 0) / svg.getBoundingClientRect().width;
      }),
    );
    for (const scale of scales) expect(scale / scales[0]!).toBeCloseTo(1, 2);
    const discs = await drawings.evaluateAll((all) =>
      all.map((svg) => svg.querySelectorAll('.ink-disc').length),
    );
    expect(discs).toEqual([4, 4, 4, 4, 4, 4]);
  });

  it('opens a candidate by its name', async () => {
    const { page } = await visit();
    await page.getByRole('button', { name: /Kittiwake/ }).click();
    expect(new URL(page.url()).hash).toBe('#airframe');
    await page.getByRole('heading', { name: /Kittiwake.*airframe/ }).waitFor();
    await page.goBack();
    await page.getByRole('heading', { name: 'Which one first?' }).waitFor();
  });
});

describe('one build', () => {
  it('computes anew when the propeller changes, and undo brings every number back', async () => {
    const { page, complaints } = await visit('lift');
    const before = await figures(page);
    expect(Object.keys(before).length).toBeGreaterThan(1);
    await choose(page, 'propellers', /5\.1 x 3\.0/);
    const after = await figures(page);
    expect(after).not.toEqual(before);
    await page.getByRole('button', { name: 'undo' }).click();
    await settled(page);
    expect(await figures(page)).toEqual(before);
    await page.keyboard.press('Control+Shift+Z');
    await settled(page);
    expect(await figures(page)).toEqual(after);
    expect(complaints).toEqual([]);
  });

  it('redraws when the layout changes', async () => {
    const { page } = await visit('airframe');
    const discs = () =>
      page.locator('.stage-drawing .ink-disc').evaluateAll((all) => all.map((disc) => disc.outerHTML));
    const before = await discs();
    await choose(page, 'layout', /^dead cat/);
    expect(await discs()).not.toEqual(before);
    await choose(page, 'layout', /^hexa X/);
    expect(await discs()).toHaveLength(6);
  });

  it('slides the pack with the keyboard, and back with undo', async () => {
    const { page } = await visit('airframe');
    const slider = page.getByRole('slider', { name: /forward/ });
    const start = Number(await slider.getAttribute('aria-valuenow'));
    await slider.focus();
    for (let i = 0; i < 10; i++) await page.keyboard.press('ArrowRight');
    await settled(page);
    expect(Number(await slider.getAttribute('aria-valuenow'))).toBe(start + 10);
    await page.keyboard.press('Control+z');
    expect(Number(await slider.getAttribute('aria-valuenow'))).toBeLessThan(start + 10);
  });

  it('opens the how of a number and closes it with Escape', async () => {
    const { page } = await visit('lift');
    const row = page.locator('[role=tabpanel]:not([hidden]) .figure-row').first();
    await row.focus();
    await page.keyboard.press('Enter');
    const how = page.getByRole('dialog');
    await how.waitFor();
    for (const term of ['band', 'how', 'source']) expect(await how.textContent()).toContain(term);
    await page.keyboard.press('Escape');
    await how.waitFor({ state: 'detached' });
    expect(await row.evaluate((element) => element === document.activeElement)).toBe(true);
  });

  it('ties its notes with leaders that do not cross', async () => {
    const { page } = await visit('fit');
    for (const bird of [/Bonxie/, /Kittiwake/, /Tystie/]) {
      await choose(page, 'build', bird);
      const lines = await page
        .locator('.leaders > g:not(.ring) > path')
        .evaluateAll((paths) =>
          paths.map((path) => (path.getAttribute('d') ?? '').match(/-?[\d.]+/g)?.map(Number) ?? []),
        );
      expect(lines.length).toBeGreaterThan(3);
      lines.forEach((a, i) => {
        for (const b of lines.slice(i + 1)) expect(crossing(a, b), `${bird}: ${a} and ${b}`).toBe(false);
      });
    }
  });
});

/** By the sign of areas; each line given as x, y, x, y. */
function crossing(a: readonly number[], b: readonly number[]): boolean {
  const area = (l: readonly number[], x: number, y: number) =>
    (l[2]! - l[0]!) * (y - l[1]!) - (l[3]! - l[1]!) * (x - l[0]!);
  return (
    area(a, b[0]!, b[1]!) * area(a, b[2]!, b[3]!) < -1 && area(b, a[0]!, a[1]!) * area(b, a[2]!, a[3]!) < -1
  );
}

describe('by keyboard alone', () => {
  it('turns sheets, changes a part and undoes it', async () => {
    const { page } = await visit('choice');
    await page.keyboard.press('Tab');
    for (let i = 0; i < SHEETS.indexOf('airframe'); i++) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await page.locator('.stage-drawing').waitFor();
    const name = () => page.getByRole('combobox', { name: 'motors', exact: true }).textContent();
    const before = await name();
    for (let i = 0; i < 120; i++) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
      if (at === 'motors') break;
    }
    await page.keyboard.press('Enter');
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await name()).not.toBe(before);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await name()).toBe(before);
  });
});

describe('looks', () => {
  it('changes between paper and blueprint, and remembers', async () => {
    const { page } = await visit('airframe');
    const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const light = await paper();
    await page.getByRole('button', { name: 'turn to blueprint' }).click();
    expect(await paper()).not.toBe(light);
    await page.reload();
    expect(await page.evaluate(() => document.documentElement.dataset.theme)).toBe('dark');
  });

  for (const width of [390, 768, 1024, 1440, 1920]) {
    it(`fits ${width} px without scrolling sideways`, async () => {
      const { page } = await visit('choice', { width });
      for (const sheet of SHEETS) {
        await page.getByRole('tab', { name: sheet }).click();
        const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        expect(over, sheet).toBeLessThanOrEqual(0);
      }
    });
  }

  for (const theme of ['light', 'dark'] as const) {
    for (const width of [390, 1440]) {
      it(`has no accessibility fault on any sheet, ${theme}, ${width} px`, async () => {
        const { page } = await visit('choice', { theme, width });
        await page.evaluate(AXE);
        for (const sheet of SHEETS) {
          await page.getByRole('tab', { name: sheet }).click();
          expect(await faults(page), sheet).toEqual([]);
        }
        await page.locator('[role=tabpanel]:not([hidden]) .picker').first().click();
        await page.getByRole('option').first().waitFor();
        expect(await faults(page), 'open list').toEqual([]);
        await page.keyboard.press('Escape');
        await page.getByRole('tab', { name: 'lift' }).click();
        await page.locator('[role=tabpanel]:not([hidden]) .figure-row').first().click();
        await page.getByRole('dialog').waitFor();
        expect(await faults(page), 'open how').toEqual([]);
        await page.keyboard.press('Escape');
        await page.getByRole('tab', { name: 'choice' }).click();
        await page.getByRole('button', { name: /one cause at a time/ }).click();
        await page.getByText(/Cause 1 of/).waitFor();
        expect(await faults(page), 'one cause at a time').toEqual([]);
        await page.keyboard.press('Escape');
        await page.getByRole('button', { name: 'desk', exact: true }).click();
        await page.getByRole('button', { name: 'enter a part' }).click();
        await page.getByRole('textbox', { name: 'name' }).waitFor();
        expect(await faults(page), 'a part of your own').toEqual([]);
      });
    }
  }
});

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

/** Every fault axe finds, with the first element at fault. */
const faults = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run: () => Promise<AxeResult> } };
    const { violations } = await axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
  });
