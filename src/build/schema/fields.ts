import { z } from 'zod';
import { DIMENSIONS, type Dimension } from '../../units/dimensions.ts';
import { nearestName } from '../../units/nearestName.ts';
import { type Money, parseMoney } from '../../units/parseMoney.ts';
import { exampleOf, inWords, parseQuantity, type QuantityError } from '../../units/parseQuantity.ts';
import type { Trust } from '../../units/trusted.ts';
import { parseWireArea } from '../../units/wireArea.ts';
import { shown } from './shown.ts';

/** A value as a file gives it, in SI. Where trust and source are absent the part's own stand for it. */
export interface Given {
  /** [SI unit of the field] */
  readonly value: number;
  /** One standard deviation [same unit], when the file tells a spread. */
  readonly deviation?: number;
  readonly trust?: Trust;
  readonly source?: string;
}

/** Lowest and highest allowed, written as in a file: `['0.1 g', '10 kg']`. */
export type Limits = readonly [low: string, high: string];

export const TRUSTS = ['measured', 'maker', 'inferred'] as const;

/** The words every issue carries beside zod's own. */
export interface IssueWords {
  readonly found: string;
  readonly allowed: string;
  readonly remedy: string;
}

type Context = z.core.ParsePayload;

/** How the text of a field is written, for faces that put it together from a bare number and a unit. */
export type FieldForm =
  | {
      readonly form: 'quantity';
      readonly dimension: Dimension;
      readonly trusted: boolean;
      readonly limits: Limits;
    }
  | { readonly form: 'money' | 'box' | 'wire' };

/** The form of every field that one of the makers below made. */
export const fieldForms = z.registry<FieldForm>();

/**
 * A quantity with its unit: `"33.2 g"`, or `{ value: "33.2 g", spread: "2 %", trust: measured,
 * source: "kitchen scale" }`, where spread is one standard deviation, relative or in the same dimension.
 */
export function quantity(dimension: Dimension, limits: Limits, says: string) {
  const reader = readerOf(dimension, limits);
  return z
    .unknown()
    .transform((raw, context): Given => {
      if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
        const value = reader(raw, context);
        return value === undefined ? z.NEVER : { value };
      }
      return readTrusted(raw, dimension, reader, context);
    })
    .meta({ description: describe(dimension, limits, says), shape: 'quantity' })
    .register(fieldForms, { form: 'quantity', dimension, trusted: true, limits });
}

/** A quantity that is a choice or a plain dimension, without doubt of its own: text only. */
export function plainQuantity(dimension: Dimension, limits: Limits, says: string) {
  const reader = readerOf(dimension, limits);
  return z
    .unknown()
    .transform((raw, context): number => reader(raw, context) ?? z.NEVER)
    .meta({ description: describe(dimension, limits, says), shape: 'plain quantity' })
    .register(fieldForms, { form: 'quantity', dimension, trusted: false, limits });
}

/** A conductor section as `"14 AWG"` or `"2.1 mm2"`, [m2]. */
export function wireArea(says: string) {
  return z
    .unknown()
    .transform((raw, context): number => readText(raw, context, parseWireArea, '"14 AWG"') ?? z.NEVER)
    .meta({
      description: `${says}; a gauge such as "14 AWG" or a section such as "2.1 mm2"`,
      shape: 'plain quantity',
    })
    .register(fieldForms, { form: 'wire' });
}

/** An amount with its currency, `"24.90 GBP"`. */
export function money(says: string) {
  return z
    .unknown()
    .transform((raw, context): Money => readText(raw, context, parseMoney, '"24.90 GBP"') ?? z.NEVER)
    .meta({ description: `${says}; an amount and a currency, such as "24.90 GBP"`, shape: 'plain quantity' })
    .register(fieldForms, { form: 'money' });
}

/** Length, width and height as `"36 x 36 x 8 mm"` (x, y, z of the aircraft), [m]. */
export interface Box {
  readonly length: number;
  readonly width: number;
  readonly height: number;
}

export function box(says: string) {
  return z
    .unknown()
    .transform((raw, context): Box => readText(raw, context, parseBox, '"36 x 36 x 8 mm"') ?? z.NEVER)
    .meta({
      description: `${says}; length x width x height, such as "36 x 36 x 8 mm"`,
      shape: 'plain quantity',
    })
    .register(fieldForms, { form: 'box' });
}

/** Adds an issue in our own words to a transform. */
export function complain(context: Context, input: unknown, says: string, words: IssueWords): void {
  context.issues.push({
    code: 'custom',
    message: says,
    input,
    params: { found: words.found, allowed: words.allowed, remedy: words.remedy },
  });
}

function describe(dimension: Dimension, limits: Limits, says: string): string {
  const units = DIMENSIONS[dimension].units.map((unit) => unit.text).join(', ');
  return `${says}; ${inWords(dimension)} with unit (${units}), ${limits[0]} to ${limits[1]}, such as "${exampleOf(dimension)}"`;
}

type Reader = (raw: unknown, context: Context) => number | undefined;

