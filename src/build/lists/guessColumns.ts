import { DIMENSIONS } from '../../units/dimensions.ts';
import { PART_KINDS, type PartKind } from '../schema/partKinds.ts';
import type { ListColumns } from './columns.ts';
import { fieldsOfKind, type ListField } from './fieldsOfKind.ts';
import type { Table } from './table.ts';

/** Words of the trade for our fields, in small letters. Only what a field's own name does not say. */
const WORDS: Readonly<Record<string, string>> = {
  weight: 'mass',
  kv: 'speedConstant',
  title: 'name',
  description: 'name',
  item: 'name',
  cost: 'price',
  'unit price': 'price',
  'c rating': 'cRating',
  c: 'cRating',
  plug: 'connector',
  'pieces for that price': 'soldIn',
  'pack of': 'soldIn',
  'internal resistance': 'cellResistance',
  resistance: 'windingResistance',
  'idle current': 'noLoadCurrent',
  'max current': 'maxCurrent',
  'max power': 'maxPower',
  magnets: 'poles',
  'mounting circle': 'mountCircles',
  'shaft diameter': 'shaft.diameter',
  'days to ship': 'shippingDays',
  remark: 'note',
  kind: 'kind',
  type: 'kind',
};

/** K_V has one unit in the trade; nothing else's is ever guessed. */
const FIXED_UNITS: Readonly<Record<string, string>> = { speedConstant: 'rpm/V' };

/**
 * A first guess of what the columns of a list are, by their names and the units written behind them: `Weight (g)`,
 * `Capacity [mAh]`. Columns whose names say nothing are left out. To be shown before it is used.
 */
export function guessColumns(table: Table, kind?: PartKind): ListColumns {
  // A list of several kinds may hold what any of them has.
  const fields = kind === undefined ? PART_KINDS.flatMap((each) => fieldsOfKind(each)) : fieldsOfKind(kind);
  const all = new Map(fields.map((field) => [field.path, field]));
  const columns: Record<string, string> = {};
  const told = new Set<string>();
  for (const name of table.columns) {
    const use = guess(name, all);
    if (use === undefined || told.has(use.field)) continue;
    told.add(use.field);
    columns[name] = use.unit === undefined ? use.field : `${use.field} in ${use.unit}`;
  }
  return { ...(kind === undefined ? {} : { kind }), columns };
}

function guess(
  name: string,
  fields: ReadonlyMap<string, ListField>,
): { readonly field: string; readonly unit?: string } | undefined {
  const bracket = /^(.*?)\s*[([]\s*([^()[\]]+?)\s*[)\]]\s*$/.exec(name);
  const bare = plain(bracket?.[1] ?? name);
  const wanted =
    WORDS[bare] ?? [...fields.keys()].find((path) => plain(spaced(path)) === bare || plain(path) === bare);
  if (wanted === undefined || (wanted !== 'kind' && !fields.has(wanted))) return undefined;
  const field = fields.get(wanted);
  const unit = field === undefined ? undefined : unitIn(bracket?.[2], field);
  return { field: wanted, ...(unit === undefined ? {} : { unit }) };
}

function unitIn(text: string | undefined, { path, cell }: ListField): string | undefined {
  if (cell.form === 'money') return text !== undefined && /^[A-Z]{3}$/.test(text) ? text : undefined;
  if (cell.form !== 'quantity') return undefined;
  const units: readonly { readonly text: string; readonly also?: readonly string[] }[] =
    DIMENSIONS[cell.dimension].units;
  const found = units.find((unit) => unit.text === text || unit.also?.includes(text ?? ''));
  return found?.text ?? FIXED_UNITS[path];
}

const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[_.\-:]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

/** `speedConstant` is `speed Constant`. */
const spaced = (path: string): string => path.replace(/([a-z])([A-Z])/g, '$1 $2');
