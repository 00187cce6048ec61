import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readBrief, readBuild } from '../../src/build/read/readBuild.ts';
import { readFragment, shareFragment } from '../../src/web/desk/share.ts';
import { openDesk } from '../../src/web/worker/openDesk.ts';
import { atRest, openBench, pressEscape, saved, turnTo } from './browser.ts';
import { anotherTab } from './launch.ts';

const { address, open, share, visit } = openBench();

/** For tests that take back what they change. */
const any = share();

const kept = (page: Page) => page.getByText('kept in this browser').waitFor();

/** Renames the first build at the desk. */
async function rename(page: Page, from: string, to: string): Promise<void> {
  await page.getByRole('button', { name: 'desk', exact: true }).click();
  const field = page.getByRole('textbox', { name: `name of ${from}` });
  await field.fill(to);
  await field.press('Enter');
  await page.getByRole('textbox', { name: `name of ${to}` }).waitFor();
  await pressEscape(page);
}

const savedText = async (page: Page, button: string): Promise<string> =>
  (await saved(page.getByRole('button', { name: button, exact: true }))).toString();

/** The candidates drawn side by side. */
const drawings = (page: Page) => page.locator('.choice .drawing').count();

describe('kept in the browser', () => {
  it('is there again after the tab was closed in the middle of work', async () => {
    const { page } = await visit();
    await rename(page, 'Bonxie, true X, 6 mm arms', 'Bonxie, mine');
    await turnTo(page, 'brief');
    await page.getByRole('radio', { name: 'race' }).check();
    await kept(page);
    const context = page.context();
    await page.close({ runBeforeUnload: false });
    const again = await anotherTab(context);
    await again.goto(`${address()}#brief`);
    await expect.poll(() => again.getByRole('radio', { name: 'race' }).isChecked()).toBe(true);
    await turnTo(again, 'choice');
    await again.getByRole('button', { name: /Bonxie, mine/ }).waitFor();
  });

  it('puts a store it can not read aside, says so and shows the demo', async () => {
    const { page } = await visit();
    await rename(page, 'Bonxie, true X, 6 mm arms', 'Bonxie, mine');
    await kept(page);
    const store = (write?: unknown) =>
      page.evaluate(
        (value) =>
          new Promise((done, fail) => {
            const open = indexedDB.open('quadwright', 1);
            open.onerror = fail;
            open.onsuccess = () => {
              const desk = open.result.transaction('desk', 'readwrite').objectStore('desk');
              const request = value === undefined ? desk.get('unread') : desk.put(value, 'now');
              request.onsuccess = () => {
                open.result.close();
                done(request.result);
              };
            };
          }),
        write,
      );
    await store({ version: 1, files: 'torn' });
    await page.reload();
    await page.getByText(/can not be read/).waitFor();
    await expect.poll(() => drawings(page)).toBe(6);
    await expect.poll(() => store()).toEqual({ version: 1, files: 'torn' });
  });

  it('says plainly when there is no room, and loses nothing on the desk', async () => {
    const { page } = await visit('choice', {}, async (fresh) => {
      await fresh.addInitScript(() => {
        IDBObjectStore.prototype.put = () => {
          throw new DOMException('no room', 'QuotaExceededError');
        };
      });
    });
    await rename(page, 'Bonxie, true X, 6 mm arms', 'Bonxie, mine');
    await page.getByText(/no room left to keep your work/).waitFor();
    await page.getByRole('button', { name: /Bonxie, mine/ }).waitFor();
  });

  it('takes one desk for one tab, and tells the second', async () => {
    const { page } = await visit();
    const second = await anotherTab(page.context());
    await second.goto(`${address()}#choice`);
    await second.getByText(/open in another tab/).waitFor();
  });
});

