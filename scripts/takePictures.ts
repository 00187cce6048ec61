// Photographs the built page for docs/pictures: `npx vite build && npx tsx scripts/takePictures.ts`. By hand, when a sheet changes.
import { mkdirSync } from 'node:fs';
import { SHEETS } from '../src/web/state/sheetNames.ts';
import { launch, openPage, settled, workedOut } from '../test/web/browser.ts';
import { servePage } from '../test/web/servePage.ts';

const SHOTS = [
  ...SHEETS.map((sheet) => ({ sheet, width: 1440, theme: 'light' as const })),
  ...['choice', 'airframe', 'heat', 'picture', 'shake'].map((sheet) => ({
    sheet,
    width: 1440,
    theme: 'dark' as const,
  })),
  ...['choice', 'fit', 'brief', 'flight'].map((sheet) => ({ sheet, width: 390, theme: 'light' as const })),
  ...['airframe', 'lift', 'knocks'].map((sheet) => ({ sheet, width: 390, theme: 'dark' as const })),
];

async function main(): Promise<void> {
  mkdirSync('docs/pictures', { recursive: true });
  const [browser, server] = await Promise.all([launch(), servePage()]);
  for (const { sheet, width, theme } of SHOTS) {
    const { page } = await openPage(browser, { width, height: width < 500 ? 844 : 900, theme });
    await page.goto(`${server.address}#choice`);
    await settled(page);
    await workedOut(page);
    // The order waits for every build's full assessment.
    await page.waitForTimeout(6000);
    await workedOut(page);
    // By way of the first sheet, as a reader comes: the build that leads is the one that is open.
    await page.getByRole('tab', { name: sheet }).click();
    await page.waitForTimeout(200);
    await page.screenshot({ path: `docs/pictures/${sheet}-${width}-${theme}.png`, fullPage: true });
    await page.context().close();
  }
  await browser.close();
  server.close();
}

await main();
