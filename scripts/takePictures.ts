// Photographs the built page for docs/pictures: `npx vite build && npx tsx scripts/takePictures.ts`. By hand, when a sheet changes.
import { mkdirSync } from 'node:fs';
import { SHEETS } from '../src/web/state/sheetNames.ts';
import { launch, openPage, settled, workedOut } from '../test/web/launch.ts';
import { servePage } from '../test/web/servePage.ts';

interface Shot {
  readonly sheet: string;
  readonly width: number;
  readonly theme: 'light' | 'dark';
  /** The airframe in the round, with these overlays switched over. */
  readonly round?: readonly string[];
  /** Part of the file's name. */
  readonly named?: string;
}

const SHOTS: readonly Shot[] = [
  ...SHEETS.map((sheet) => ({ sheet, width: 1440, theme: 'light' as const })),
  ...['choice', 'airframe', 'heat', 'picture', 'shake'].map((sheet) => ({
    sheet,
    width: 1440,
    theme: 'dark' as const,
  })),
  ...['choice', 'fit', 'brief', 'flight'].map((sheet) => ({ sheet, width: 390, theme: 'light' as const })),
  ...['airframe', 'lift', 'knocks'].map((sheet) => ({ sheet, width: 390, theme: 'dark' as const })),
  ...[1440, 390].flatMap((width) =>
    (['light', 'dark'] as const).map(
      (theme): Shot => ({ sheet: 'airframe', width, theme, round: [], named: 'round' }),
    ),
  ),
  {
    sheet: 'airframe',
    width: 1440,
    theme: 'light',
    round: ['centre of gravity', 'dimensions', 'loads of a hit'],
    named: 'loads',
  },
  { sheet: 'airframe', width: 1440, theme: 'dark', round: ['slipstreams'], named: 'slipstreams' },
];

async function main(): Promise<void> {
  mkdirSync('docs/pictures', { recursive: true });
  const [browser, server] = await Promise.all([launch(), servePage()]);
  for (const { sheet, width, theme, round, named } of SHOTS) {
    const { page } = await openPage(browser, { width, height: width < 500 ? 844 : 900, theme });
    await page.goto(`${server.address}#choice`);
    await settled(page);
    await workedOut(page);
    // The order waits for every build's full assessment.
    await page.waitForTimeout(6000);
    await workedOut(page);
    // By way of the first sheet, as a reader comes: the build that leads is the one that is open.
    await page.getByRole('tab', { name: sheet }).click();
    if (round) {
      await page.getByRole('button', { name: 'in the round' }).click();
      for (const name of round) await page.getByRole('checkbox', { name }).click();
    }
    // The shake sheet's frame stands first on it, and in the round too the first picture takes a moment.
    if (round || sheet === 'shake') await page.locator('[data-round=ready]:visible').first().waitFor();
    await page.waitForTimeout(round || sheet === 'shake' ? 900 : 200);
    await page.screenshot({ path: `docs/pictures/${named ?? sheet}-${width}-${theme}.png`, fullPage: true });
    await page.context().close();
  }
  await browser.close();
  server.close();
}

await main();