function readerOf(dimension: Dimension, limits: Limits): Reader {
  const low = limit(limits[0], dimension);
  const high = limit(limits[1], dimension);
  return (raw, context) => {
    const parse = (text: string) => parseQuantity(text, dimension);
    const value = readText(raw, context, parse, `"${exampleOf(dimension)}"`, inWords(dimension));
    if (value === undefined) return undefined;
    // A hair of slack, so that the limit itself passes after conversion.
    const slack = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
    if (value >= low - slack && value <= high + slack) return value;
    complain(context, raw, `${shown(raw)} is outside ${limits[0]} to ${limits[1]}`, {
      found: shown(raw),
      allowed: `${limits[0]} to ${limits[1]}`,
      remedy: value < low ? `Give at least ${limits[0]}.` : `Give at most ${limits[1]}.`,
    });
    return undefined;
  };
}

function limit(text: string, dimension: Dimension): number {
  const outcome = parseQuantity(text, dimension);
  if (!outcome.ok) throw new RangeError(`limit of ${dimension}: ${outcome.reason}`);
  return outcome.value;
}

function readText<T>(
  raw: unknown,
  context: Context,
  parse: (text: string) => { readonly ok: true; readonly value: T } | QuantityError,
  example: string,
  what = 'quantity',
): T | undefined {
  if (typeof raw !== 'string') {
    const says =
      raw === undefined
        ? 'is missing'
        : `${shown(raw)} is not ${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what} with its unit`;
    const remedy =
      typeof raw === 'number'
        ? `Write the number with its unit, like ${example}.`
        : `Write it like ${example}.`;
    complain(context, raw, says, { found: shown(raw), allowed: `text such as ${example}`, remedy });
    return undefined;
  }
  const outcome = parse(raw);
  if (outcome.ok) return outcome.value;
  complain(context, raw, outcome.reason, outcome);
  return undefined;
}

const TRUSTED_KEYS = ['value', 'spread', 'trust', 'source'] as const;

function readTrusted(raw: object, dimension: Dimension, reader: Reader, context: Context): Given {
  const record: Readonly<Record<string, unknown>> = { ...raw };
  const unknownKeys = Object.keys(record).filter((key) => !TRUSTED_KEYS.some((known) => known === key));
  for (const key of unknownKeys) {
    const near = nearestName(key, TRUSTED_KEYS);
    complain(context, raw, `unknown field "${key.slice(0, 40)}"`, {
      found: `"${key.slice(0, 40)}"`,
      allowed: TRUSTED_KEYS.join(', '),
      remedy: near ? `Did you mean "${near}"?` : 'Take it out.',
    });
  }
  const value = reader(record.value, context);
  const trust = TRUSTS.find((known) => known === record.trust);
  if (record.trust !== undefined && trust === undefined) {
    const allowed = TRUSTS.join(', ');
    const words = { found: shown(record.trust), allowed, remedy: 'Say how the number is known.' };
    complain(context, raw, `trust ${shown(record.trust)} is not known`, words);
  }
  const source = record.source;
  if (source !== undefined && (typeof source !== 'string' || source.length > 200)) {
    const words = {
      found: shown(source),
      allowed: 'text of at most 200 letters',
      remedy: 'Say where it is from.',
    };
    complain(context, raw, 'source is not a short text', words);
  }
  const deviation =
    record.spread === undefined ? undefined : readSpread(record.spread, value, dimension, context);
  if (value === undefined) return z.NEVER;
  return {
    value,
    ...(deviation === undefined ? {} : { deviation }),
    ...(trust === undefined ? {} : { trust }),
    ...(typeof source === 'string' ? { source } : {}),
  };
}

function readSpread(raw: unknown, value: number | undefined, dimension: Dimension, context: Context) {
  if (typeof raw === 'string') {
    const share = parseQuantity(raw, 'share');
    if (share.ok && share.value >= 0 && share.value <= 1) return share.value * Math.abs(value ?? 0);
    const own = parseQuantity(raw, dimension);
    // A spread of a temperature would carry the scale's offset: only shares are taken there.
    if (own.ok && own.value >= 0 && dimension !== 'temperature') return own.value;
  }
  complain(context, raw, `spread ${shown(raw)} is not a share or a ${inWords(dimension)}`, {
    found: shown(raw),
    allowed: `one standard deviation from "0 %" to "100 %", or in the unit of the value`,
    remedy: 'Write it like "5 %".',
  });
  return undefined;
}

function parseBox(text: string): { readonly ok: true; readonly value: Box } | QuantityError {
  const match = /^\s*([\d.]+)\s*x\s*([\d.]+)\s*x\s*([\d.]+)\s*(mm|cm|m|in)\s*$/.exec(text.slice(0, 60));
  const sides = [match?.[1], match?.[2], match?.[3]].map((side) =>
    parseQuantity(`${side} ${match?.[4]}`, 'length'),
  );
  const [length, width, height] = sides.map((side) =>
    side.ok && side.value > 0 && side.value <= 2 ? side.value : 0,
  );
  if (length && width && height) return { ok: true, value: { length, width, height } };
  const found = shown(text);
  return {
    ok: false,
    reason: `${found} is not a length x width x height`,
    found,
    allowed: 'three lengths above 0 and up to 2 m, and one unit of mm, cm, m, in',
    remedy: 'Write it like "36 x 36 x 8 mm".',
  };
}
