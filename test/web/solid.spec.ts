/// <reference path="../report/gltfValidator.d.ts" />
import { validateBytes } from 'gltf-validator';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  choose,
  drawn,
  expectNoFaults,
  expectNoSidewaysScroll,
  light,
  openBench,
  otherLight,
  placeOf,
  saved,
  steady,
  TOP,
  turnTo,
} from './browser.ts';

const { address, open, share, visit } = openBench();

/** For tests that look at the airframe in the round: each finds it as it first comes. */
const any = share();

/** From the plan to the round, which comes seen from where it is first seen, with what lies over it first. */
async function inTheRound(visited = any('airframe')): Promise<Page> {
  const { page } = await visited;
  await page.getByRole('button', { name: 'plan and side' }).click();
  await page.locator('.stage-drawing').waitFor();
  await page.getByRole('button', { name: 'in the round' }).click();
  await round(page).waitFor();
  await drawn(page);
  return page;
}

/** One of the trade's views, turned to and drawn: what is pressed is found by the picture last drawn. */
async function turnRoundTo(page: Page, view: string): Promise<void> {
  await page.getByRole('button', { name: view, exact: true }).click();
  await expect.poll(() => round(page).getAttribute('data-view')).toBe(view);
  await drawn(page);
}

/** The frame that rings is drawn when it first comes into the window. */
async function intoView(page: Page): Promise<void> {
  const seen = async () => {
    await page.locator('.mode-round').scrollIntoViewIfNeeded();
    return await round(page).count();
  };
  await expect.poll(seen).toBe(1);
}

const round = (page: Page) => page.locator('.round-window[data-round=ready]');

/** How much of the window is drawn on, marks left out: pixels clearly darker than the paper, over all of them. */
async function inked(page: Page): Promise<number> {
  await page.locator('.round-marks').evaluate((svg) => svg.setAttribute('visibility', 'hidden'));
  const shot = (await round(page).screenshot()).toString('base64');
  return await page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    const context = canvas.getContext('2d')!;
    context.drawImage(image, 0, 0);
    const { data: pixels } = context.getImageData(0, 0, canvas.width, canvas.height);
    let drawn = 0;
    for (let i = 0; i < pixels.length; i += 4)
      if (pixels[i]! + pixels[i + 1]! + pixels[i + 2]! < 600) drawn++;
    return drawn / (pixels.length / 4);
  }, shot);
}

const marks = (page: Page): Promise<string> => page.locator('.round-marks').innerHTML();

const savedBy = (page: Page, button: RegExp): Promise<Buffer> =>
  saved(page.getByRole('button', { name: button }).first());

