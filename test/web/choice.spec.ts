import { describe, expect, it } from 'vitest';
import { openBench } from './browser.ts';

const { visit } = openBench();

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
