import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/assessment.ts';
import { formatQuantity } from '../../src/units/formatQuantity.ts';
import type { SheetName } from '../../src/web/state/place.ts';
import { openDesk } from '../../src/web/worker/openDesk.ts';
import { atRest, choose, figure, openBench, placeOf, pressEscape, steady, TOP, turnTo } from './browser.ts';

const bench = openBench();

/** Over the first sheet, so that the build which leads is the one that is open. */
async function visit(sheet: string): Promise<Page> {
  const { page } = await bench.visit('choice');
  await turnTo(page, sheet);
  return page;
}

/** For tests that take back what they change: one page with the build which leads, one with Bonxie open. */
const [leading, bonxie] = [bench.share(), bench.share()];

async function onLeading(sheet: SheetName): Promise<Page> {
  await leading('choice');
  const { page } = await leading(sheet);
  return page;
}

async function onBonxie(sheet: SheetName): Promise<Page> {
  const { page } = await bonxie(sheet);
  await choose(page, 'build', /Bonxie/);
  return page;
}

/** Takes back every change there is to take back. */
async function undoAll(page: Page): Promise<void> {
  const undo = page.getByRole('button', { name: 'undo', exact: true });
  await expect
    .poll(async () => {
      await page.keyboard.press('Control+z');
      return await undo.isDisabled();
    })
    .toBe(true);
  await atRest(page);
}

describe('the brief', () => {
  it('changes every number that hangs on it, at once, and undo brings them back', async () => {
    const page = await onLeading('brief');
    await page.getByRole('textbox', { name: 'budget before the first flight' }).fill('900');
    await page.keyboard.press('Enter');
    await atRest(page);
    await page
      .locator('.brief-answers')
      .getByText(/over the budget/)
      .waitFor();
    await page.getByRole('textbox', { name: 'air outside' }).fill('60');
    await page.keyboard.press('Enter');
    await page.getByText(/from -30 to 50/).waitFor();
    await page.getByRole('button', { name: 'undo' }).click();
    await atRest(page);
    await page
      .locator('.brief-answers')
      .getByText(/of the budget are left/)
      .waitFor();
  });
});

describe('the shelf', () => {
  it('tells what each part would do, sorts by it, and searches by any word', async () => {
    const page = await onLeading('lift');
    await page.getByRole('combobox', { name: 'pack', exact: true }).click();
    const options = page.getByRole('option');
    await options.first().waitFor();
    await expect.poll(() => page.getByText('being tried').count()).toBe(0);
    await page.getByRole('button', { name: 'longest' }).click();
    await page.getByRole('button', { name: 'longest', pressed: true }).waitFor();
    const minutes = (await steady(page, () => options.allTextContents())).flatMap((text) => {
      const found = /([\d.]+)\smin/.exec(text);
      return found ? [Number(found[1])] : [];
    });
    expect(minutes.length).toBeGreaterThan(5);
    expect(minutes).toEqual(minutes.toSorted((a, b) => b - a));
    await page.getByRole('combobox', { name: 'search pack' }).fill('4S');
    await expect
      .poll(async () => (await options.allTextContents()).filter((text) => !text.includes('4S')))
      .toEqual([]);
    await expect.poll(() => options.count()).toBeGreaterThan(1);
    await pressEscape(page, page.locator('.picker-list'));
  });
});

describe('trying a remedy', () => {
  it('shows what shorter screws would change, and keeps them only when asked to', async () => {
    const page = await onBonxie('fit');
    const stop = page.locator(`${TOP} .margin-note.stop`);
    await expect.poll(() => stop.count()).toBe(1);
    await page
      .getByRole('button', { name: /try it: motor screws/ })
      .first()
      .click();
    await page.locator('.try-shown').getByText('mended').first().waitFor();
    expect(await steady(page, () => stop.count())).toBe(1);
    await page.getByRole('button', { name: 'keep it' }).click();
    await expect.poll(() => stop.count()).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(() => stop.count()).toBe(1);
  });
});

describe('a remedy tried after a slide', () => {
  it('is held against the build as it now stands: what the slide itself has changed is not told again', async () => {
    const page = await onBonxie('fit');
    await page.getByRole('slider', { name: /forward/ }).focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
    await atRest(page);
    await page
      .getByRole('button', { name: /try it: motor screws/ })
      .first()
      .click();
    const shown = page.locator('.try-shown');
    await shown.getByText('mended').first().waitFor();
    expect(await steady(page, () => shown.textContent())).not.toMatch(/mode, arms|half break|light the/);
    await page.getByRole('button', { name: 'leave it' }).click();
    await shown.waitFor({ state: 'detached' });
    await undoAll(page);
  });
});

