import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readBrief, readBuild } from '../../src/build/read/readBuild.ts';
import { readFragment, shareFragment } from '../../src/web/desk/share.ts';
import { openDesk } from '../../src/web/worker/openDesk.ts';
import { launch, openPage, settled } from './browser.ts';
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

async function visit(): Promise<Page> {
  const { page } = await openPage(browser);
  await page.goto(`${server.address}#choice`);
  await settled(page);
  return page;
}

const kept = (page: Page) => page.getByText('kept in this browser').waitFor();

async function openSheet(page: Page, sheet: string): Promise<void> {
  await page.getByRole('tab', { name: sheet }).click();
}

/** Renames the first build at the desk. */
async function rename(page: Page, from: string, to: string): Promise<void> {
  await page.getByRole('button', { name: 'desk', exact: true }).click();
  const field = page.getByRole('textbox', { name: `name of ${from}` });
  await field.fill(to);
  await field.press('Enter');
  await page.keyboard.press('Escape');
}

async function saved(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFileSync(await download.path(), 'utf8');
}

describe('kept in the browser', () => {
  it('is there again after the tab was closed in the middle of work', async () => {
    const page = await visit();
    await rename(page, 'Bonxie, true X, 6 mm arms', 'Bonxie, mine');
    await openSheet(page, 'brief');
    await page.getByRole('radio', { name: 'race' }).check();
    await settled(page);
    await kept(page);
    const context = page.context();
    await page.close({ runBeforeUnload: false });
    const again = await context.newPage();
    await again.goto(`${server.address}#brief`);
    await again.locator('[data-waiting="0"]').waitFor();
    expect(await again.getByRole('radio', { name: 'race' }).isChecked()).toBe(true);
    await openSheet(again, 'choice');
    await again.getByRole('button', { name: /Bonxie, mine/ }).waitFor();
    await context.close();
  });

  it('puts a store it can not read aside, says so and shows the demo', async () => {
    const page = await visit();
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
              request.onsuccess = () => done(request.result);
            };
          }),
        write,
      );
    await store({ version: 1, files: 'torn' });
    await page.reload();
    await settled(page);
    await page.getByText(/can not be read/).waitFor();
    expect(await page.locator('.choice .drawing').count()).toBe(6);
    expect(await store()).toEqual({ version: 1, files: 'torn' });
    await page.context().close();
  });

  it('says plainly when there is no room, and loses nothing on the desk', async () => {
    const { page } = await openPage(browser);
    await page.addInitScript(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await page.goto(`${server.address}#choice`);
    await settled(page);
    await rename(page, 'Bonxie, true X, 6 mm arms', 'Bonxie, mine');
    await page.getByText(/no room left to keep your work/).waitFor();
    await page.getByRole('button', { name: /Bonxie, mine/ }).waitFor();
    await page.context().close();
  });

  it('takes one desk for one tab, and tells the second', async () => {
    const page = await visit();
    const second = await page.context().newPage();
    await second.goto(`${server.address}#choice`);
    await second.getByText(/open in another tab/).waitFor();
    await page.context().close();
  });
});

describe('without a network', () => {
  it('runs as before, sheets and files and all, once it has been loaded', async () => {
    const { page, complaints } = await openPage(browser);
    await page.goto(`${server.address}#choice`);
    await settled(page);
    await page.evaluate(async () => await navigator.serviceWorker.ready);
    await page.context().setOffline(true);
    await page.reload();
    await settled(page);
    expect(await page.locator('.choice .drawing').count()).toBe(6);
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    const text = 'format: quadwright-brief-1\nname: Offline\npurpose: race\n';
    await page
      .getByLabel('files to take in')
      .setInputFiles([{ name: 'brief.yaml', mimeType: 'application/yaml', buffer: Buffer.from(text) }]);
    await page.getByText(/the brief Offline/).waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});

describe('files and links', () => {
  it('saves the files that the command line reads, and takes them in again', async () => {
    const page = await visit();
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    const build = await saved(page, 'save file Bonxie, true X, 6 mm arms');
    const brief = await saved(page, 'save file of the brief');
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
    await page.context().close();
  });

  it('takes no bad file, tells file, line and what to do, and changes nothing', async () => {
    const page = await visit();
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
    const notice = page.locator('.notice');
    await notice.waitFor();
    const text = (await notice.textContent()) ?? '';
    expect(text).toContain('bad.yaml:3');
    expect(text).toContain('other.json');
    expect(text).toContain('huge.yaml');
    await page.keyboard.press('Escape');
    expect(await page.locator('.choice .drawing').count()).toBe(6);
    await page.context().close();
  });

  it("lays the user's own parts over the shelf", async () => {
    const page = await visit();
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    const shelf =
      'format: quadwright-shelf-1\nparts:\n  - { id: own-motor, basedOn: haar-2306-1720, name: My own motor }\n';
    await page
      .getByLabel('files to take in')
      .setInputFiles([{ name: 'shelf.yaml', mimeType: 'application/yaml', buffer: Buffer.from(shelf) }]);
    await page.getByText(/On the desk now: your parts/).waitFor();
    await page.keyboard.press('Escape');
    await openSheet(page, 'airframe');
    await page.getByRole('combobox', { name: 'motors', exact: true }).click();
    await page.getByRole('combobox', { name: 'search motors' }).fill('my own');
    await page.getByRole('option', { name: /My own motor/ }).click();
    await settled(page);
    expect(await page.getByRole('combobox', { name: 'motors', exact: true }).textContent()).toContain(
      'My own motor',
    );
    await page.context().close();
  });

  it('opens a shared link, adds its build and its brief, and undo takes them back', async () => {
    const { demo } = await openDesk().open();
    const build = { ...demo.builds[0]!.build, name: 'Shared one' };
    const fragment = shareFragment(build, { ...demo.brief, name: 'Another brief' });
    const { page } = await openPage(browser);
    await page.goto(server.address + fragment);
    await page.getByText(/Shared one came by a link/).waitFor();
    await settled(page);
    await page.getByRole('heading', { name: /Shared one: airframe/ }).waitFor();
    expect(await page.locator('.title-block').textContent()).toContain('Another brief');
    await page.context().close();
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
