import { type Browser, chromium, type Page } from 'playwright-core';

export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-quic',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--no-first-run',
    ],
  });

/** A page that keeps a list of everything that went wrong on it and every address it asked for. */
export interface WatchedPage {
  readonly page: Page;
  readonly complaints: string[];
  readonly requests: string[];
}

interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
}

export async function openPage(browser: Browser, { width = 1440, height = 900, theme = 'light' }: Look = {}) {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: theme,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
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

/** Waits until every build asked about has been answered. */
export async function settled(page: Page): Promise<void> {
  await page.locator('[data-waiting="0"]').waitFor();
}

/** Waits until every part of the open build's full assessment has arrived. */
export async function workedOut(page: Page): Promise<void> {
  await page.locator('[data-behind="0"]').waitFor();
}
