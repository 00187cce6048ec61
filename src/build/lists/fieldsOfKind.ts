import { z } from 'zod';
import { type FieldForm, fieldForms } from '../schema/fields.ts';
import { PART_SCHEMAS } from '../schema/part.ts';
import { PART_KINDS, type PartKind } from '../schema/partKinds.ts';

/** How the text of one cell becomes the value of a field. */
export type CellForm =
  | Extract<FieldForm, { form: 'quantity' }>
  | { readonly form: 'money' | 'box' | 'wire' | 'text' | 'size' | 'number' | 'yes or no' | 'cells' }
  | { readonly form: 'choice'; readonly among: readonly string[] };

/** A field of a kind of part that a cell of a list can fill. */
export interface ListField {
  /** As in a shelf file, groups with a dot: `shaft.diameter`. */
  readonly path: string;
  /** Several values in one cell, with slashes between. */
  readonly listed: boolean;
  readonly cell: CellForm;
  /** Whether every part of the kind must tell it. */
  readonly required: boolean;
  /** What it is, in the schema's words; empty where its name says it all. */
  readonly says: string;
}

/**
 * The fields of a kind that a list can tell, read off its schema. Lists of groups (thrust tables, what is in the box)
 * do not go into a cell: a part that needs them is based on another of the shelf.
 */
export function fieldsOfKind(kind: PartKind): readonly ListField[] {
  return fieldsIn(PART_SCHEMAS[kind], '', true).filter(({ path }) => path !== 'kind');
}

/** Every field of any kind by its path, and the kinds that have it. */
export function fieldsOfAnyKind(): ReadonlyMap<string, readonly PartKind[]> {
  const found = new Map<string, PartKind[]>();
  for (const kind of PART_KINDS) {
    for (const { path } of fieldsOfKind(kind)) found.set(path, [...(found.get(path) ?? []), kind]);
  }
  return found;
}

function fieldsIn(schema: z.core.$ZodType, path: string, must: boolean): readonly ListField[] {
  const { inner, says, absent } = unwrapped(schema);
  const required = must && !absent;
  const def: z.core.$ZodTypeDef = inner._zod.def;
  if (isObject(def)) {
    if (isCells(def)) return [{ path, listed: false, cell: { form: 'cells' }, required, says }];
    return Object.entries(def.shape).flatMap(([key, field]) =>
      fieldsIn(field, path === '' ? key : `${path}.${key}`, required),
    );
  }
  if (isUnion(def)) {
    const all = def.options.map((option) => fieldsIn(option, path, required));
    return [...new Set(all.flat().map((field) => field.path))].map((each) => together(all, each));
  }
  const item = isArray(def) ? unwrapped(def.element) : undefined;
  const cell = formOf(item?.inner ?? inner);
  return cell === undefined
    ? []
    : [{ path, listed: item !== undefined, cell, required, says: says || (item?.says ?? '') }];
}

/** One field for those of the same path in several layouts; their choices joined, required where each requires it. */
function together(all: readonly (readonly ListField[])[], path: string): ListField {
  const same = all.flat().filter((field) => field.path === path);
  const required = same.length === all.length && same.every((field) => field.required);
  const among = same.flatMap(({ cell }) => (cell.form === 'choice' ? cell.among : []));
  const [first] = same;
  if (first === undefined) throw new RangeError(`path: no field at ${path}`);
  return among.length === 0
    ? { ...first, required }
    : { ...first, required, cell: { form: 'choice', among: [...new Set(among)] } };
}

/**
 * Without what makes it optional, and whether anything did; a maker's own form stops the way down, as its pipe is of
 * no interest. Of its description what stands before the units and limits.
 */
function unwrapped(schema: z.core.$ZodType) {
  let inner = schema;
  let says: string | undefined;
  let absent = false;
  for (;;) {
    says ??= z.globalRegistry.get(inner)?.description;
    const def: z.core.$ZodTypeDef = inner._zod.def;
    if (fieldForms.get(inner) !== undefined || !('innerType' in def)) break;
    absent ||= def.type !== 'readonly';
    inner = def.innerType as z.core.$ZodType;
  }
  const told = fieldForms.get(inner) === undefined ? says : says?.split('; ')[0];
  return { inner, absent, says: told ?? '' };
}

function formOf(schema: z.core.$ZodType): CellForm | undefined {
  const own = fieldForms.get(schema);
  if (own !== undefined) return own.form === 'quantity' ? own : { form: own.form };
  const { def } = schema._zod;
  switch (def.type) {
    case 'enum':
      return { form: 'choice', among: Object.values((def as z.core.$ZodEnumDef).entries).map(String) };
    case 'literal':
      return { form: 'choice', among: (def as z.core.$ZodLiteralDef<string>).values.map(String) };
    case 'string':
      return { form: 'text' };
    case 'number':
    case 'int':
      return { form: 'number' };
    case 'boolean':
      return { form: 'yes or no' };
    case 'pipe':
      return { form: 'size' }; // as printed: `2207`, `5.1 x 3.6 x 3`
    default:
      return undefined;
  }
}

const isObject = (def: z.core.$ZodTypeDef): def is z.core.$ZodObjectDef => def.type === 'object';
const isUnion = (def: z.core.$ZodTypeDef): def is z.core.$ZodUnionDef => def.type === 'union';
const isArray = (def: z.core.$ZodTypeDef): def is z.core.$ZodArrayDef => def.type === 'array';
const isCells = ({ shape }: z.core.$ZodObjectDef): boolean =>
  Object.keys(shape).join(' ') === 'min max' &&
  Object.values(shape).every((field) => formOf(field)?.form === 'number');
