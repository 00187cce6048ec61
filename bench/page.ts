import { loadavg } from 'node:os';
import { resolve } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { servePage } from '../test/web/servePage.ts';
import { scriptOfTasks } from './trace/scriptOfTasks.ts';

/**
 * What issue 5 asks of the built page, in Debian's Chromium: from a step of a slider to numbers and drawing on the
 * screen under 50 ms (95th percentile); no task of the main thread over 16 ms of script while it is dragged; largest
 * contentful paint under 1.5 s with the processor slowed four times. The best of several rounds stands beside the
 * middle one, since others may use the machine.
 */
const ROUNDS = 3;
const STEPS = 60;

const server = await servePage(resolve('dist/web'));
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-background-networking', '--no-first-run'],
});
console.log(`load average ${loadavg()[0]?.toFixed(1)}`);
const answers: number[] = [];
const drags: number[] = [];
const paints: number[] = [];
const paces: number[] = [];
for (let round = 0; round < ROUNDS; round++) {
  paints.push(await largestPaint());
  const page = await openSheet('airframe');
  answers.push(await sliderToNumbers(page));
  drags.push(await longestScript(browser, page));
  paces.push(await slowedBy(page));
  await page.context().close();
}
await browser.close();
server.close();
row('slider to numbers and drawing, 95th percentile', answers, 50);
row('most script in one task during a drag', drags, 16);
row('largest contentful paint, processor slowed 4 times', paints, 1500);
console.log(
  `a fixed piece of work took up to ${Math.min(...paces).toFixed(1)} to ${Math.max(...paces).toFixed(1)} times its best: on a quiet machine, 1.1`,
);

function row(what: string, values: readonly number[], aim: number): void {
  const sorted = values.toSorted((a, b) => a - b);
  const told = (value: number | undefined) => `${value?.toFixed(1)} ms`.padStart(10);
  console.log(
    `${what.padEnd(52)} best ${told(sorted[0])}   middle ${told(sorted[sorted.length >> 1])}   aim under ${aim} ms`,
  );
}

async function openSheet(sheet: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`${server.address}#${sheet}`);
  await page.locator('[data-waiting="0"][data-behind="0"]').waitFor({ timeout: 120_000 });
  // The other builds' full assessments go on in the second worker: the user does not wait for them, nor do we.
  await page.getByRole('slider', { name: /forward/ }).waitFor();
  return page;
}

/** Keys pressed on a slider; each timed from its event to the frame after everything asked was answered [ms]. */
async function sliderToNumbers(page: Page): Promise<number> {
  await page.getByRole('slider', { name: /forward/ }).focus();
  await page.evaluate(() => {
    const sheet = document.querySelector('[data-waiting]');
    const times: number[] = [];
    let pressed = 0;
    document.addEventListener(
      'keydown',
      (event) => {
        pressed = event.timeStamp;
      },
      true,
    );
    new MutationObserver(() => {
      const start = pressed;
      if (start === 0 || sheet?.getAttribute('data-waiting') !== '0') return;
      pressed = 0;
      // Two turns: the callback of the next frame, and the task after it has been drawn.
      requestAnimationFrame(() => {
        const after = new MessageChannel();
        after.port1.onmessage = () => times.push(performance.now() - start);
        after.port2.postMessage(0);
      });
    }).observe(sheet ?? document, { attributes: true, attributeFilter: ['data-waiting'] });
    Object.assign(window, { times });
  });
  for (let step = 0; step < STEPS; step++) {
    await page.keyboard.press(step < STEPS / 2 ? 'ArrowRight' : 'ArrowLeft');
    await page.waitForFunction(
      (count) => (window as unknown as { times: number[] }).times.length > count,
      step,
    );
  }
  const times = await page.evaluate(() => (window as unknown as { times: number[] }).times);
  return times.toSorted((a, b) => a - b)[Math.ceil(0.95 * times.length) - 1] ?? Number.NaN;
}

/** The pack dragged to and fro in the plan, traced; the task with the most script in it [ms]. */
async function longestScript(traced: Browser, page: Page): Promise<number> {
  const box = await page.getByRole('button', { name: /^pack, to move/ }).boundingBox();
  if (box === null) throw new Error('no pack to drag');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await traced.startTracing(page, { categories: ['devtools.timeline', 'toplevel', '__metadata'] });
  await page.mouse.down();
  for (let step = 1; step <= STEPS; step++) {
    await page.mouse.move(x, y + 30 * Math.sin(step / 5));
    await page.waitForTimeout(16);
  }
  await page.mouse.up();
  await page.locator('[data-waiting="0"]').waitFor();
  const trace = await traced.stopTracing();
  return Math.max(...scriptOfTasks(JSON.parse(trace.toString())));
}

async function largestPaint(): Promise<number> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.goto(server.address);
  await page.locator('[data-waiting="0"]').waitFor({ timeout: 120_000 });
  await page.waitForTimeout(500);
  const paint = await page.evaluate(
    () =>
      new Promise<number>((done) => {
        new PerformanceObserver((list) => done(list.getEntries().at(-1)?.startTime ?? Number.NaN)).observe({
          type: 'largest-contentful-paint',
          buffered: true,
        });
      }),
  );
  await page.close();
  return paint;
}

/** How much slower than at its best a fixed piece of work runs here and now: others at the machine stretch all above. */
async function slowedBy(page: Page): Promise<number> {
  const times = await page.evaluate(() =>
    Array.from({ length: 60 }, () => {
      const start = performance.now();
      let sum = 0;
      for (let i = 1; i < 1_000_000; i++) sum += Math.sqrt(i);
      return sum > 0 ? performance.now() - start : 0;
    }),
  );
  const sorted = times.toSorted((a, b) => a - b);
  return (sorted[57] ?? 1) / (sorted[0] ?? 1);
}