describe('the airframe in the round', () => {
  it('comes when first asked for, from our own files, and draws', async () => {
    const { page, requests, complaints } = await visit('airframe');
    const before = requests.length;
    expect(requests.some((url) => url.includes('airframe3d'))).toBe(false);
    await page.getByRole('button', { name: 'in the round' }).click();
    await round(page).waitFor();
    const after = requests.slice(before);
    expect(after.some((url) => url.includes('airframe3d'))).toBe(true);
    expect(after.filter((url) => !url.startsWith(address()))).toEqual([]);
    await expect.poll(() => inked(page)).toBeGreaterThan(0.02);
    expect(complaints).toEqual([]);
  });

  it('shows the length and width that the plan has, and tells its scale when seen square on', async () => {
    const page = await inTheRound();
    await expect.poll(() => marks(page)).toContain('centre of gravity');
    await expect.poll(() => marks(page)).toMatch(/\d+(\s|&nbsp;)mm/);
    await turnRoundTo(page, 'plan');
    await expect.poll(() => page.locator('.title-block, footer').first().textContent()).toMatch(/1 : \d/);
  });

  it('turns by the keys, and comes back', async () => {
    const page = await inTheRound();
    const start = await steady(page, () => marks(page));
    await round(page).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => marks(page)).not.toBe(start);
    await expect.poll(() => round(page).getAttribute('data-view')).toBe('free');
    const turned = await steady(page, () => marks(page));
    await page.keyboard.press('+');
    await expect.poll(() => marks(page)).not.toBe(turned);
    await page.keyboard.press('0');
    await expect.poll(() => marks(page)).toBe(start);
  });

  it('turns by dragging', async () => {
    const page = await inTheRound();
    const start = await steady(page, () => marks(page));
    const box = await placeOf(round(page));
    await page.mouse.move(box.x + 200, box.y + 200);
    await page.mouse.down();
    await page.mouse.move(box.x + 280, box.y + 230, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => marks(page)).not.toBe(start);
  });

  it('picks in the schedule what is pressed in the round, and the other way about', async () => {
    const page = await inTheRound(visit('airframe'));
    await turnRoundTo(page, 'plan');
    const box = await placeOf(round(page));
    // Seen from above the pack lies a little behind the middle.
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2 + 20);
    await page.locator('[data-slot=pack][data-picked=true]').waitFor();
    await expect.poll(() => marks(page)).toContain('>pack<');
    await page.getByRole('combobox', { name: 'motors', exact: true }).focus();
    await page.locator('[data-slot=motors][data-picked=true]').waitFor();
    await expect.poll(() => marks(page)).toMatch(/>\w+ \w+ motor</);
    await page.getByRole('button', { name: 'plan and side' }).click();
    await page.locator('.board[data-picked=motors]').waitFor();
    await page.locator('.handle[data-part=pack]').click();
    await page.locator('[data-slot=pack][data-picked=true]').waitFor();
  });

  it('switches what lies over it, and shows the stress of a hit with its numbers', async () => {
    const page = await inTheRound();
    await expect.poll(() => marks(page)).toMatch(/\d(\s|&nbsp;)mm/);
    await page.getByRole('checkbox', { name: 'dimensions' }).uncheck();
    await expect.poll(() => marks(page)).not.toMatch(/\d(\s|&nbsp;)mm/);
    await page.getByRole('checkbox', { name: 'slipstreams' }).check();
    await page.getByRole('checkbox', { name: 'loads of a hit' }).check();
    await page.getByRole('list', { name: /stress along the arm/ }).waitFor();
    await expect.poll(() => page.locator('.round-legend li').count()).toBe(5);
    const stresses = async () => (await marks(page)).match(/\d+(\s|&nbsp;)MPa/g)?.length;
    await expect.poll(stresses).toBeGreaterThan(3);
    const loads = () => page.locator('.round-loads').textContent();
    const side = await steady(page, loads);
    await page.getByRole('combobox', { name: 'struck' }).selectOption('flat');
    await expect.poll(loads).not.toBe(side);
  });

  it('follows a part that is changed', async () => {
    const page = await inTheRound();
    const start = await steady(page, () => marks(page));
    await choose(page, 'layout', /^dead cat/);
    await expect.poll(() => marks(page)).not.toBe(start);
    await page.keyboard.press('Control+z');
    await expect.poll(() => marks(page)).toBe(start);
  });

  it('says it in words where there is no WebGL, and leaves the plan at hand', async () => {
    const { page, complaints } = await visit('airframe', {}, async (fresh) => {
      await fresh.addInitScript(() => {
        const own = HTMLCanvasElement.prototype.getContext;
        HTMLCanvasElement.prototype.getContext = function (
          this: HTMLCanvasElement,
          kind: string,
          ...rest: never[]
        ) {
          return kind.startsWith('webgl') ? null : Reflect.apply(own, this, [kind, ...rest]);
        } as typeof own;
      });
    });
    await page.getByRole('button', { name: 'in the round' }).click();
    await expect
      .poll(() => page.locator('.round-absent').textContent())
      .toMatch(/no WebGL.*\d+\smm long.*pack/s);
    await page.getByRole('button', { name: 'plan and side' }).click();
    await page.locator('.stage-drawing').waitFor();
    expect(complaints).toEqual([]);
  });
});

