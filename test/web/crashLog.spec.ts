import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readCrashNotes } from '../../src/build/read/readCrashLog.ts';
import { flightList } from '../../src/web/crashes/flightList.ts';
import { openBench, saved, turnTo } from './browser.ts';
import { anotherTab } from './launch.ts';

const { address, share, visit } = openBench();

/** A page without a log yet. */
const any = share();

const log = (page: Page) => page.getByRole('region', { name: 'your own crash log' });

async function enter(page: Page, label: string, text: string): Promise<void> {
  const field = log(page).getByRole('textbox', { name: label, exact: true });
  await field.fill(text);
  await field.press('Enter');
}

const judged = (page: Page) => log(page).getByText('Held against the forecast.', { exact: true }).waitFor();
const row = (page: Page, name: string) => log(page).getByRole('row', { name: new RegExp(`^${name}`) });

async function putAway(page: Page): Promise<void> {
  await log(page).getByRole('button', { name: 'put the log away' }).click();
  await row(page, 'crashes').waitFor({ state: 'detached' });
}

describe('a crash log of one’s own', () => {
  it('is held against the forecast, kept with the desk, and goes back with undo', async () => {
    const { page, complaints } = await visit('knocks');
    await enter(page, 'flights flown', '24');
    await enter(page, 'of them ended in a crash', '5, 2 11');
    await enter(page, 'spent on repairs', '41.50');
    await enter(page, 'arm, broken', '1');
    await judged(page);
    await row(page, 'crashes 3').waitFor();
    await row(page, 'repairs 41.50').waitFor();
    await row(page, 'arm, broken 1').waitFor();
    await log(page)
      .getByRole('img', { name: /Crashes over 24 flights: 3 by the log/ })
      .waitFor();
    await log(page)
      .getByText(/By this log you crash \d+\.\d times as often/)
      .waitFor();

    // The same log on the money sheet.
    await turnTo(page, 'money');
    await row(page, 'repairs 41.50').waitFor();

    await page.getByText('kept in this browser').waitFor();
    const again = await anotherTab(page.context());
    await page.close();
    await again.goto(`${address()}#knocks`);
    await row(again, 'crashes 3').waitFor();

    await enter(again, 'of them ended in a crash', '2, 5');
    await row(again, 'crashes 2').waitFor();
    await again.keyboard.press('Tab');
    await again.getByRole('button', { name: 'undo' }).click();
    await row(again, 'crashes 3').waitFor();
    expect(complaints).toEqual([]);
  });

  it('refuses what is no list of flights, and says what one looks like', async () => {
    const { page } = await any('knocks');
    await enter(page, 'flights flown', '10');
    await enter(page, 'of them ended in a crash', '4, 12');
    await log(page).getByText('numbers of flights from 1 to 10, like 2, 5, 11').waitFor();
    await enter(page, 'of them ended in a crash', '4');
    await judged(page);
    await row(page, 'crashes 1').waitFor();
    // Fewer flights than the last crash would leave it outside.
    await enter(page, 'flights flown', '3');
    await log(page).getByText('from 4 to 1000').waitFor();
    await putAway(page);
  });

  it('comes from the file that the command line reads, and goes into one', async () => {
    const { page } = await any('knocks');
    const chooser = log(page).getByLabel('crash log to take in');
    await chooser.setInputFiles({
      name: 'mine.yaml',
      mimeType: 'application/yaml',
      buffer: Buffer.from('flights: 30\ncrashedOn: [3, 9]\nmoney: 20.00 GBP\nbroken: { propeller: 4 }\n'),
    });
    await judged(page);
    await row(page, 'crashes 2').waitFor();
    await row(page, 'propeller, broken 4').waitFor();
    const file = await saved(log(page).getByRole('button', { name: 'save the log' }));
    const read = readCrashNotes(file.toString(), 'saved');
    expect(read.ok && read.value).toEqual({
      flights: 30,
      crashedOn: [3, 9],
      money: { amount: 20, currency: 'GBP' },
      broken: { propeller: 4 },
    });

    await chooser.setInputFiles({
      name: 'wrong.yaml',
      mimeType: 'application/yaml',
      buffer: Buffer.from('flights: many\n'),
    });
    await page.getByText('The log is not taken; nothing has changed by it:').waitFor();
    await row(page, 'crashes 2').waitFor();

    await putAway(page);
  });

  it('stands beside what meets an obstacle first', async () => {
    const { page } = await any('knocks');
    await page.getByText(/Ahead, propellers apart, the .+ furthest, by/).waitFor();
  });
});

describe('flights as they are written', () => {
  it('rise and stand once each', () => expect(flightList(' 5, 2;11 5 ', 11)).toEqual([2, 5, 11]));
  it('may be none', () => expect(flightList(' ', 11)).toEqual([]));
  it.each(['0', '12', '2.5', 'two', '3,x'])('are not %s', (text) =>
    expect(flightList(text, 11)).toBeUndefined(),
  );
});
