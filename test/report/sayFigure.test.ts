import { describe, expect, it } from 'vitest';
import type { Measure } from '../../src/assess/types.ts';
import { sayBand, sayFigure, sayWindow } from '../../src/report/sayFigure.ts';

const manner = { currency: 'GBP' };
const measure: Measure = {
  id: 'hover-throttle',
  label: 'hover throttle',
  sheet: 'lift',
  quantity: 'share',
  value: 0.274,
  band: [0.25, 0.301],
  better: 'window',
  window: { low: 0.2, high: 0.35, source: 'common practice, no source' },
  how: '',
  source: '',
  leansOn: [],
};

describe('a measure in words', () => {
  it('parts the figure from its unit', () => {
    expect(sayFigure(measure, manner)).toEqual({ text: '27', unit: '%' });
    expect(sayBand(measure, manner)).toBe('25 to 30');
    expect(sayWindow(measure, manner)).toBe('20 to 35');
  });

  it('is silent on the band of an exact number and on a window it has not', () => {
    const { window: _, ...bare } = measure;
    expect(sayBand({ ...bare, band: [0.274, 0.274] }, manner)).toBe('');
    expect(sayWindow(bare, manner)).toBe('');
  });

  // With its count a sheet's row stuck out of the window.
  it('says an open end without its count, which the how tells', () => {
    const lost = { states: ['motor cooling a step up'], of: 23 };
    const open = 'never too hot in 1 of 23 states of doubt';
    expect(sayBand({ ...measure, open, lost }, manner)).toBe('25 to 30 or never too hot');
  });

  it('says what is not known, without a unit', () => {
    expect(sayFigure({ ...measure, value: Number.NaN }, manner)).toEqual({ text: 'not known', unit: '' });
  });
});
