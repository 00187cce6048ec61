import { describe, expect, it } from 'vitest';
import type { Measure } from '../../src/assess/types.ts';
import { sayBand, sayFigure, sayInWords } from '../../src/report/sayFigure.ts';

const manner = { currency: 'GBP' };

describe('sayFigure', () => {
  it('shows trade units', () => {
    expect(sayInWords(0.6843, 'mass', manner)).toBe('684 g');
    expect(sayInWords(318.15, 'temperature', manner)).toBe('45 °C');
    expect(sayInWords(288, 'time', manner)).toBe('4.8 min');
    expect(sayInWords(0.034, 'time', manner)).toBe('34 ms');
    expect(sayInWords(Math.PI / 6, 'angle', manner)).toBe('30.0 deg');
    expect(sayInWords(0.27, 'share', manner)).toBe('27.0 %');
    expect(sayInWords(2500 * (Math.PI / 30), 'angularSpeed', manner)).toBe('2,500 rpm');
    expect(sayInWords(312.4, 'money', manner)).toBe('312 GBP');
    expect(sayInWords(7.6, 'ratio', manner)).toBe('7.60');
  });

  it('has no minus nought and no invented digits', () => {
    expect(sayFigure(-0.0004, 'force', manner, 1).text).toBe('0.00');
    expect(sayFigure(Number.NaN, 'force', manner).text).toBe('none');
  });

  it('follows the reader’s marks between digits', () => {
    expect(sayFigure(1.5, 'force', { currency: 'EUR', locale: 'de-DE' }).text).toBe('1,50');
  });
});

describe('sayBand', () => {
  const measure: Measure = {
    id: 'all-up-mass',
    label: 'all-up mass',
    sheet: 'airframe',
    quantity: 'time',
    value: 70,
    band: [55, 80],
    better: 'more',
    how: '',
    source: '',
    leansOn: [],
  };

  it('keeps the unit of its value', () => {
    expect(sayBand(measure, manner)).toBe('0.9 to 1.3');
  });

  it('is silent for an exact number', () => {
    expect(sayBand({ ...measure, band: [70, 70] }, manner)).toBe('');
  });
});