describe('what is saved', () => {
  it('is a glTF file that the standard passes', async () => {
    const page = await inTheRound();
    const { issues } = await validateBytes(new Uint8Array(await savedBy(page, /save glTF/)));
    expect(issues.messages.filter(({ severity }) => severity <= 1)).toEqual([]);
  });

  it('is a picture of the round, of the plan, and the plan as SVG', async () => {
    const page = await inTheRound();
    // The first eight bytes of a PNG (ISO/IEC 15948, 5.2), then width and height in the header chunk.
    const isPng = (bytes: Buffer): void => {
      expect([...bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
      expect(bytes.readUInt32BE(16)).toBeGreaterThan(400);
      expect(bytes.length).toBeGreaterThan(10_000);
    };
    isPng(await savedBy(page, /save PNG of the view in the round/));
    await page.getByRole('button', { name: 'plan and side' }).click();
    isPng(await savedBy(page, /save PNG of the plan/));
    const svg = (await savedBy(page, /save SVG of the plan/)).toString();
    const faults = await page.evaluate(
      (text) => new DOMParser().parseFromString(text, 'image/svg+xml').querySelectorAll('parsererror').length,
      svg,
    );
    expect(faults).toBe(0);
    expect(svg.match(/class="ink-disc"/g)).toHaveLength(4);
  });

  it('is an SVG of every figure of a subject', async () => {
    const { page } = await any('flight');
    const buttons = page.locator(`${TOP} .figure h3 button`);
    const count = await steady(page, () => buttons.count());
    expect(count).toBeGreaterThan(1);
    for (let i = 0; i < count; i++)
      expect((await saved(buttons.nth(i))).toString()).toMatch(/^<svg xmlns[\s\S]+<\/svg>$/);
  });
});

describe('how it rings', () => {
  it('stands still for who asked for less movement, and says how much larger than life it is', async () => {
    const { page } = await any('shake');
    await intoView(page);
    const says = () => page.locator('.mode-round .figure-says').textContent();
    await expect.poll(says).toMatch(/Drawn x [\d,]+, slowed 1 : [\d,]+/);
    const play = page.getByRole('button', { name: 'let it swing' });
    await expect.poll(() => play.getAttribute('aria-pressed')).toBe('false');
    await play.click();
    await page.getByRole('button', { name: 'hold still' }).click();
    const before = await steady(page, says);
    const modes = page.getByRole('combobox', { name: 'mode' });
    await expect.poll(() => modes.locator('option').first().textContent()).toMatch(/\d+\sHz \(\d+ to \d+\)/);
    await modes.selectOption({ index: 7 });
    await expect.poll(says).not.toBe(before);
  });
});

// One comes up on paper and one as a blueprint, by the machine's own setting.
for (const [width, theme] of [
  [390, 'dark'],
  [1440, 'light'],
] as const)
  it(`has no accessibility fault and fits, on paper and as a blueprint, ${width} px`, async () => {
    const page = await inTheRound(visit('airframe', { theme, width }));
    const faultless = async (where: string) => {
      for (let lights = 0; lights < 2; lights++) {
        const told = `${where}, ${await light(page)}`;
        await expectNoFaults(page, told);
        await expectNoSidewaysScroll(page, 'html', told);
        await otherLight(page);
      }
    };
    await page.getByRole('checkbox', { name: 'loads of a hit' }).check();
    await page.getByRole('list', { name: /stress along the arm/ }).waitFor();
    await faultless('airframe');
    await turnTo(page, 'shake');
    await intoView(page);
    await faultless('shake');
  });

describe('when the view in the round can not be had', () => {
  it('says so while the browser holds its drawing context back, and draws again after', async () => {
    const page = await inTheRound(visit('airframe'));
    await expect.poll(() => inked(page)).toBeGreaterThan(0.01);
    const before = await steady(page, () => inked(page));
    await page.locator('.round-canvas').evaluate((canvas: HTMLCanvasElement) => {
      const hold = canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!;
      Object.assign(window, { hold });
      hold.loseContext();
    });
    const told = page.getByText('The browser has taken the view in the round away');
    await told.waitFor();
    await page.evaluate(() => (window as unknown as { hold: WEBGL_lose_context }).hold.restoreContext());
    await told.waitFor({ state: 'detached' });
    await expect.poll(() => inked(page)).toBeCloseTo(before, 2);
  });

  it.each(['airframe3d', 'rounds', 'solidsOf'])(
    'says so when %s does not come, and the sheet stands',
    async (piece) => {
      const { page } = await open();
      await page.context().route(new RegExp(`/${piece}-`), (route) => route.abort());
      await page.goto(`${address()}#airframe`);
      await page.getByRole('button', { name: 'in the round' }).click();
      await page.getByRole('alert').filter({ hasText: 'could not be fetched' }).waitFor();
      await expect.poll(() => page.getByText('Being put together').count()).toBe(0);
      await expect.poll(() => page.getByRole('tab').count()).toBeGreaterThan(5);
    },
  );
});
