import { describe, expect, it } from 'vitest';
import { readBrief } from '../../src/build/read/readBuild.ts';
import { formatQuantity } from '../../src/units/formatQuantity.ts';
import { differencesOf } from '../../src/web/trial/differences.ts';
import { remediesOf } from '../../src/web/trial/remedies.ts';
import { openDesk } from '../../src/web/worker/openDesk.ts';
import { atRest, figure, openBench, pressEscape, saved, steady, turnTo } from './browser.ts';
import { anotherTab } from './launch.ts';

const { address, share, visit } = openBench();

/** For tests that take back what they change. */
const any = share();

const desk = openDesk();
const { brief, builds } = await desk.open();

describe('numbers as they are read elsewhere', () => {
  it('have decimal commas on a German machine, in and out, and points in files', async () => {
    const { page } = await visit('lift', { locale: 'de-DE' });
    await expect.poll(() => figure(page, 'thrust-to-weight').textContent()).toMatch(/^\d+,\d$/);
    await turnTo(page, 'brief');
    const air = page.getByRole('textbox', { name: 'air outside' });
    // Taken, it stands there as the page writes it.
    for (const typed of ['6,50', '6.50']) {
      await air.fill(typed);
      await air.press('Enter');
      await expect.poll(() => air.inputValue()).toBe('6,5');
    }
    await atRest(page);
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    const text = (await saved(page.getByRole('button', { name: 'save file of the brief' }))).toString();
    expect(text).toContain('6.5 degC');
    const read = readBrief(text, 'brief.yaml');
    expect(read.ok && read.value.site.temperature).toBeCloseTo(279.65, 9);
  });

  it('turn to ounces and miles an hour, by the factors of NIST SP 811', async () => {
    const { page } = await any('airframe');
    const { build } = builds[0]!;
    const view = await desk.assess(build, brief);
    if (!view.ok) throw new Error('the demo is worked out');
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    await page.getByRole('radio', { name: 'imperial' }).check();
    await pressEscape(page);
    const mass = view.assessment.measures.find(({ id }) => id === 'all-up-mass')!;
    await turnTo(page, mass.sheet);
    const told = () => figure(page, 'all-up-mass').textContent();
    await expect
      .poll(told)
      .toBe(formatQuantity(mass.value, 'mass', { band: mass.band, system: 'imperial' }).split('\u00a0')[0]);
    // 1 lb = 0.45359237 kg exactly (NIST SP 811, appendix B.8).
    expect(Number(await told())).toBeCloseTo(mass.value / 0.45359237, 1);
    await page.getByRole('button', { name: 'desk', exact: true }).click();
    await page.getByRole('radio', { name: 'metric' }).check();
    await pressEscape(page);
  });
});

describe('the round for newcomers', () => {
  it('goes through every step and ends, forth and back', async () => {
    const { page } = await any('choice');
    await page.getByRole('button', { name: /show me round/ }).click();
    const round = page.getByRole('region', { name: /^Round/ });
    const at = async (step: number) =>
      await page.getByRole('region', { name: `Round ${step} of 6` }).waitFor();
    await at(1);
    await round.getByRole('button', { name: 'next' }).click();
    await at(2);
    await round.getByRole('button', { name: 'back' }).click();
    await at(1);
    for (let step = 2; step <= 6; step++) {
      await round.getByRole('button', { name: 'next' }).click();
      await at(step);
    }
    // The sheet of the last step comes in a file of its own.
    await expect.poll(() => page.locator('[data-toured]').count()).toBe(1);
    await round.getByRole('button', { name: 'done' }).click();
    await round.waitFor({ state: 'detached' });
    await expect.poll(() => new URL(page.url()).hash).toBe('#airframe');
  });
});

describe('a file dropped on the page', () => {
  it('is taken in, and one that is none is refused in words', async () => {
    const { page } = await visit('choice');
    const drop = async (name: string, text: string) =>
      await page.evaluate(
        ([file, content]) => {
          const data = new DataTransfer();
          data.items.add(new File([content ?? ''], file ?? '', { type: 'application/yaml' }));
          window.dispatchEvent(
            new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }),
          );
        },
        [name, text],
      );
    await drop('brief.yaml', 'format: quadwright-brief-1\nname: Dropped\npurpose: race\n');
    await page.getByText(/the brief Dropped/).waitFor();
    await drop('bad.yaml', 'a: [');
    await page.getByText(/bad\.yaml:1/).waitFor();
  });
});

