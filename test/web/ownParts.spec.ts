import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fieldsOfKind } from '../../src/build/lists/fieldsOfKind.ts';
import { ontoShelf } from '../../src/build/lists/ontoShelf.ts';
import { readShelf } from '../../src/build/read/readShelf.ts';
import { PART_KINDS } from '../../src/build/schema/partKinds.ts';
import { openDesk } from '../../src/web/worker/openDesk.ts';
import { draftPart, ownParts } from '../../src/web/worker/ownParts.ts';
import { expectNoFaults, expectNoSidewaysScroll, openBench, saved } from './browser.ts';

const { visit } = openBench();

const tell = async (page: Page, field: string, text: string) =>
  await page.getByRole('textbox', { name: field }).fill(text);

describe('a part of your own', () => {
  it('is entered from a listing where it is to go, shows what is inferred, and flies', async () => {
    const { page } = await visit('lift');
    const motors = page.getByRole('combobox', { name: 'motors', exact: true });
    await motors.click();
    await page.getByRole('button', { name: /enter it from its listing/ }).click();
    const form = page.getByRole('dialog', { name: 'A part of your own' });
    await form.getByText(/fields to go/).waitFor();
    await tell(page, 'name', 'Petrel 2306');
    await tell(page, 'price', '19,90');
    await tell(page, 'mass', '31,5');
    await tell(page, 'stator', '2306');
    await tell(page, 'speed constant', '99000');
    await form.getByText(/at most 40000\srpm\/V/).waitFor();
    await tell(page, 'speed constant', '1750');
    // The law of docs/method/drive.md gives a winding for the stator; the page must say that it is not the maker's.
    await form.getByRole('term').filter({ hasText: 'winding resistance' }).waitFor();
    await form
      .getByText(/^moves .*/)
      .first()
      .waitFor();
    await form.getByRole('button', { name: 'keep it on my shelf' }).click();
    await form.waitFor({ state: 'detached' });
    await expect.poll(() => motors.textContent()).toContain('Petrel 2306');
  });

  it('is changed, saved as a file of the command line, and not removed while on board', async () => {
    const { page } = await visit('lift');
    const form = page.getByRole('dialog', { name: /^(A part of your own|Your part, to change)$/ });
    const width = form.getByRole('textbox', { name: 'width' });
    const keep = form.getByRole('button', { name: 'keep it on my shelf' });
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    await page.getByRole('button', { name: 'enter a part' }).click();
    await form.getByRole('combobox', { name: 'kind of part' }).selectOption('strap');
    await width.waitFor();
    await keep.click();
    await page
      .getByText(/Not told yet/)
      .first()
      .waitFor();
    await tell(page, 'name', 'My strap');
    await tell(page, 'price', '2.50 GBP');
    await tell(page, 'mass', '4');
    await tell(page, 'width', '20');
    await tell(page, 'length', '220');
    await keep.click();
    await form.waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'change My strap' }).click();
    await expect.poll(() => width.inputValue()).toBe('20');
    await tell(page, 'width', '16');
    await keep.click();
    await form.waitFor({ state: 'detached' });
    const file = await saved(page.getByRole('button', { name: 'save file of your parts' }));
    const read = readShelf(file.toString(), 'shelf.yaml');
    const strap = read.ok ? read.value.parts.get('my-strap') : undefined;
    expect(strap?.kind === 'strap' && strap.width).toBeCloseTo(0.016, 9);
    await page.getByRole('button', { name: 'remove My strap' }).click();
    await page.getByText(/None yet. A shop's listing/).waitFor();
    const back = page.getByRole('button', { name: /take the last change back/ });
    await back.click();
    await page.getByRole('button', { name: 'remove My strap' }).waitFor();
    await page.getByRole('button', { name: /make it again/ }).click();
    await page.getByText(/None yet. A shop's listing/).waitFor();
    await back.click();
    await page.getByRole('button', { name: 'remove My strap' }).waitFor();
    await page.getByRole('button', { name: 'take all off the shelf' }).click();
    await page.getByText(/None yet. A shop's listing/).waitFor();
    await back.click();
    await page.getByRole('button', { name: 'change My strap' }).click();
    await expect.poll(() => width.inputValue()).toBe('16');
  });
});

describe('a part that can not be kept yet', () => {
  it('on a telephone brings what is at fault first into sight, with its words at the field', async () => {
    const { page } = await visit('lift', { width: 390, height: 700 });
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    await page.getByRole('button', { name: 'enter a part' }).click();
    const form = page.getByRole('dialog', { name: 'A part of your own' });
    const keep = form.getByRole('button', { name: 'keep it on my shelf' });
    // Axe knows no more than that a field says what is wrong with it: the rest is looked at here.
    const standing = () =>
      form.locator(':focus').evaluate((field) => {
        const { top, bottom } = field.getBoundingClientRect();
        const words = document.getElementById(field.getAttribute('aria-describedby') ?? '');
        const said = words?.getBoundingClientRect();
        return {
          label: document.querySelector(`label[for="${field.id}"]`)?.firstChild?.textContent,
          says: words?.textContent,
          invalid: field.getAttribute('aria-invalid'),
          seen: top >= 0 && bottom <= innerHeight && (said?.bottom ?? Infinity) <= innerHeight,
        };
      });
    await form.getByRole('textbox', { name: 'name' }).waitFor();
    await keep.click();
    await expect
      .poll(standing)
      .toEqual({ label: 'name', says: 'Not told yet.', invalid: 'true', seen: true });
    await tell(page, 'name', 'Petrel 2306');
    await tell(page, 'price', 'dear');
    await keep.click();
    await expect.poll(standing).toEqual({
      label: 'price',
      says: '"dear" is not an amount of money. Write it like 24.90, or with its currency, like 24.90 EUR.',
      invalid: 'true',
      seen: true,
    });
    await expectNoFaults(page);
    await expectNoSidewaysScroll(page);
  });
});

describe('the fields of a part', () => {
  const desk = openDesk();

  it('take an amount in the currency of the brief, or in one told with it', async () => {
    const price = async (text: string) => {
      const told = { name: { text: 'My strap' }, price: { text }, mass: { text: '4', unit: 'g' } };
      const sized = { width: { text: '20', unit: 'mm' }, length: { text: '220', unit: 'mm' } };
      const draft = { kind: 'strap', currency: 'GBP', told: { ...told, ...sized } } as const;
      const read = await desk.draftPart(draft, undefined);
      return read.ok ? read.raw.price : read.faults;
    };
    expect(await price('2.5')).toBe('2.50 GBP');
    expect(await price('2,50')).toBe('2.50 GBP');
    expect(await price('2.5 EUR')).toBe('2.50 EUR');
    expect(await price('€ 2,50')).toBe('2.50 EUR');
    for (const wrong of ['-3', 'dear', '$ 3'])
      expect(await price(wrong), wrong).toMatchObject([{ path: 'price', missing: false }]);
  });

  it('are called by their labels, never as files name them', async () => {
    const names = new Set(
      PART_KINDS.flatMap((kind) => fieldsOfKind(kind).flatMap(({ path }) => path.split('.'))),
    );
    const asInFiles = [...names].filter((name) => /[a-z][A-Z]/.test(name));
    expect(asInFiles.length).toBeGreaterThan(20);
    for (const kind of PART_KINDS) {
      const fields = await desk.partFields(kind);
      // Each in turn with what can not be read, so that every field says what is wrong with it.
      const wrong = Object.fromEntries(fields.map(({ path }) => [path, { text: 'x'.repeat(50) }]));
      const reads = [{}, wrong].map((told) => desk.draftPart({ kind, told, currency: 'GBP' }, undefined));
      const faults = (await Promise.all(reads)).flatMap((read) => (read.ok ? [] : read.faults));
      const words = [
        ...fields.flatMap(({ says, allowed, label }) => [says, allowed, label]),
        ...faults.map(({ says }) => says),
      ];
      for (const text of words)
        for (const name of asInFiles) expect(text.split(/\W+/), `${kind}: ${text}`).not.toContain(name);
    }
  });

  it('hold every kind, and ask what the reader asks', async () => {
    for (const kind of PART_KINDS) {
      const fields = await desk.partFields(kind);
      const read = await desk.draftPart({ kind, told: {} }, undefined);
      const missing = read.ok ? [] : read.faults.filter((fault) => fault.missing).map(({ path }) => path);
      const must = fields.filter((field) => field.required).map(({ path }) => path);
      // A group that is missing is told as a whole by the reader.
      for (const path of missing)
        expect(
          must.some((each) => each === path || each.startsWith(`${path}.`)),
          `${kind}: ${path}`,
        ).toBe(true);
      expect(fields.filter((field) => field.first).length, kind).toBeLessThanOrEqual(16);
    }
  });

  it('give back what a file of parts says, kind by kind', async () => {
    const text = ['motors', 'packs', 'propellers', 'cameras', 'frames']
      .map((name) => readFileSync(`shelf/${name}.yaml`, 'utf8'))
      .map((file, i) => (i === 0 ? file : file.slice(file.indexOf('\nparts:') + 7)))
      .join('\n');
    const whole = readShelf(text, 'shelf.yaml');
    if (!whole.ok) throw new Error(whole.errors[0]?.says);
    const own = ownParts(text);
    expect(own.length).toBeGreaterThan(50);
    for (const { id, draft } of own) {
      const read = draftPart(draft, whole.value);
      expect(read.ok ? '' : read.faults, id).toBe('');
      if (!read.ok) continue;
      const again = readShelf(ontoShelf(undefined, [read.raw]), 'again.yaml', whole.value);
      const { price, mass, ...part } = again.ok ? again.value.parts.get(id)! : ({} as never);
      const first = whole.value.parts.get(id)!;
      expect(price.amount, id).toBeCloseTo(first.price.amount, 9);
      expect(mass.value, id).toBeCloseTo(first.mass.value, 12);
      expect(Object.keys(part).sort(), id).toEqual(
        Object.keys(first)
          .filter((key) => key !== 'price' && key !== 'mass')
          .sort(),
      );
    }
  });
});
