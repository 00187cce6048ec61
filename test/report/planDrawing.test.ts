import { DOMParser } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { planDrawing, planExtent } from '../../src/report/planDrawing.ts';
import { reworded } from '../../src/report/reworded.ts';
import { sideDrawing } from '../../src/report/sideDrawing.ts';
import { writeSvg } from '../../src/report/writeSvg.ts';
import { restate } from '../../src/units/restate.ts';
import { samplePicture } from './samplePicture.ts';

const plan = planDrawing(samplePicture, { pen: 0.5, detail: 'full' });
const svg = (text: string) => new DOMParser().parseFromString(text, 'image/svg+xml');

describe('planDrawing', () => {
  it('is to scale: discs stand where the motors are, nose up the sheet', () => {
    const drawn = [...svg(writeSvg(plan)).querySelectorAll('circle.ink-disc')].map((disc) => ({
      x: Number(disc.getAttribute('cx')),
      y: Number(disc.getAttribute('cy')),
      r: Number(disc.getAttribute('r')),
    }));
    expect(drawn).toEqual(
      samplePicture.rotors.map((rotor) => ({ x: rotor.at.y * 1000, y: rotor.at.x * -1000, r: 64.8 })),
    );
  });

  it('dimensions both pairs of a dead cat and the length between them', () => {
    const words = [...svg(writeSvg(plan)).querySelectorAll('.hand-dimension')].map((t) => t.textContent);
    expect(words).toEqual(expect.arrayContaining(['200\u00a0mm', '160\u00a0mm']));
    expect(words.filter((word) => word === '160\u00a0mm')).toHaveLength(2);
    expect(words).toContain('\u00d8 130\u00a0mm');
  });

  it('is said in inches, its bar a whole number of them, and drawn no other than before', () => {
    const options = { pen: 0.5, detail: 'full', system: 'imperial' } as const;
    const told = reworded(planDrawing(samplePicture, options), (text) =>
      restate(text, { system: 'imperial' }),
    );
    const drawn = svg(writeSvg(told));
    const words = [...drawn.querySelectorAll('.hand-dimension')].map((t) => t.textContent);
    // 200, 160 and 130 mm over 25.4 mm (NIST SP 811, appendix B.8).
    expect(words).toEqual(
      expect.arrayContaining(['7.9\u00a0in', '6.3\u00a0in', '\u00d8 5.1\u00a0in', '2 in']),
    );
    expect(words.join(' ')).not.toMatch(/mm/);
    expect(told.description).toContain('4 propellers of 5.1\u00a0in');
    const widths = [...drawn.querySelectorAll('path')].flatMap(
      (path) => /^M[-\d.]+ [-\d.]+h([\d.]+)v2h/.exec(path.getAttribute('d') ?? '')?.[1] ?? [],
    );
    expect(widths).toEqual(['12.7', '12.7', '12.7', '12.7']);
    expect(drawn.querySelectorAll('circle.ink-disc')).toHaveLength(4);
  });

  it('covers the whole machine', () => {
    expect(planExtent(samplePicture)).toEqual({
      left: expect.closeTo(-164.8, 6),
      top: expect.closeTo(-144.8, 6),
      width: expect.closeTo(329.6, 6),
      height: expect.closeTo(289.6, 6),
    });
  });

  it('keeps lettering the same size on paper at any scale', () => {
    const size = (pen: number) => {
      const text = svg(writeSvg(planDrawing(samplePicture, { pen, detail: 'full' }))).querySelector(
        '.hand-figure',
      );
      return Number(text?.getAttribute('font-size')) / pen;
    };
    expect(size(0.3)).toBeCloseTo(size(2), 6);
  });

  it('tells in words what it shows', () => {
    expect(plan.description).toBe(
      'Sample, dead cat from above, to scale: 4 propellers of 130\u00a0mm; centre of gravity 6\u00a0mm ahead of the centre of lift.',
    );
  });
});

describe('writeSvg', () => {
  it('keeps a name with angle brackets as text', () => {
    const hostile = { ...samplePicture, name: '<script>alert("x")</script> & co' };
    const text = writeSvg(planDrawing(hostile, { pen: 0.5, detail: 'small' }));
    expect(text).not.toContain('<script');
    expect(svg(text).querySelector('title')?.textContent).toContain('<script>alert("x")</script> & co');
  });
});

describe('sideDrawing', () => {
  it('is as high as from the underside of the arms to the highest part', () => {
    // Arms' underside at z = +2.5 mm; the pack's top at -43 - 17.5 = -60.5 mm: 63 mm.
    for (const nose of ['up', 'right'] as const) {
      expect(sideDrawing(samplePicture, { pen: 0.5, nose }).description).toContain('63\u00a0mm high');
    }
  });

  it('stands level with the plan, top of the aircraft towards it', () => {
    const side = sideDrawing(samplePicture, { pen: 0.5, nose: 'up' });
    const [disc] = svg(writeSvg(side)).querySelectorAll('.part-propeller .ink-disc');
    // The front right disc: its foremost tip at x = 80 + 64.8 mm, its plane 24.5 mm over the arms.
    expect(disc?.getAttribute('d')).toMatch(/^M24.5 -15.2/);
    expect(disc?.getAttribute('d')).toContain('L24.5 -144.8');
  });
});
