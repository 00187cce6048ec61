import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { SHEETS } from '../../src/web/state/sheetNames.ts';
import {
  atRest,
  choose,
  expectNoFaults,
  expectNoSidewaysScroll,
  light,
  openBench,
  otherLight,
  pressEscape,
  steady,
  TOP,
  turnTo,
} from './browser.ts';

const { address, share, visit } = openBench();

/** For tests that only look, or that take back what they change. */
const any = share();

/** The figures of the sheet on top, by label. */
const figures = (page: Page): Promise<Record<string, string>> =>
  page
    .locator(`${TOP} .figure-row`)
    .evaluateAll((rows) =>
      Object.fromEntries(
        rows.map((row) => [
          row.querySelector('.figure-label')?.firstChild?.textContent ?? '',
          row.querySelector('.figure')?.textContent ?? '',
        ]),
      ),
    );

/** What has the focus, by its label or its words. */
const focused = (page: Page): Promise<string | null | undefined> =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at?.getAttribute('aria-label') ?? at?.textContent;
  });

describe('loading', () => {
  it('says nothing on the console and asks nobody else for anything', async () => {
    const { page, complaints, requests } = await visit();
    const before = requests.length;
    for (const sheet of SHEETS) await turnTo(page, sheet);
    await atRest(page);
    expect(complaints).toEqual([]);
    expect(requests.filter((url) => !url.startsWith(address()))).toEqual([]);
    // Sheets that few need come as a piece of script of their own, from the page's own place.
    expect(requests.slice(before).filter((url) => !/\/assets\/[\w-]+\.js$/.test(url))).toEqual([]);
  });

  it('has a policy that lets nothing out', async () => {
    const { page } = await any();
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
    const { page } = await any();
    const drawings = page.locator('.choice .drawing');
    await expect.poll(() => drawings.count()).toBe(6);
    const scales = await steady(page, () =>
      drawings.evaluateAll((all) =>
        all.map((svg) => {
          const box = svg.getAttribute('viewBox')?.split(' ').map(Number) ?? [];
          return (box[2] ?? 0) / svg.getBoundingClientRect().width;
        }),
      ),
    );
    for (const scale of scales) expect(scale / scales[0]!).toBeCloseTo(1, 2);
    const discs = () =>
      drawings.evaluateAll((all) => all.map((svg) => svg.querySelectorAll('.ink-disc').length));
    await expect.poll(discs).toEqual([4, 4, 4, 4, 4, 4]);
  });

  it('opens a candidate by its name', async () => {
    const { page } = await any();
    await page.getByRole('button', { name: /Kittiwake/ }).click();
    await expect.poll(() => new URL(page.url()).hash).toBe('#airframe');
    await page.getByRole('heading', { name: /Kittiwake.*airframe/ }).waitFor();
    await page.goBack();
    await page.getByRole('heading', { name: 'Which one first?' }).waitFor();
  });
});

