import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/assessment.ts';
import { formatQuantity } from '../../src/units/formatQuantity.ts';
import { openDesk } from '../../src/web/worker/openDesk.ts';
import { launch, openPage, settled, workedOut } from './browser.ts';
import { servePage } from './servePage.ts';

let browser: Browser;
let server: Awaited<ReturnType<typeof servePage>>;
beforeAll(async () => {
  [browser, server] = await Promise.all([launch(), servePage()]);
});
afterAll(async () => {
  await browser.close();
  server.close();
});

async function visit(sheet: string): Promise<Page> {
  const { page } = await openPage(browser);
  await page.goto(`${server.address}#choice`);
  await settled(page);
  await workedOut(page);
  await page.getByRole('tab', { name: sheet }).click();
  return page;
}

async function openBuild(page: Page, name: RegExp): Promise<void> {
  await page.getByRole('combobox', { name: 'build', exact: true }).click();
  await page.getByRole('option', { name }).click();
  await settled(page);
  await workedOut(page);
}

const figure = (page: Page, id: string) =>
  page.locator(`[role=tabpanel]:not([hidden]) [data-measure="${id}"] .figure`).first();

describe('the brief', () => {
  it('changes every number that hangs on it, at once, and undo brings them back', async () => {
    const page = await visit('brief');
    await page.getByRole('textbox', { name: 'budget before the first flight' }).fill('900');
    await page.keyboard.press('Enter');
    await settled(page);
    await page
      .locator('.brief-answers')
      .getByText(/over the budget/)
      .waitFor();
    await page.getByRole('textbox', { name: 'air outside' }).fill('60');
    await page.keyboard.press('Enter');
    await page.getByText(/from -30 to 50/).waitFor();
    await page.getByRole('button', { name: 'undo' }).click();
    await settled(page);
    await page
      .locator('.brief-answers')
      .getByText(/of the budget are left/)
      .waitFor();
    await page.context().close();
  });
});

describe('the shelf', () => {
  it('tells what each part would do, sorts by it, and searches by any word', async () => {
    const page = await visit('lift');
    await page.getByRole('combobox', { name: 'pack', exact: true }).click();
    await page.getByRole('option').first().waitFor();
    await page.getByText('being tried').first().waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'longest' }).click();
    const words = await page.getByRole('option').allTextContents();
    const minutes = words.flatMap((text) => {
      const found = /([\d.]+) min/.exec(text);
      return found ? [Number(found[1])] : [];
    });
    expect(minutes.length).toBeGreaterThan(5);
    expect(minutes).toEqual(minutes.toSorted((a, b) => b - a));
    await page.getByRole('combobox', { name: 'search pack' }).fill('4S');
    const found = await page.getByRole('option').allTextContents();
    expect(found.length).toBeGreaterThan(1);
    for (const text of found) expect(text).toContain('4S');
    await page.context().close();
  });
});

describe('trying a remedy', () => {
  it('shows what shorter screws would change, and keeps them only when asked to', async () => {
    const page = await visit('fit');
    await openBuild(page, /Bonxie/);
    const stop = page.locator('[role=tabpanel]:not([hidden]) .margin-note.stop');
    expect(await stop.count()).toBe(1);
    await page
      .getByRole('button', { name: /try it: motor screws/ })
      .first()
      .click();
    await page.locator('.try-shown').getByText('mended').first().waitFor();
    expect(await stop.count()).toBe(1);
    await page.getByRole('button', { name: 'keep it' }).click();
    await settled(page);
    expect(await stop.count()).toBe(0);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await stop.count()).toBe(1);
    await page.context().close();
  });
});

describe('dragging in the plan', () => {
  it('moves a motor, the trim follows, and undo is one step', async () => {
    const page = await visit('airframe');
    const before = await figure(page, 'motor-diagonal').textContent();
    const handle = page.getByRole('button', { name: /front right motor/ });
    const box = (await handle.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 30, box.y + box.height / 2 - 30, { steps: 8 });
    await page.mouse.up();
    await settled(page);
    expect(Number(await figure(page, 'motor-diagonal').textContent())).toBeGreaterThan(Number(before) + 10);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await figure(page, 'motor-diagonal').textContent()).toBe(before);
    await page.context().close();
  });

  it('moves the pack with the arrow keys', async () => {
    const page = await visit('airframe');
    const before = Number(await figure(page, 'balance-forward').textContent());
    await page.getByRole('button', { name: /^pack, to move/ }).focus();
    for (let i = 0; i < 5; i++) await page.keyboard.press('Shift+ArrowUp');
    await settled(page);
    expect(Number(await figure(page, 'balance-forward').textContent())).toBeGreaterThan(before + 3);
    await page.context().close();
  });
});

describe('finding', () => {
  it('goes to a figure by a few letters and opens its how', async () => {
    const page = await visit('choice');
    await page.keyboard.press('Control+k');
    await page.getByRole('combobox', { name: 'find' }).fill('top speed level');
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('Enter');
    const how = page.getByRole('dialog');
    await how.getByText('top speed, level').waitFor();
    expect(new URL(page.url()).hash).toBe('#flight');
    await page.context().close();
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
    await page.keyboard.press('Escape');
    await settled(page);
    expect(await page.locator('.choice .drawing').count()).toBe(7);
    await page.context().close();
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
      await page.getByRole('tab', { name: 'airframe' }).click();
      if (
        !(await page.getByRole('combobox', { name: 'build', exact: true }).textContent())?.includes(
          build.name,
        )
      )
        await openBuild(page, new RegExp(`^${build.name}`));
      await workedOut(page);
      for (const sheet of new Set(measures.map((measure) => measure.sheet))) {
        await page.getByRole('tab', { name: sheet }).click();
        const shown = await page
          .locator('[role=tabpanel]:not([hidden]) .figure-row')
          .evaluateAll((rows) =>
            rows.map((row) => [
              row.getAttribute('data-measure') ?? '',
              row.querySelector('.figure')?.textContent ?? '',
            ]),
          );
        expect(shown.length, `${id} ${sheet}`).toBe(
          measures.filter((measure) => measure.sheet === sheet).length,
        );
        for (const [name, text] of shown) {
          const { value, band, quantity } = measures.find((measure) => measure.id === name)!;
          const exact = band[1] - band[0] <= 1e-3 * Math.abs(value);
          const told = formatQuantity(value, quantity, {
            currency: brief.currency,
            ...(exact ? {} : { band }),
          });
          expect(text, `${id} ${name}`).toBe(told.split('\u00a0')[0]);
        }
        const notes = page.locator('[role=tabpanel]:not([hidden]) .margin-note');
        expect(await notes.count(), `${id} ${sheet}`).toBe(
          findings.filter((finding) => finding.sheet === sheet).length,
        );
      }
    }
    await page.context().close();
  });
});

describe('the pictures that the readme shows', () => {
  it('are there', () => {
    const readme = readFileSync('README.md', 'utf8');
    const kept = readdirSync('docs/pictures');
    for (const [, name] of readme.matchAll(/docs\/pictures\/([\w.-]+)/g)) expect(kept).toContain(name);
  });
});