describe('without a network', () => {
  it('runs as before, sheets and files and all, once it has been loaded', async () => {
    const { page, complaints } = await visit();
    await page.evaluate(async () => await navigator.serviceWorker.ready);
    await page.context().setOffline(true);
    await page.reload();
    await atRest(page);
    await expect.poll(() => drawings(page)).toBe(6);
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    const text = 'format: quadwright-brief-1\nname: Offline\npurpose: race\n';
    await page
      .getByLabel('files to take in')
      .setInputFiles([{ name: 'brief.yaml', mimeType: 'application/yaml', buffer: Buffer.from(text) }]);
    await page.getByText(/the brief Offline/).waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('files and links', () => {
  it('saves the files that the command line reads, and takes them in again', async () => {
    const { page } = await any();
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    const build = await savedText(page, 'save file Bonxie, true X, 6 mm arms');
    const brief = await savedText(page, 'save file of the brief');
    const read = readBuild(build, 'saved.yaml');
    expect(read.ok && read.value.build.name).toBe('Bonxie, true X, 6 mm arms');
    expect(readBrief(brief, 'saved.yaml').ok).toBe(true);
    await page.getByLabel('files to take in').setInputFiles([
      {
        name: 'own.yaml',
        mimeType: 'application/yaml',
        buffer: Buffer.from(build.replace('Bonxie, true X, 6 mm arms', 'Taken in')),
      },
    ]);
    await page.getByText(/On the desk now: Taken in/).waitFor();
    await page.getByRole('textbox', { name: 'name of Taken in' }).waitFor();
    await page.getByRole('button', { name: 'remove Taken in' }).click();
    await page.getByRole('textbox', { name: 'name of Taken in' }).waitFor({ state: 'detached' });
    await pressEscape(page);
  });

  it('takes no bad file, tells file, line and what to do, and changes nothing', async () => {
    const { page } = await any();
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    await page.getByLabel('files to take in').setInputFiles([
      {
        name: 'bad.yaml',
        mimeType: 'application/yaml',
        buffer: Buffer.from('format: quadwright-build-1\nname: Bad\nframe: 12 kg\n'),
      },
      { name: 'other.json', mimeType: 'application/json', buffer: Buffer.from('{"format":"something"}') },
      { name: 'huge.yaml', mimeType: 'application/yaml', buffer: Buffer.alloc(3_000_000, '[') },
    ]);
    const notice = page.locator('.notice').filter({ hasText: 'bad.yaml' });
    for (const words of ['bad.yaml:3', 'other.json', 'huge.yaml'])
      await expect.poll(() => notice.textContent()).toContain(words);
    await pressEscape(page);
    await atRest(page);
    await expect.poll(() => drawings(page)).toBe(6);
  });

  it("lays the user's own parts over the shelf", async () => {
    const { page } = await visit();
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    const shelf =
      'format: quadwright-shelf-1\nparts:\n  - { id: own-motor, basedOn: haar-2306-1720, name: My own motor }\n';
    await page
      .getByLabel('files to take in')
      .setInputFiles([{ name: 'shelf.yaml', mimeType: 'application/yaml', buffer: Buffer.from(shelf) }]);
    await page.getByText(/On the desk now: your parts/).waitFor();
    await pressEscape(page);
    await turnTo(page, 'airframe');
    await page.getByRole('combobox', { name: 'motors', exact: true }).click();
    await page.getByRole('combobox', { name: 'search motors' }).fill('my own');
    await page.getByRole('option', { name: /My own motor/ }).click();
    await expect
      .poll(() => page.getByRole('combobox', { name: 'motors', exact: true }).textContent())
      .toContain('My own motor');
  });

  it('opens a shared link, adds its build and its brief, and undo takes them back', async () => {
    const { demo } = await openDesk().open();
    const build = { ...demo.builds[0]!.build, name: 'Shared one' };
    const fragment = shareFragment(build, { ...demo.brief, name: 'Another brief' });
    const { page } = await open();
    await page.goto(address() + fragment);
    await page.getByText(/Shared one came by a link/).waitFor();
    await page.getByRole('heading', { name: /Shared one: airframe/ }).waitFor();
    const title = () => page.locator('.title-block').textContent();
    await expect.poll(title).toContain('Another brief');
    await kept(page);
    await page.keyboard.press('Control+z');
    await expect.poll(title).not.toContain('Another brief');
    await page.keyboard.press('Control+z');
    await expect.poll(title).not.toContain('Shared one');
  });

  it('reads back what it packed, and bounds what a link may unpack to', async () => {
    const { demo } = await openDesk().open();
    const fragment = shareFragment(demo.builds[0]!.build, demo.brief);
    expect(fragment.length).toBeLessThan(4000);
    const shared = readFragment(fragment);
    expect(typeof shared === 'object' && readBuild(shared.build, 'link').ok).toBe(true);
    expect(readFragment('#airframe')).toBeUndefined();
    expect(readFragment('#share=AAAA')).toMatch(/damaged/);
    expect(readFragment(fragment.slice(0, -40))).toMatch(/damaged/);
    const { deflateSync } = await import('fflate');
    const bomb = Buffer.from(deflateSync(new Uint8Array(30_000_000), { level: 9 })).toString('base64url');
    expect(readFragment(`#share=${bomb}`)).toMatch(/damaged/);
  });
});
