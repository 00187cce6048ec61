import { describe, expect, it } from 'vitest';
import { openBench } from './browser.ts';

const { share } = openBench();

interface Frame {
  readonly first: boolean;
  readonly bar: boolean;
  readonly height: number;
}
interface SeenWindow {
  seen: Frame[];
}

/** Every frame is kept from the start on: the first answer may be gone before a test can ask for it. */
const keepFrames = () => {
  const seen: Frame[] = [];
  (window as unknown as SeenWindow).seen = seen;
  const look = () => {
    const line = document.querySelector('.sureness');
    const below = document.querySelector('.verdict-columns');
    if (line && below)
      seen.push({
        first: line.textContent.includes('This is a first answer'),
        bar: line.querySelector('progress[aria-label="worked out in full"]') !== null,
        height: below.getBoundingClientRect().top - line.getBoundingClientRect().top,
      });
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
};

const watched = share({}, async (page) => {
  await page.addInitScript(keepFrames);
});

describe('the first answer', () => {
  it('says that it is one until every build is worked out in full, in a place that does not grow', async () => {
    const { page } = await watched();
    await page.locator('.sureness', { hasText: 'is first in' }).waitFor();
    const seen = await page.evaluate(() => (window as unknown as SeenWindow).seen);
    const early = seen.filter(({ first }) => first);
    expect(early.length).toBeGreaterThan(0);
    expect(early.every(({ bar }) => bar)).toBe(true);
    expect(seen.findLastIndex(({ first }) => first)).toBeLessThan(seen.findIndex(({ first }) => !first));
    const heights = seen.map(({ height }) => height);
    expect(Math.max(...heights) - Math.min(...heights)).toBeLessThan(1);
  });
});

describe('the choice sheet', () => {
  it('tells in how many draws each comes first, and on which scale each want counts', async () => {
    const { page, complaints } = await watched();
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
