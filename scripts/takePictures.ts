// Photographs the built page for docs/pictures: `npx vite build && npx tsx scripts/takePictures.ts`. By hand, when a sheet changes.
// Then a third of the size: `mogrify -strip +dither -colors 255 -format png -define png:format=png8 docs/pictures/*.png`.
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
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

/** A page where the first sheet stands as it is once all is worked out, and how sure the order is has been drawn. */
async function pageOf(browser: Browser, address: string, width: number, theme: Shot['theme']): Promise<Page> {
  const { page } = await openPage(browser, { width, height: width < 500 ? 844 : 900, theme });
  await page.goto(`${address}#choice`);
  await settled(page);
  await workedOut(page);
  await page.getByText('give or take').waitFor();
  return page;
}

async function take(page: Page, { sheet, width, theme, round, named }: Shot): Promise<void> {
  // By way of the first sheet, as a reader comes: the build that leads is the one that is open.
  await page.getByRole('tab', { name: sheet }).click();
  const overlays = async () => {
    for (const name of round ?? []) await page.getByRole('checkbox', { name }).click();
  };
  if (round) {
    await page.getByRole('button', { name: 'in the round' }).click();
    await overlays();
  }
  await workedOut(page);
  // The shake sheet's frame stands first on it, and in the round too the first picture takes a moment.
  const inTheRound = round !== undefined || sheet === 'shake' || sheet === 'knocks';
  if (inTheRound) await page.locator('[data-round=ready]:visible').first().waitFor();
  await page.waitForTimeout(inTheRound ? 900 : 400);
  await page.screenshot({ path: `docs/pictures/${named ?? sheet}-${width}-${theme}.png`, fullPage: true });
  if (round) {
    await overlays();
    await page.getByRole('button', { name: 'plan and side' }).click();
  }
}

async function main(): Promise<void> {
  mkdirSync('docs/pictures', { recursive: true });
  const [browser, server] = await Promise.all([launch(), servePage()]);
  for (const width of [1440, 390])
    for (const theme of ['light', 'dark'] as const) {
      const page = await pageOf(browser, server.address, width, theme);
      for (const shot of SHOTS) if (shot.width === width && shot.theme === theme) await take(page, shot);
      await page.context().close();
    }
  await browser.close();
  server.close();
}

await main();
