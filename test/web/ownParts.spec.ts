import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { ontoShelf } from '../../src/build/lists/ontoShelf.ts';
import { readShelf } from '../../src/build/read/readShelf.ts';
import { PART_KINDS } from '../../src/build/schema/partKinds.ts';
import { openDesk } from '../../src/web/worker/openDesk.ts';
import { draftPart, ownParts } from '../../src/web/worker/ownParts.ts';
import { openBench, saved } from './browser.ts';

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
    await tell(page, 'price', '19,90 GBP');
    await tell(page, 'mass', '31,5');
    await tell(page, 'stator', '2306');
    await tell(page, 'speed constant', '99000');
    await form.getByText(/at most 40000\srpm\/V/).waitFor();
    await tell(page, 'speed constant', '1750');
    // The law of docs/method/drive.md gives a winding for the stator; the page must say that it is not the maker's.
    await form.getByText('winding resistance').waitFor();
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
      .getByText(/is missing/)
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

describe('the fields of a part', () => {
  const desk = openDesk();

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