describe('one build', () => {
  it('computes anew when the propeller changes, and undo brings every number back', async () => {
    const { page, complaints } = await visit('lift');
    const before = await steady(page, () => figures(page));
    expect(Object.keys(before).length).toBeGreaterThan(1);
    await choose(page, 'propellers', /5\.1 x 3\.0/);
    await expect.poll(() => figures(page)).not.toEqual(before);
    const after = await steady(page, () => figures(page));
    expect(after).not.toEqual(before);
    await page.getByRole('button', { name: 'undo' }).click();
    await expect.poll(() => figures(page)).toEqual(before);
    await page.keyboard.press('Control+Shift+Z');
    await expect.poll(() => figures(page)).toEqual(after);
    expect(complaints).toEqual([]);
  });

  it('redraws when the layout changes', async () => {
    const { page } = await any('airframe');
    const discs = () =>
      page.locator('.stage-drawing .ink-disc').evaluateAll((all) => all.map((disc) => disc.outerHTML));
    const before = await steady(page, discs);
    await choose(page, 'layout', /^dead cat/);
    await expect.poll(discs).not.toEqual(before);
    await choose(page, 'layout', /^hexa X/);
    await expect.poll(discs).toHaveLength(6);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await expect.poll(discs).toEqual(before);
  });

  it('slides the pack with the keyboard, and back with undo', async () => {
    const { page } = await any('airframe');
    const slider = page.getByRole('slider', { name: /forward/ });
    const at = () => slider.getAttribute('aria-valuenow').then(Number);
    const start = await steady(page, at);
    await slider.focus();
    for (let i = 0; i < 10; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(at).toBe(start + 10);
    await atRest(page);
    await page.keyboard.press('Control+z');
    await expect.poll(at).toBeLessThan(start + 10);
  });

  it('opens the how of a number and closes it with Escape', async () => {
    const { page } = await any('lift');
    const row = page.locator(`${TOP} .figure-row`).first();
    await row.focus();
    await page.keyboard.press('Enter');
    const how = page.getByRole('dialog');
    for (const term of ['band', 'how', 'source']) await expect.poll(() => how.textContent()).toContain(term);
    await pressEscape(page, how);
    await expect.poll(() => row.evaluate((element) => element === document.activeElement)).toBe(true);
  });

  it('ties its notes with leaders that do not cross', async () => {
    const { page } = await any('fit');
    for (const bird of [/Bonxie/, /Kittiwake/, /Tystie/]) {
      await choose(page, 'build', bird);
      const leaders = page.locator('.leaders > g:not(.ring) > path');
      await expect.poll(() => leaders.count()).toBeGreaterThan(3);
      const lines = await steady(page, () =>
        leaders.evaluateAll((paths) =>
          paths.map((path) => (path.getAttribute('d') ?? '').match(/-?[\d.]+/g)?.map(Number) ?? []),
        ),
      );
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
    for (const sheet of SHEETS.slice(0, SHEETS.indexOf('airframe') + 1)) {
      if (sheet !== 'choice') await page.keyboard.press('ArrowRight');
      await expect.poll(() => focused(page)).toContain(sheet);
    }
    await page.keyboard.press('Enter');
    await page.locator('.stage-drawing').waitFor();
    const name = () => page.getByRole('combobox', { name: 'motors', exact: true }).textContent();
    const before = await steady(page, name);
    for (let i = 0; i < 120; i++) {
      await page.keyboard.press('Tab');
      if ((await focused(page)) === 'motors') break;
    }
    await expect.poll(() => focused(page)).toBe('motors');
    await page.keyboard.press('Enter');
    await page.getByRole('option').first().waitFor();
    await expect.poll(() => focused(page)).toBe('search motors');
    const marked = () => page.locator('[role=option][data-highlighted] .picker-name').allTextContents();
    const first = await steady(page, marked);
    await page.keyboard.press('ArrowDown');
    await expect.poll(marked).toHaveLength(1);
    await expect.poll(marked).not.toEqual(first);
    await page.keyboard.press('Enter');
    await expect.poll(name).not.toBe(before);
    await atRest(page);
    await page.keyboard.press('Control+z');
    await expect.poll(name).toBe(before);
  });
});

describe('looks', () => {
  it('changes between paper and blueprint, and remembers', async () => {
    const { page } = await visit('airframe');
    const paper = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const light = await steady(page, paper);
    await page.getByRole('button', { name: 'turn to blueprint' }).click();
    await expect.poll(paper).not.toBe(light);
    await page.reload();
    await expect.poll(() => page.evaluate(() => document.documentElement.dataset.theme)).toBe('dark');
  });

  // Each width is loaded once, one on paper and one as a blueprint by the machine's own setting.
  for (const [width, theme] of [
    [390, 'dark'],
    [768, 'light'],
    [1024, 'light'],
    [1440, 'light'],
    [1920, 'dark'],
  ] as const)
    describe(`${width} px wide`, () => {
      const wide = share({ width, theme });

      it('fits without scrolling sideways', async () => {
        const { page } = await wide();
        for (const sheet of SHEETS) {
          await turnTo(page, sheet);
          await expectNoSidewaysScroll(page, 'html', sheet);
        }
      });

      if (width === 390 || width === 1440)
        it('has no accessibility fault on any sheet, on paper and as a blueprint', async () => {
          const { page } = await wide();
          for (const sheet of SHEETS) {
            await turnTo(page, sheet);
            await expectNoFaults(page, `${sheet}, ${await light(page)}`);
            await otherLight(page);
            await expectNoFaults(page, `${sheet}, ${await light(page)}`);
          }
          await expectNoFaultsInDialogs(page);
          await otherLight(page);
          await expectNoFaultsInDialogs(page);
        });
    });
});

/** From the last sheet; what is opened is closed again. */
async function expectNoFaultsInDialogs(page: Page): Promise<void> {
  const where = await light(page);
  await turnTo(page, SHEETS.at(-1)!);
  await page.locator(`${TOP} .picker`).first().click();
  await page.getByRole('option').first().waitFor();
  await expectNoFaults(page, `open list, ${where}`);
  await pressEscape(page, page.locator('.picker-list'));
  await turnTo(page, 'lift');
  await page.locator(`${TOP} .figure-row`).first().click();
  await page.getByRole('dialog').waitFor();
  await expectNoFaults(page, `open how, ${where}`);
  await pressEscape(page);
  await turnTo(page, 'choice');
  await page.getByRole('button', { name: /one cause at a time/ }).click();
  await page.getByText(/Cause 1 of/).waitFor();
  await expect.poll(() => page.getByText(/^working out \d+ of/).count()).toBe(0);
  await expectNoFaults(page, `one cause at a time, ${where}`);
  await pressEscape(page);
  await page.getByRole('button', { name: 'desk', exact: true }).click();
  await page.getByRole('button', { name: 'enter a part' }).click();
  await page.getByRole('textbox', { name: 'name' }).waitFor();
  await expectNoFaults(page, `a part of your own, ${where}`);
  for (const name of ['A part of your own', 'On the desk'])
    await pressEscape(page, page.getByRole('dialog', { name }));
}
