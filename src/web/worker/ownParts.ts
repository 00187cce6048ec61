import { inferredOf } from '../../build/infer/inferredOf.ts';
import { cellValue } from '../../build/lists/cellValue.ts';
import { fieldsOfKind, type ListField } from '../../build/lists/fieldsOfKind.ts';
import { freeId, idOfName } from '../../build/lists/ids.ts';
import { grouped } from '../../build/lists/rowData.ts';
import { parseText } from '../../build/read/parseText.ts';
import { readShelf } from '../../build/read/readShelf.ts';
import { PART_KINDS, type PartKind } from '../../build/schema/partKinds.ts';
import { SHELF_FORMAT } from '../../build/schema/shelfFile.ts';
import type { Shelf } from '../../build/shelf.ts';
import { DIMENSIONS, type Unit } from '../../units/dimensions.ts';
import type { DraftRead, OwnPart, PartDraft, PartField, Told } from './ownPartProtocol.ts';

/** What the page sees to by itself, or nobody fills in by hand. */
const LEFT_OUT = ['id', 'invented', 'basedOn'];
/** So many of a kind's fields are asked first; the others wait below. */
const ASKED_FIRST = 10;
const TELLS_CURRENCY = /[A-Z]{3}|[£€$]/;
/** Every part's own, where a shop tells them: asked after what makes the part what it is. */
const LAST = ['trust', 'source', 'note', 'soldIn', 'size', 'shippingDays'];

/** The fields of a kind, those that must be told first, then what a listing usually tells. */
export function partFields(kind: PartKind): readonly PartField[] {
  const all = fieldsOfKind(kind).filter(({ path }) => !LEFT_OUT.includes(path));
  const inLabels = labelled(all);
  const order = (field: ListField): number => (LAST.includes(field.path) ? 2 : field.required ? 0 : 1);
  return all
    .toSorted((a, b) => order(a) - order(b))
    .map(
      (field, i): PartField => ({
        path: field.path,
        label: labelOf(field.path),
        says: inLabels(field.says),
        required: field.required,
        first: field.required || (i < ASKED_FIRST && order(field) < 2),
        choices: choicesOf(field),
        units: unitsOf(field),
        allowed: allowedOf(field),
        money: field.cell.form === 'money',
        trusted: field.cell.form === 'quantity' && field.cell.trusted && !field.listed,
      }),
    );
}

/** `shaft.fieldOfView` as `shaft: field of view`. */
const labelOf = (path: string): string =>
  path
    .split('.')
    .map((word) => word.replace(/([a-z])([A-Z0-9])/g, '$1 $2').toLowerCase())
    .join(': ');

/** Words that name fields as files do (`soldIn`) with the labels that stand in the form. */
function labelled(fields: readonly ListField[]): (words: string) => string {
  const labels = new Map(
    fields.flatMap(({ path }) => path.split('.').map((key) => [key, labelOf(key)] as const)),
  );
  return (words) =>
    words.replace(/\b[a-z][\w]*[A-Z]\w*\b/g, (name) => {
      const label = labels.get(name);
      return label === undefined ? name : `\u2018${label}\u2019`;
    });
}

function choicesOf({ cell, listed }: ListField): readonly string[] {
  if (listed) return [];
  return cell.form === 'choice' ? cell.among : cell.form === 'yes or no' ? ['yes', 'no'] : [];
}

function unitsOf({ cell }: ListField): readonly string[] {
  switch (cell.form) {
    case 'quantity': {
      const units: readonly Unit[] = DIMENSIONS[cell.dimension].units;
      // That of its lower limit is the one the trade uses for it.
      const own = cell.limits[0].split(' ').slice(1).join(' ');
      return [...new Set([own, ...units.map(({ text }) => text)])];
    }
    case 'wire':
      return ['AWG', 'mm2'];
    default:
      return [];
  }
}

function allowedOf({ cell, listed }: ListField): string {
  const several = listed ? ', several with / between' : '';
  switch (cell.form) {
    case 'quantity':
      return `${cell.limits[0]} to ${cell.limits[1]}${several}`;
    case 'money':
      return 'an amount; in another currency with its letters, like 24.90 EUR';
    case 'box':
      return 'like 36 x 36 x 8 mm';
    case 'cells':
      return 'like 4-6';
    case 'size':
      return 'as printed on it';
    case 'choice':
      return listed ? `of ${cell.among.join(', ')}${several}` : '';
    default:
      return '';
  }
}