describe('freeing the motors', () => {
  it('lets one be moved by itself; the others stay', async () => {
    const { page } = await any('airframe');
    const places = () =>
      page
        .locator('.handle.round')
        .evaluateAll((all) =>
          all.map((each) => [each.getAttribute('aria-label'), (each as HTMLElement).style.left]),
        );
    await page.getByRole('button', { name: 'free the motors' }).click();
    const before = Object.fromEntries(await steady(page, places));
    const moved = page.getByRole('button', { name: /front right motor/ });
    await moved.focus();
    await page.keyboard.press('Shift+ArrowRight');
    await expect.poll(async () => Object.fromEntries(await places())).not.toEqual(before);
    const after = Object.fromEntries(await steady(page, places));
    const other = Object.keys(before).filter((name) => !name.startsWith('front right'));
    // The scale may follow the new width: what stays is measured against each other.
    const span = (at: Record<string, string>) => {
      const [a, b] = other.map((name) => Number.parseFloat(at[name] ?? ''));
      return Math.abs((a ?? 0) - (b ?? 0));
    };
    expect(Math.abs(span(after) - span(before))).toBeLessThan(12);
    expect(after).not.toEqual(before);
    await page.keyboard.press('Control+z');
    await expect.poll(async () => Object.fromEntries(await places())).toEqual(before);
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: 'free the motors' }).waitFor();
  });
});

describe('a tab that crashes in the middle of an edit', () => {
  it('gives the work back in the next one', async () => {
    const { page } = await visit('airframe');
    const slider = page.getByRole('slider', { name: /forward/ });
    const before = Number(await steady(page, () => slider.getAttribute('aria-valuenow')));
    await slider.focus();
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => slider.getAttribute('aria-valuenow')).toBe(String(before + 5));
    await page.getByText('kept in this browser').waitFor();
    const context = page.context();
    // The renderer is killed: no event of the page's own runs any more.
    const crashed = page.waitForEvent('crash');
    await page.goto('chrome://crash').catch(() => undefined);
    await crashed;
    const again = await anotherTab(context);
    await again.goto(`${address()}#airframe`);
    await expect
      .poll(() => again.getByRole('slider', { name: /forward/ }).getAttribute('aria-valuenow'))
      .toBe(String(before + 5));
  });
});

describe('comparing', () => {
  it('four side by side, by keyboard alone, then one cause at a time', async () => {
    const { page } = await any('choice');
    await page.getByRole('button', { name: 'desk', exact: true }).press('Enter');
    for (const name of ['Tystie, one-piece plate, 4S', 'Bonxie, true X, 6 mm arms']) {
      const compared = page.getByRole('checkbox', { name: `compare ${name}` });
      await compared.press('Space');
      await expect.poll(() => compared.isChecked()).toBe(false);
    }
    await pressEscape(page);
    await expect.poll(() => page.locator('.choice .drawing').count()).toBe(4);
    await page.getByRole('button', { name: /one cause at a time/ }).press('Enter');
    const lesson = page.getByRole('dialog', { name: 'One cause at a time' });
    await lesson.getByRole('combobox', { name: 'to' }).selectOption('mass');
    await lesson.getByText('Cause 1 of 1: mass only').waitFor();
    await expect.poll(() => lesson.locator('.lesson-picture').count()).toBe(2);
    // 50 g more and nothing else: heavier, shorter in the air, and the motors stand where they stood.
    const moved = await steady(page, () => lesson.locator('.try-shown .moved').allTextContents());
    expect(moved.some((line) => line.startsWith('all-up mass') || line.startsWith('minutes'))).toBe(true);
    expect(moved.some((line) => line.includes('motor-to-motor'))).toBe(false);
    await pressEscape(page, lesson);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await expect.poll(() => page.locator('.choice .drawing').count()).toBe(6);
  });
});

describe('what a change does', () => {
  it('does not call a finding mended and new that has only moved', async () => {
    const view = await desk.assess(builds[0]!.build, brief);
    if (!view.ok) throw new Error('the demo is worked out');
    const shifted = {
      ...view.assessment,
      findings: view.assessment.findings.map((finding) => ({ ...finding, place: { x: 1, y: 1, z: 0 } })),
    };
    const { gone, come } = differencesOf(view.assessment, shifted);
    expect([gone, come]).toEqual([[], []]);
    const fewer = { ...view.assessment, findings: view.assessment.findings.slice(1) };
    expect(differencesOf(view.assessment, fewer).gone).toHaveLength(1);
  });
});

describe('remedies to try', () => {
  it('change what their finding speaks of: power as radiated, screws of the list, arms', async () => {
    const { build } = builds.find(({ id }) => id === 'bonxie')!;
    const view = await desk.assess(build, brief);
    if (!view.ok) throw new Error('the demo is worked out');
    const { shelf } = await desk.open();
    const remedies = (id: string) => {
      const found = view.assessment.findings.find((finding) => finding.id === id);
      return found === undefined ? [] : remediesOf(found, build, view, shelf);
    };
    const [power] = remedies('video-power-legal');
    const less = power?.kind === 'change' ? await desk.assess(power.build, brief) : undefined;
    expect(less?.ok && less.assessment.findings.some(({ id }) => id === 'video-power-legal')).toBe(false);
    const [screws] = remedies('motor-screws-at-hand');
    expect(screws?.says).toBe('motor screws of 9 mm');
  });
});