describe('dragging in the plan', () => {
  it('moves a motor, the trim follows, and undo is one step', async () => {
    const page = await onLeading('airframe');
    const diagonal = () => figure(page, 'motor-diagonal').textContent();
    const before = await steady(page, diagonal);
    const box = await placeOf(page.getByRole('button', { name: /front right motor/ }));
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 30, box.y + box.height / 2 - 30, { steps: 8 });
    await page.mouse.up();
    await expect.poll(() => diagonal().then(Number)).toBeGreaterThan(Number(before) + 10);
    await atRest(page);
    await page.keyboard.press('Control+z');
    await expect.poll(diagonal).toBe(before);
  });

  it('moves the pack with the arrow keys', async () => {
    const page = await onLeading('airframe');
    const balance = () => figure(page, 'balance-forward').textContent().then(Number);
    const before = await steady(page, balance);
    await page.getByRole('button', { name: /^pack, to move/ }).focus();
    for (let i = 0; i < 5; i++) await page.keyboard.press('Shift+ArrowUp');
    await expect.poll(balance).toBeGreaterThan(before + 3);
    await undoAll(page);
  });
});

describe('finding', () => {
  it('goes to a figure by a few letters and opens its how', async () => {
    const page = await onLeading('choice');
    await page.keyboard.press('Control+k');
    await page.getByRole('combobox', { name: 'find' }).fill('top speed level');
    await page.locator('[role=option][data-highlighted]').filter({ hasText: 'top speed, level' }).waitFor();
    await page.keyboard.press('Enter');
    await page.locator('.how .how-title').filter({ hasText: 'top speed, level' }).waitFor();
    await expect.poll(() => new URL(page.url()).hash).toBe('#flight');
    await pressEscape(page);
  });
});

describe('several builds', () => {
  it('copies one, keeps a snapshot, removes it and goes back', async () => {
    const page = await visit('choice');
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    await page.getByRole('button', { name: 'copy Tystie, one-piece plate, 4S' }).click();
    await page.getByRole('textbox', { name: 'name of Tystie, one-piece plate, 4S, copy' }).waitFor();
    await page.getByRole('textbox', { name: 'name of the snapshot' }).fill('with the copy');
    await page.getByRole('button', { name: 'keep the desk as it stands' }).click();
    await page.getByRole('button', { name: 'remove Tystie, one-piece plate, 4S, copy' }).click();
    await page.getByRole('textbox', { name: /4S, copy/ }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /go back to it.*with the copy/ }).click();
    await page.getByRole('textbox', { name: /4S, copy/ }).waitFor();
    await pressEscape(page);
    await expect.poll(() => page.locator('.choice .drawing').count()).toBe(7);
  });
});

describe('the page and the command line', () => {
  it('tell the same figures of every demo build, on every sheet', async () => {
    const page = await visit('airframe');
    const desk = openDesk();
    const { brief, builds } = await desk.open();
    // One page for all six: it works them out in the background while the command line runs here.
    for (const { id, build } of builds) {
      // It ends with 1 where there is a stop: that is an answer too.
      const { stdout } = spawnSync(
        'bin/quadwright',
        [
          'assess',
          `demo/first-freestyle/${id}.yaml`,
          '--brief',
          'demo/first-freestyle/brief.yaml',
          '--full',
          '--json',
        ],
        { encoding: 'utf8', maxBuffer: 64e6 },
      );
      const { measures, findings }: Pick<Assessment, 'measures' | 'findings'> = JSON.parse(stdout);
      await turnTo(page, 'airframe');
      await choose(page, 'build', new RegExp(`^${build.name}`));
      for (const sheet of new Set(measures.map((measure) => measure.sheet))) {
        await turnTo(page, sheet);
        const shown = () =>
          page
            .locator(`${TOP} .figure-row`)
            .evaluateAll((rows) =>
              rows
                .map(
                  (row) =>
                    `${row.getAttribute('data-measure')}: ${row.querySelector('.figure')?.textContent}`,
                )
                .sort(),
            );
        const told = measures
          .filter((measure) => measure.sheet === sheet)
          .map(({ id: name, value, band, quantity, words }) => {
            const exact = band[1] - band[0] <= 1e-3 * Math.abs(value);
            const text = formatQuantity(value, quantity, {
              currency: brief.currency,
              ...(exact ? {} : { band }),
            });
            return `${name}: ${words ?? text.split('\u00a0')[0]}`;
          });
        await expect.poll(shown, { message: `${id} ${sheet}` }).toEqual(told.sort());
        await expect
          .poll(() => page.locator(`${TOP} .margin-note`).count(), { message: `${id} ${sheet}` })
          .toBe(findings.filter((finding) => finding.sheet === sheet).length);
      }
    }
  });
});

describe('the pictures that the readme shows', () => {
  it('are there', () => {
    const readme = readFileSync('README.md', 'utf8');
    const kept = readdirSync('docs/pictures');
    for (const [, name] of readme.matchAll(/docs\/pictures\/([\w.-]+)/g)) expect(kept).toContain(name);
  });
});
