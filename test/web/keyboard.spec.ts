import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { atRest, drawn, openBench, steady, TOP } from './browser.ts';

const { visit } = openBench();

/** What has the focus, in words; `nothing` where it fell to the page itself, `unseen` where no eye finds it. */
function wordsOfFocus(): string {
  const active = document.activeElement;
  if (active === null || active === document.body) return 'nothing';
  const { top, bottom, width, height } = active.getBoundingClientRect();
  const inSight = width > 0 && height > 0 && bottom > 0 && top < window.innerHeight;
  const { outlineStyle, outlineWidth } = getComputedStyle(active);
  const marked = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0;
  const named = active.getAttribute('aria-label') ?? active.textContent ?? '';
  return inSight && marked ? named.trim().slice(0, 80) : `unseen: ${active.outerHTML.slice(0, 120)}`;
}

const focused = (page: Page): Promise<string> => page.evaluate(wordsOfFocus);

/** The focus is somewhere, in sight and marked. */
async function expectFocus(page: Page, after: string): Promise<void> {
  await expect.poll(() => focused(page), { message: after }).not.toMatch(/^(nothing|unseen)/);
}

const has = (locator: Locator): Promise<boolean> =>
  locator.evaluate((element) => element === document.activeElement);

/** Goes by the Tab key to something; every stop on the way is in sight. */
async function tabTo(page: Page, to: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await to.waitFor();
  await drawn(page);
  for (let stops = 0; stops < 300; stops++) {
    if (await has(to)) return;
    await page.keyboard.press(key);
    await expect.poll(() => focused(page)).not.toMatch(/^unseen/);
  }
  throw new Error(`the Tab key never comes to ${to}`);
}

async function press(page: Page, to: Locator, key = 'Enter'): Promise<void> {
  await tabTo(page, to);
  await page.keyboard.press(key);
}

/** By a few letters to a sheet. */
async function findSheet(page: Page, sheet: string): Promise<void> {
  await page.keyboard.press('Control+k');
  const field = page.getByRole('combobox', { name: 'find' });
  await expect.poll(() => has(field)).toBe(true);
  await page.keyboard.type(sheet);
  await page
    .getByRole('option', { name: new RegExp(`^${sheet} ?sheet`) })
    .first()
    .waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('tab', { name: sheet, selected: true }).waitFor();
  await page.locator(TOP).filter({ hasNotText: 'Laying out the sheet.' }).waitFor();
  await drawn(page);
  await expectFocus(page, `found ${sheet}`);
}

const button = (page: Page, name: string | RegExp) =>
  page.locator(TOP).getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) });