/** What was typed, in the form of a shelf file and checked as one; with what is inferred from it. */
export function draftPart({ kind, currency, id: own, told, rest }: PartDraft, under: Shelf): DraftRead {
  const fields = fieldsOfKind(kind);
  const inLabels = labelled(fields);
  const values = new Map<string, unknown>();
  const faults: { path: string; says: string; missing: boolean }[] = [];
  for (const field of fields) {
    const { text = '', unit, trust } = told[field.path] ?? {};
    const typed = text.trim();
    if (typed === '') continue;
    const decimals = typed.includes(',') && !typed.includes('.') ? 'comma' : 'point';
    const its = field.cell.form === 'money' && !TELLS_CURRENCY.test(typed) ? currency : unit;
    const use = { tells: 'value' as const, field: field.path, ...(its === undefined ? {} : { unit: its }) };
    const value = cellValue(typed, field, use, decimals);
    if (!value.ok)
      faults.push({
        path: field.path,
        says: `${saysOf(value.says)}. ${remedyOf(field, value.remedy)}`,
        missing: false,
      });
    else values.set(field.path, trust ? { value: value.value, trust } : value.value);
  }
  const name = (told.name?.text ?? '').trim();
  const id = own ?? freeId(idOfName(name), under.parts);
  const raw = { id, kind, ...rest, ...grouped(values) };
  if (faults.length > 0) return { ok: false, faults };
  const read = readShelf(JSON.stringify({ format: SHELF_FORMAT, parts: [raw] }), 'part', under);
  const part = read.ok ? read.value.parts.get(id) : undefined;
  if (part !== undefined) return { ok: true, id, raw, inferred: inferredOf(part) };
  return {
    ok: false,
    faults: (read.ok ? [] : read.errors).map(({ path: inFile, says, found, remedy }) => {
      const path = inFile.replace(/^parts\[0\]\.?/, '');
      const field = fields.find((each) => each.path === path);
      const missing = found === 'nothing';
      return { path, missing, says: missing ? wanted(field) : inLabels(`${says}. ${remedy}`) };
    }),
  };
}

/** What is asked for where nothing is told. */
function wanted(field: ListField | undefined): string {
  if (field === undefined) return 'Not told yet.';
  if (choicesOf(field).length > 0) return 'Not told yet: choose one.';
  const allowed = allowedOf(field);
  return allowed === '' ? 'Not told yet.' : `Not told yet: ${allowed}.`;
}

/** A form has no columns and no cells to change. */
const saysOf = (says: string): string =>
  says
    .replace(/ with a decimal (point|comma)$/, '')
    .replace(/ does not tell its currency$/, ' is no amount in a currency');

function remedyOf(field: ListField, remedy: string): string {
  switch (field.cell.form) {
    case 'quantity':
      return `Write a number, ${allowedOf(field)}.`;
    case 'money':
      return 'Write it like 24.90, or with its currency, like 24.90 EUR.';
    default:
      return remedy;
  }
}

/** The parts of the user's own shelf as their file wrote them. */
export function ownParts(text: string): readonly OwnPart[] {
  const parsed = parseText(text, 'your shelf');
  const data = parsed.ok ? parsed.value.data : undefined;
  const parts = isRecord(data) && Array.isArray(data.parts) ? data.parts.filter(isRecord) : [];
  return parts.flatMap((raw): readonly OwnPart[] => {
    const kind = PART_KINDS.find((each) => each === raw.kind);
    const { id, name } = raw;
    if (kind === undefined || typeof id !== 'string') return [];
    return [{ id, name: typeof name === 'string' ? name : id, draft: draftOf(kind, id, raw) }];
  });
}

function draftOf(kind: PartKind, id: string, raw: Readonly<Record<string, unknown>>): PartDraft {
  const fields = fieldsOfKind(kind).filter(({ path }) => !LEFT_OUT.includes(path));
  const told: Record<string, Told> = {};
  for (const field of fields) {
    const value = field.path
      .split('.')
      .reduce<unknown>((group, key) => (isRecord(group) ? group[key] : undefined), raw);
    const typed = asTyped(value, field);
    if (typed !== undefined) told[field.path] = typed;
  }
  const heads = new Set(['kind', ...fields.map(({ path }) => path.split('.')[0])]);
  const rest = Object.fromEntries(Object.entries(raw).filter(([key]) => key === 'id' || !heads.has(key)));
  return { kind, id, told, rest };
}

/** A value of a shelf file as it is typed; undefined where there is none. */
function asTyped(value: unknown, field: ListField): Told | undefined {
  if (value === undefined || value === null) return undefined;
  if (Array.isArray(value)) return { text: value.map(String).join(' / ') };
  if (isRecord(value)) {
    if (field.cell.form === 'cells') return { text: `${value.min}-${value.max}` };
    const typed = asTyped(value.value, field);
    return typed && typeof value.trust === 'string' ? { ...typed, trust: value.trust } : typed;
  }
  if (typeof value === 'boolean') return { text: value ? 'yes' : 'no' };
  const match = unitsOf(field).length > 0 ? /^(\S+) (.+)$/.exec(String(value)) : null;
  return match?.[1] !== undefined && match[2] !== undefined
    ? { text: match[1], unit: match[2] }
    : { text: String(value) };
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
