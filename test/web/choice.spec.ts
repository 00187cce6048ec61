import { describe, expect, it } from 'vitest';
import { openBench } from './browser.ts';

const { address, open, visit } = openBench();

describe('the first answer', () => {
  it('says that it is one until every build is worked out in full, in a place that it does not grow', async () => {
    const { page } = await open();
    await page.goto(`${address()}#choice`);
    const line = page.locator('.sureness');
    await line.filter({ hasText: 'This is a first answer' }).waitFor();
    await page.getByRole('progressbar', { name: 'worked out in full' }).waitFor();
    const place = () => page.locator('.verdict-columns').evaluate((each) => each.getBoundingClientRect().top);
    const before = await place();
    await line.filter({ hasNotText: 'This is a first answer' }).waitFor();
    await expect.poll(place).toBe(before);
  });
});

describe('the choice sheet', () => {
  it('tells in how many draws each comes first, and on which scale each want counts', async () => {
    const { page, complaints } = await visit();
    const sure = page.locator('.sureness', { hasText: 'is first in' });
    await sure.waitFor();
    const shares = () => sure.locator('b').allTextContents();
    await expect
      .poll(async () =>
        Math.abs((await shares()).reduce((sum, text) => sum + Number.parseInt(text, 10), -100)),
      )
      .toBeLessThanOrEqual(3);
    const before = (await shares()).join();
    const weights = page.getByRole('region', { name: 'What counts, and how much' });
    await weights.getByText('in full from 8 min, nothing at 2 min').waitFor();
    // Another weight counts the same draws anew.
    await weights.getByRole('slider', { name: 'minutes flown' }).press('Home');
    await expect.poll(async () => (await shares()).join()).not.toBe(before);
    expect(complaints).toEqual([]);
  });
});
