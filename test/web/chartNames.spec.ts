import { describe, expect, it } from 'vitest';
import { atRest, openBench, TOP, turnTo } from './browser.ts';

const { visit } = openBench();

describe('names on the charts, as the browser letters them', () => {
  it.each([390, 1440])('hide one another nowhere and stay on the paper, %d px wide', async (width) => {
    const { page } = await visit('choice', { width });
    for (const sheet of ['lift', 'heat', 'flight', 'wind', 'shake', 'knocks']) {
      await turnTo(page, sheet);
      await atRest(page);
      const faults = () =>
        page.locator(`${TOP} svg.chart`).evaluateAll((charts) =>
          charts.flatMap((chart) => {
            const paper = chart.getBoundingClientRect();
            const texts = [...chart.querySelectorAll('text')].map((text) => ({
              says: text.textContent ?? '',
              box: text.getBoundingClientRect(),
            }));
            // A hair of the line box is empty.
            const hidden = texts.flatMap((a, i) =>
              texts
                .slice(0, i)
                .filter(
                  (b) =>
                    Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left) > 1 &&
                    Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top) > 4,
                )
                .map((b) => `${a.says} over ${b.says}`),
            );
            const cut = texts
              .filter(({ box }) => box.left < paper.left - 1 || box.right > paper.right + 1)
              .map(({ says }) => `${says} cut off`);
            return [...hidden, ...cut];
          }),
        );
      await expect.poll(faults, { message: sheet }).toEqual([]);
      await expect.poll(() => page.locator(`${TOP} svg.chart text`).count()).toBeGreaterThan(5);
    }
  });
});
