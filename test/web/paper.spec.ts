import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atRest, expectNoSidewaysScroll, openBench, TOP, turnTo } from './browser.ts';

const { visit } = openBench();

/** Ten degrees of frost, in which the round cells of the demo give out at full throttle: told in words, not volts. */
const cold = {
  name: 'cold.yaml',
  mimeType: 'application/yaml',
  buffer: Buffer.from(
    readFileSync('demo/cruiser/brief.yaml', 'utf8').replace('temperature: 11 degC', 'temperature: -10 degC'),
  ),
};

describe('a sheet of paper', () => {
  it.each([390, 1440])('holds words that stand in the place of a figure, %i wide', async (width) => {
    const { page } = await visit('choice', { width });
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    await page.getByLabel('files to take in').setInputFiles('demo/cruiser/curlew-li-ion.yaml');
    await page.getByText('On the desk now').waitFor();
    await page.getByLabel('files to take in').setInputFiles(cold);
    await page.getByText('On the desk now: the brief').waitFor();
    await page.keyboard.press('Escape');
    await atRest(page);
    await expectNoSidewaysScroll(page, 'html', 'choice');
    await turnTo(page, 'heat');
    await page.locator(`${TOP} .figure-cell.words`).first().waitFor();
    await expectNoSidewaysScroll(page, 'html', 'heat');
  });

  it('is printed as it stands on the screen, smaller, with its name at the head', async () => {
    const { page } = await visit('fit');
    const tied = () =>
      page.evaluate((top) => {
        const box = (selector: string) => document.querySelector(selector)?.getBoundingClientRect();
        const [paper, spot] = [box(`${top} .stage-drawing`), box('.leaders .note circle')];
        return paper && spot
          ? [(spot.x - paper.x) / paper.width, (spot.y - paper.y) / paper.height].map((x) => x.toFixed(2))
          : [];
      }, TOP);
    const onScreen = await tied();
    expect(onScreen).toHaveLength(2);
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    await page.emulateMedia({ media: 'print' });
    expect(await tied()).toEqual(onScreen);
    // A4 on its side between margins of 8 mm, at the 96 pixels an inch of CSS.
    const sheet = await page.locator('.sheet').boundingBox();
    expect(sheet?.width).toBeLessThanOrEqual(((297 - 16) / 25.4) * 96);
    const name = await page.getByRole('heading', { name: /: fit$/ }).boundingBox();
    expect(name?.height).toBeGreaterThan(20);
    expect(await page.getByRole('tab').first().isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
    expect(await tied()).toEqual(onScreen);
  });
});
