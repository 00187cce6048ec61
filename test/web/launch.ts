import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { PATIENCE } from './patience.ts';

/** So many times slower than the machine is, to find what only works on a fast one: QUADWRIGHT_THROTTLE=4. */
const SLOWER = Number(process.env.QUADWRIGHT_THROTTLE ?? 1);

/** A page that keeps a list of everything that went wrong on it and every address it asked for. */
export interface WatchedPage {
  readonly page: Page;
  readonly complaints: string[];
  readonly requests: string[];
}

export interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
  readonly locale?: string;
}

export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: '/usr/bin/chromium',
    timeout: PATIENCE,
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });

export async function openPage(
  browser: Browser,
  { width = 1440, height = 900, theme = 'light', locale = 'en-US' }: Look = {},
): Promise<WatchedPage> {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: theme,
    reducedMotion: 'reduce',
    locale,
  });
  context.setDefaultTimeout(PATIENCE);
  const page = await anotherTab(context);
  const watched: WatchedPage = { page, complaints: [], requests: [] };
  page.on('console', (message) => {
    // Without a graphics card the browser remarks on its own copying of pixels.
    if (message.text().includes('GPU stall due to ReadPixels')) return;
    if (message.type() === 'error' || message.type() === 'warning') watched.complaints.push(message.text());
  });
  page.on('pageerror', (error) => watched.complaints.push(error.message));
  page.on('request', (request) => watched.requests.push(request.url()));
  return watched;
}

/** A further tab of the same browser, with the same memory. */
export async function anotherTab(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  if (SLOWER > 1) {
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  }
  return page;
}

/** Waits until every build asked about has been answered. */
export async function settled(page: Page): Promise<void> {
  await page.locator('[data-waiting="0"]').waitFor();
}

/** Waits until every part of the open build's full assessment has arrived. */
export async function workedOut(page: Page): Promise<void> {
  await page.locator('[data-behind="0"]').waitFor();
}
