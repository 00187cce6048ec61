import { QUANTITY_SPACE } from './formatQuantity.ts';
import { parseQuantity } from './parseQuantity.ts';
import { type ShownQuantity, shownIn, type UnitSystem } from './shownUnits.ts';
import { roundedText } from './significance.ts';

/** Units that a sentence may hold and that are other ones in the imperial display. */
const RESTATED = {
  mm: 'length',
  cm: 'length',
  m: 'length',
  km: 'length',
  g: 'mass',
  kg: 'mass',
  'm/s': 'speed',
  degC: 'temperature',
} as const satisfies Record<string, ShownQuantity & ('length' | 'mass' | 'speed' | 'temperature')>;

type RestatedUnit = keyof typeof RESTATED;

const NUMBER = '-?\\d+(?:[.,]\\d+)?';
/** `12.3 mm`, `4.8 to 5.4 mm`, with the no-break space of a quantity before the unit. */
const QUANTITY = new RegExp(
  `(?<![\\w.,-])(?:(${NUMBER}) to )?(${NUMBER})${QUANTITY_SPACE}(mm|cm|km|kg|m/s|degC|m|g)(?![\\w/]| cm2)`,
  'g',
);

export interface RestateOptions {
  /** Metric where absent, which is how sentences are written. */
  readonly system?: UnitSystem;
  /** What stands before decimals, in the text and in the answer; a point where absent. */
  readonly mark?: ',' | '.';
}

/**
 * A sentence with its quantities in the system of units asked for. Only what is marked as a quantity changes:
 * a number, a no-break space and its unit, as `formatQuantity` and `formatBand` write them. What a part is
 * called or sold by (`M3 x 8 mm`, a hole circle, a strap's width) or a law names has a plain space and stays.
 *
 * As many significant digits as the text has, two at least; zeros that end a whole number do not count.
 * Temperatures are taken for readings of a thermometer, so a difference must not be marked; `g` for grams,
 * so an acceleration is not for sentences.
 */
export function restate(text: string, { system = 'metric', mark = '.' }: RestateOptions): string {
  if (system === 'metric') return text;
  return text.replaceAll(QUANTITY, (_, low: string | undefined, high: string, unit: RestatedUnit) => {
    const quantity = RESTATED[unit];
    const ends = [...(low === undefined ? [] : [low]), high].map((number) => number.replace(mark, '.'));
    const values = ends.map((number) => inSI(number, unit));
    const largest = values.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
    const shown = shownIn(quantity, largest, { system });
    const decimals =
      quantity === 'temperature'
        ? Math.max(...ends.map(decimalsOf))
        : Math.max(2, ...ends.map(significantDigits)) - 1 - magnitude(shown.convert(largest));
    const numbers = values.map((value) => roundedText(shown.convert(value), decimals).replace('.', mark));
    return `${numbers.join(' to ')}${QUANTITY_SPACE}${shown.text}`;
  });
}

function inSI(number: string, unit: RestatedUnit): number {
  const read = parseQuantity(`${number} ${unit}`, RESTATED[unit]);
  return read.ok ? read.value : Number.NaN;
}

const decimalsOf = (number: string): number => number.split('.')[1]?.length ?? 0;

const significantDigits = (number: string): number => {
  const digits = number.replace(/^-?0*\.?0*/, '').replace('.', '');
  return number.includes('.') ? digits.length : digits.replace(/0+$/, '').length;
};

/** Power of ten of its first digit; of zero such that it shows none after it. */
const magnitude = (value: number): number => (value === 0 ? 1 : Math.floor(Math.log10(Math.abs(value))));
