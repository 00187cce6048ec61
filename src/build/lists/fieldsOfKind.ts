import type { z } from 'zod';
import type { Dimension } from '../../units/dimensions.ts';
import { fieldForms } from '../schema/fields.ts';
import { PART_SCHEMAS } from '../schema/part.ts';
import { PART_KINDS, type PartKind } from '../schema/partKinds.ts';

/** How the text of one cell becomes the value of a field. */
export type CellForm =
  | { readonly form: 'quantity'; readonly dimension: Dimension; readonly trusted: boolean }
  | { readonly form: 'money' | 'box' | 'wire' | 'text' | 'size' | 'number' | 'yes or no' | 'cells' }
  | { readonly form: 'choice'; readonly among: readonly string[] };

/** A field of a kind of part that a cell of a list can fill. */
export interface ListField {
  /** As in a shelf file, groups with a dot: `shaft.diameter`. */
  readonly path: string;
  /** Several values in one cell, with slashes between. */
  readonly listed: boolean;
  readonly cell: CellForm;
}

/**
 * The fields of a kind that a list can tell, read off its schema. Lists of groups (thrust tables, what is in the box)
 * do not go into a cell: a part that needs them is based on another of the shelf.
 */
export function fieldsOfKind(kind: PartKind): readonly ListField[] {
  return fieldsIn(PART_SCHEMAS[kind], '').filter(({ path }) => path !== 'kind');
}

/** Every field of any kind by its path, and the kinds that have it. */
export function fieldsOfAnyKind(): ReadonlyMap<string, readonly PartKind[]> {
  const found = new Map<string, PartKind[]>();
  for (const kind of PART_KINDS) {
    for (const { path } of fieldsOfKind(kind)) found.set(path, [...(found.get(path) ?? []), kind]);
  }
  return found;
}

function fieldsIn(schema: z.core.$ZodType, path: string): readonly ListField[] {
  const inner = unwrapped(schema);
  if (inner === undefined) return [];
  const def: z.core.$ZodTypeDef = inner._zod.def;
  if (isObject(def)) {
    if (isCells(def)) return [{ path, listed: false, cell: { form: 'cells' } }];
    return Object.entries(def.shape).flatMap(([key, field]) =>
      fieldsIn(field, path === '' ? key : `${path}.${key}`),
    );
  }
  if (isUnion(def)) {
    const all = def.options.flatMap((option) => fieldsIn(option, path));
    return [...new Set(all.map((field) => field.path))].map((each) => together(all, each));
  }
  if (isArray(def)) {
    const item = unwrapped(def.element);
    const cell = item === undefined ? undefined : formOf(item);
    return cell === undefined ? [] : [{ path, listed: true, cell }];
  }
  const cell = formOf(inner);
  return cell === undefined ? [] : [{ path, listed: false, cell }];
}

/** One field for those of the same path in several layouts; their choices joined. */
function together(all: readonly ListField[], path: string): ListField {
  const same = all.filter((field) => field.path === path);
  const among = same.flatMap(({ cell }) => (cell.form === 'choice' ? cell.among : []));
  const [first] = same;
  if (first === undefined) throw new RangeError(`path: no field at ${path}`);
  return among.length === 0 ? first : { ...first, cell: { form: 'choice', among: [...new Set(among)] } };
}

/** Without what makes it optional; a maker's own form stops the way down, as its pipe is of no interest. */
function unwrapped(schema: z.core.$ZodType): z.core.$ZodType | undefined {
  let inner: z.core.$ZodType | undefined = schema;
  while (inner !== undefined && fieldForms.get(inner) === undefined) {
    const def: z.core.$ZodTypeDef = inner._zod.def;
    if (!('innerType' in def)) return inner;
    inner = def.innerType as z.core.$ZodType;
  }
  return inner;
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
