import type { Measure, Quantity } from '../assess/types.ts';

/** A number as a person reads it, and its trade unit apart so that it can be set smaller. */
export interface Figure {
  readonly text: string;
  readonly unit: string;
}

export interface Manner {
  /** For money: the three letters of the brief's currency. */
  readonly currency: string;
  /** A language tag, for the marks between digits. */
  readonly locale?: string;
}

interface Shown {
  readonly unit: string;
  readonly factor: number;
  readonly shift?: number;
  /** No more digits than this after the point, however small the number. */
  readonly finest: number;
}

/** SI to what the trade reads. */
function shownIn(quantity: Quantity, size: number, currency: string): Shown {
  switch (quantity) {
    case 'mass':
      return { unit: 'g', factor: 1e3, finest: 1 };
    case 'length':
      return size >= 2 ? { unit: 'm', factor: 1, finest: 1 } : { unit: 'mm', factor: 1e3, finest: 1 };
    case 'force':
      return { unit: 'N', factor: 1, finest: 2 };
    case 'time':
      if (size >= 60) return { unit: 'min', factor: 1 / 60, finest: 1 };
      return size >= 1 ? { unit: 's', factor: 1, finest: 1 } : { unit: 'ms', factor: 1e3, finest: 0 };
    case 'speed':
      return { unit: 'm/s', factor: 1, finest: 1 };
    case 'angle':
      return { unit: 'deg', factor: 180 / Math.PI, finest: 1 };
    case 'angularSpeed':
      return { unit: 'rpm', factor: 30 / Math.PI, finest: 0 };
    case 'angularAcceleration':
      return { unit: 'deg/s²', factor: 180 / Math.PI, finest: 0 };
    case 'current':
      return { unit: 'A', factor: 1, finest: 1 };
    case 'voltage':
      return { unit: 'V', factor: 1, finest: 2 };
    case 'power':
      return { unit: 'W', factor: 1, finest: 1 };
    case 'energy':
      return { unit: 'Wh', factor: 1 / 3600, finest: 1 };
    case 'temperature':
      return { unit: '°C', factor: 1, shift: -273.15, finest: 0 };
    case 'frequency':
      return { unit: 'Hz', factor: 1, finest: 1 };
    case 'inertia':
      return { unit: 'kg mm²', factor: 1e6, finest: 1 };
    case 'money':
      return { unit: currency, factor: 1, finest: 0 };
    case 'share':
      return { unit: '%', factor: 100, finest: 1 };
    case 'ratio':
      return { unit: '', factor: 1, finest: 2 };
    case 'count':
      return { unit: '', factor: 1, finest: 0 };
  }
}

/**
 * One number to three digits. `like` sets unit and digits when several are read together, as the
 * ends of a band are beside their value.
 */
export function sayFigure(value: number, quantity: Quantity, manner: Manner, like = value): Figure {
  if (!Number.isFinite(value)) return { text: 'none', unit: '' };
  const shown = shownIn(quantity, Math.abs(like), manner.currency);
  const convert = (x: number): number => x * shown.factor + (shown.shift ?? 0);
  const size = Math.abs(convert(like));
  const digits = size === 0 ? 0 : Math.max(0, Math.min(shown.finest, 2 - Math.floor(Math.log10(size))));
  const text = convert(value).toLocaleString(manner.locale ?? 'en-GB', {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  // Without this a loss of 0.0004 N would read as -0.00.
  return { text: /^-0([.,]0*)?$/.test(text) ? text.slice(1) : text, unit: shown.unit };
}

/** The band beside a measure: `671 to 702`; empty when the number is exact. */
export function sayBand(measure: Measure, manner: Manner): string {
  const [low, high] = measure.band;
  if (low === high) return '';
  const ends = [low, high].map((end) => sayFigure(end, measure.quantity, manner, measure.value).text);
  return ends[0] === ends[1] ? '' : ends.join(' to ');
}

/** Figure and unit in one string, for running text and labels. */
export function sayInWords(value: number, quantity: Quantity, manner: Manner): string {
  const { text, unit } = sayFigure(value, quantity, manner);
  return unit === '' ? text : `${text} ${unit}`;
}