describe('a newcomer without a mouse', () => {
  it('reads the answers, opens a build, changes a part, moves pack and motor, asks how, takes it all back', async () => {
    const { page } = await visit('choice');
    // In the order of the page: who leads, then what a newcomer asks, each under a heading of its own.
    const headings = () => page.locator(`${TOP} h2, ${TOP} h3`).allTextContents();
    const read = await steady(page, headings);
    expect(read[0]).toBe('Which one first?');
    expect(read.filter((each) => each.endsWith('?')).length).toBeGreaterThanOrEqual(5);

    await press(page, button(page, /Kittiwake, dead cat/));
    await page.getByRole('tab', { name: 'airframe', selected: true }).waitFor();
    await atRest(page);
    await expectFocus(page, 'opened a build');

    const propellers = page.locator(TOP).getByRole('combobox', { name: 'propellers', exact: true });
    const before = await steady(page, () => propellers.textContent());
    await press(page, propellers);
    await page.getByRole('option').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(() => propellers.textContent()).not.toBe(before);
    await atRest(page);
    await expectFocus(page, 'changed a part');

    const forward = page.getByRole('slider', { name: /forward/ });
    const at = Number(await steady(page, () => forward.getAttribute('aria-valuenow')));
    const pack = button(page, /^pack, to move/);
    await tabTo(page, pack, 'Shift+Tab');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => forward.getAttribute('aria-valuenow')).toBe(String(at + 1));
    await atRest(page);
    expect(await steady(page, () => has(pack))).toBe(true);
    await expectFocus(page, 'moved the pack');

    const layout = page.locator(TOP).getByRole('combobox', { name: 'layout', exact: true });
    const sold = await steady(page, () => layout.textContent());
    const motor = button(page, /^front right motor, to move/);
    await tabTo(page, motor);
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(() => layout.textContent()).not.toBe(sold);
    await atRest(page);
    await expectFocus(page, 'moved a motor');

    const mass = page.locator(`${TOP} [data-measure="all-up-mass"]`);
    await press(page, mass);
    const how = page.getByRole('dialog', { name: 'all-up mass' });
    await how.getByText('leans on').waitFor();
    await page.keyboard.press('Escape');
    await how.waitFor({ state: 'detached' });
    expect(await steady(page, () => has(mass))).toBe(true);

    // Back by keys, then by the button until nothing is left: it goes out under the hand.
    await page.keyboard.press('Control+z');
    await expect.poll(() => layout.textContent()).toBe(sold);
    const undo = page.getByRole('button', { name: 'undo', exact: true });
    await tabTo(page, undo, 'Shift+Tab');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await expect.poll(() => undo.isDisabled()).toBe(true);
    await expect.poll(() => propellers.textContent()).toBe(before);
    await atRest(page);
    await expectFocus(page, 'undid all');
  });

  it('tries a remedy, keeps it, leaves another, and undoes', async () => {
    const { page } = await visit('choice');
    await findSheet(page, 'shake');
    await atRest(page);
    const thicker = button(page, /^try it: arms of/).first();
    await press(page, thicker);
    const shown = page.locator(TOP).getByText('what it would change');
    await shown.waitFor();
    await expectFocus(page, 'tried a remedy');
    await press(page, button(page, 'leave it'));
    await shown.waitFor({ state: 'detached' });
    await expectFocus(page, 'left it');
    await press(page, thicker);
    await press(page, button(page, 'keep it'));
    await shown.waitFor({ state: 'detached' });
    const undo = page.getByRole('button', { name: 'undo', exact: true });
    await expect.poll(() => undo.isDisabled()).toBe(false);
    await atRest(page);
    await expectFocus(page, 'kept a remedy');
    await page.keyboard.press('Control+z');
    await expect.poll(() => undo.isDisabled()).toBe(true);
    await atRest(page);
    await expectFocus(page, 'undid a remedy');
  });

  it('compares four with their reasons, saves a file and a link, searches the shelf, and leaves', async () => {
    const { page } = await visit('choice');
    const desk = page.getByRole('button', { name: 'desk', exact: true });
    await press(page, desk);
    const dialog = page.getByRole('dialog', { name: 'On the desk' });
    for (const name of ['Tystie, one-piece plate, 4S', 'Bonxie, true X, 6 mm arms']) {
      const compared = dialog.getByRole('checkbox', { name: `compare ${name}` });
      await press(page, compared, 'Space');
      await expect.poll(() => compared.isChecked()).toBe(false);
      await expectFocus(page, `set ${name} aside`);
    }
    const name = dialog.getByRole('textbox', { name: 'name of Kittiwake, dead cat' });
    await tabTo(page, name);
    await page.keyboard.type('Mine');
    await page.keyboard.press('Enter');
    await dialog.getByRole('textbox', { name: 'name of Mine' }).waitFor();
    await expectFocus(page, 'named a build');
    const file = dialog.getByRole('button', { name: 'save file of the brief' });
    await tabTo(page, file);
    const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    expect(download.suggestedFilename()).toMatch(/\.yaml$/);
    await press(page, dialog.getByRole('button', { name: 'make a link' }));
    const link = dialog.getByRole('textbox', { name: 'link to share' });
    await tabTo(page, link);
    await expect.poll(() => link.inputValue()).toContain('#share=');
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    expect(await steady(page, () => has(desk))).toBe(true);

    await expect.poll(() => page.locator(`${TOP} .choice .drawing`).count()).toBe(4);
    // Told once every build has its full answer: the order may change until then.
    await page.getByRole('rowheader', { name: 'top speed, level' }).waitFor();
    const reasons = await steady(page, () => page.locator('.verdict h3').allTextContents());
    expect(reasons).toHaveLength(3);
    const causes = button(page, /one cause at a time/);
    await press(page, causes);
    const lesson = page.getByRole('dialog', { name: 'One cause at a time' });
    // From the one that leads to the one that comes next, as the sheet beneath has them.
    const leader = await steady(page, () => page.locator('.verdict h2').textContent());
    const picked = (label: string) =>
      lesson
        .getByRole('combobox', { name: label, exact: true })
        .evaluate((field) => (field as HTMLSelectElement).selectedOptions[0]?.text ?? '');
    await expect.poll(() => picked('from').then((from) => from !== '' && leader?.includes(from))).toBe(true);
    await expect.poll(() => picked('to').then((to) => reasons[1]?.includes(to))).toBe(true);
    await page.keyboard.press('Escape');
    await lesson.waitFor({ state: 'detached' });
    expect(await steady(page, () => has(causes))).toBe(true);

    await findSheet(page, 'shortlist');
    await press(page, button(page, 'search the shelf'));
    await button(page, 'stop here').waitFor();
    await expectFocus(page, 'began a search');
    await press(page, button(page, 'stop here'));
    await button(page, 'search the shelf').waitFor();
    await expectFocus(page, 'stopped the search');

    await findSheet(page, 'money');
    // Out of the page at its end: the keyboard is never held.
    await expect
      .poll(async () => {
        await page.keyboard.press('Tab');
        return await focused(page);
      })
      .toBe('nothing');
  });
});
