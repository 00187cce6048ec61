import { exampleOf, inWords } from '../../units/parseQuantity.ts';
import type { ColumnUse } from './columns.ts';
import type { CellForm, ListField } from './fieldsOfKind.ts';
import { type Decimals, plainNumber } from './numberText.ts';

/** What a cell holds, in the form of a shelf file; or what is wrong with it. */
export type CellValue =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly says: string; readonly allowed: string; readonly remedy: string };

/** A cell's text as the field's value in a shelf file. Limits and choices are left to the field's own check. */
export function cellValue(text: string, field: ListField, use: ColumnUse, decimals: Decimals): CellValue {
  const meant = use.words?.[text] ?? text;
  if (!field.listed) return single(meant, field.cell, use, decimals);
  // A comma between entries would be one between decimals in half of all lists.
  const items = meant.split(/\s*(?:[/;|]| and | & )\s*/).filter((item) => item !== '');
  const values = items.map((item) => single(item, field.cell, use, decimals));
  const bad = values.find((each) => !each.ok);
  return bad ?? { ok: true, value: values.map((each) => (each.ok ? each.value : undefined)) };
}

function single(text: string, cell: CellForm, use: ColumnUse, decimals: Decimals): CellValue {
  const quoted = `"${text.slice(0, 40)}"`;
  switch (cell.form) {
    case 'quantity':
      return quantityCell(text, use, decimals, {
        says: `${quoted} has no unit, and the column tells none`,
        allowed: `a column told with its unit, or cells such as "${exampleOf(cell.dimension)}"`,
        remedy: `Tell the unit of the column: a ${inWords(cell.dimension)} such as "${exampleOf(cell.dimension)}".`,
      });
    case 'wire':
      return quantityCell(text, use, decimals, {
        says: `${quoted} has no unit, and the column tells none`,
        allowed: 'AWG or mm2',
        remedy: 'Tell the unit of the column.',
      });
    case 'money':
      return moneyCell(text, use, decimals);
    case 'box':
      return boxCell(text, use, decimals);
    case 'number': {
      const number = plainNumber(text, decimals);
      return number === undefined
        ? {
            ok: false,
            says: `${quoted} is not a number`,
            allowed: allowedNumber(decimals),
            remedy: 'Change the cell.',
          }
        : { ok: true, value: Number(number) };
    }
    case 'cells':
      return cellsCell(text);
    case 'yes or no':
      return yesOrNo(text);
    case 'choice': {
      const same = cell.among.find((each) => each.toLowerCase() === text.toLowerCase());
      return { ok: true, value: same ?? text };
    }
    case 'text':
      return { ok: true, value: text };
    case 'size':
      return { ok: true, value: sizeText(text, decimals) };
  }
}

const allowedNumber = (decimals: Decimals) => `a number with a decimal ${decimals}`;

const AMOUNT = /^([+-]?[\d.,' \u00A0\u202F]*\d[.,]?)\s*(.*)$/;

function quantityCell(
  text: string,
  { unit }: ColumnUse,
  decimals: Decimals,
  missing: { readonly says: string; readonly allowed: string; readonly remedy: string },
): CellValue {
  const match = AMOUNT.exec(text);
  const number = plainNumber((match?.[1] ?? '').trim(), decimals);
  if (match === null || number === undefined) {
    return {
      ok: false,
      says: `"${text.slice(0, 40)}" is not a number with a decimal ${decimals}`,
      allowed: allowedNumber(decimals),
      remedy: `Change the cell, or tell that decimals stand after a ${decimals === 'point' ? 'comma' : 'point'}.`,
    };
  }
  const own = match[2] === '' ? unit : match[2];
  return own === undefined ? { ok: false, ...missing } : { ok: true, value: `${number} ${own}` };
}

/** Signs that stand for one currency only; a dollar sign does not. */
const SIGNS: Readonly<Record<string, string>> = { '£': 'GBP', '€': 'EUR' };

function moneyCell(text: string, { unit }: ColumnUse, decimals: Decimals): CellValue {
  const sign = /[£€$]/.exec(text)?.[0];
  const code = /[A-Z]{3}/.exec(text)?.[0];
  const bare = text.replace(/[£€$]|[A-Z]{3}/g, '').trim();
  const number = plainNumber(bare, decimals);
  const told = code ?? (sign === undefined ? unit : (SIGNS[sign] ?? unit));
  if (number === undefined || number.startsWith('-')) {
    return {
      ok: false,
      says: `"${text.slice(0, 40)}" is not an amount of money with a decimal ${decimals}`,
      allowed: 'an amount with its currency, or one in the currency told of the column',
      remedy: 'Write it like "24.90 GBP", or tell the currency of the column.',
    };
  }
  if (told === undefined || (unit !== undefined && told !== unit)) {
    return {
      ok: false,
      says:
        told === undefined
          ? `"${text.slice(0, 40)}" does not tell its currency`
          : `"${text.slice(0, 40)}" is in ${told}, and the column is told to be in ${unit}`,
      allowed: 'one currency a cell, as the column says',
      remedy: 'Tell the currency of the column, such as "price in GBP", or none where the cells tell it.',
    };
  }
  return { ok: true, value: `${Number(number).toFixed(2)} ${told}` };
}

function boxCell(text: string, { unit }: ColumnUse, decimals: Decimals): CellValue {
  const match = /^(.+?)\s*(mm|cm|m|in)?$/.exec(text.replace(/[×*]/g, 'x'));
  const sides = (match?.[1] ?? '').split('x').map((side) => plainNumber(side.trim(), decimals));
  const own = match?.[2] ?? unit;
  if (sides.length !== 3 || sides.includes(undefined) || own === undefined) {
    return {
      ok: false,
      says: `"${text.slice(0, 40)}" is not a length x width x height${own === undefined ? ' with a unit' : ''}`,
      allowed: 'three lengths with x between, and a unit here or of the column',
      remedy: 'Write it like "36 x 36 x 8 mm".',
    };
  }
  return { ok: true, value: `${sides.join(' x ')} ${own}` };
}

/** `4-6S`, `6S`, `3 to 6`. */
function cellsCell(text: string): CellValue {
  const match = /^(\d{1,2})\s*[sS]?(?:\s*(?:-|–|to|\.\.)\s*(\d{1,2})\s*[sS]?)?$/.exec(text);
  if (match === null) {
    return {
      ok: false,
      says: `"${text.slice(0, 40)}" does not tell cells in series`,
      allowed: 'one number or two with a dash between',
      remedy: 'Write it like "4-6" or "6S".',
    };
  }
  return { ok: true, value: { min: Number(match[1]), max: Number(match[2] ?? match[1]) } };
}

const YES = /^(yes|y|true|1|x)$/i;
const NO = /^(no|n|false|0|-)$/i;

function yesOrNo(text: string): CellValue {
  if (YES.test(text)) return { ok: true, value: true };
  if (NO.test(text)) return { ok: true, value: false };
  const allowed = 'yes or no';
  return {
    ok: false,
    says: `"${text.slice(0, 40)}" is neither yes nor no`,
    allowed,
    remedy: `Write ${allowed}.`,
  };
}

/** Sizes as printed, `5,1×3,6×3`, with points and spaces as the shelf reads them. */
function sizeText(text: string, decimals: Decimals): string {
  const parts = text.split(/\s*[x×]\s*/);
  return parts.map((part) => (decimals === 'comma' ? part.replace(',', '.') : part).trim()).join(' x ');
}
