import { z } from 'zod';
import { nearestName } from '../../units/nearestName.ts';
import { words } from '../schema/common.ts';
import { TRUSTS } from '../schema/fields.ts';
import { PART_KINDS, type PartKind } from '../schema/partKinds.ts';
import { fieldsOfAnyKind } from './fieldsOfKind.ts';

export const COLUMNS_FORMAT = 'quadwright-columns-1';

/** What a column tells of a field: its value, or how that value is known. */
export const TELLINGS = ['value', 'trust', 'spread', 'source'] as const;
export type Telling = (typeof TELLINGS)[number];

/** What one column is. */
export interface ColumnUse {
  /** A field as in a shelf file, `mass`, `shaft.diameter`; or `kind`. */
  readonly field: string;
  readonly tells: Telling;
  /** Of its bare numbers; of money the currency. */
  readonly unit?: string;
  /** What the list's own words mean: `{ Antrieb: motor }`. */
  readonly words?: Readonly<Record<string, string>>;
}

const column = z.union([
  words,
  z.strictObject({
    as: words.describe('What the column is: "mass in g", "trust of mass", "shaft.diameter in mm"'),
    words: z.record(z.string().max(80), z.string().max(80)).describe("What the list's own words mean"),
  }),
]);

const list = z.strictObject({
  name: words.optional().describe('The list this was made for'),
  kind: z.enum(PART_KINDS).optional().describe('Kind of every part of the list, where no column tells it'),
  decimals: z.enum(['point', 'comma']).optional().describe('What stands before the decimals'),
  separator: z
    .enum(['comma', 'semicolon', 'tab', 'bar'])
    .optional()
    .describe('What stands between two cells'),
  trust: z.enum(TRUSTS).optional().describe('How values are known that do not tell it themselves'),
  source: words.optional().describe('Where the list comes from'),
  columns: z.record(words, column),
});

/** How the columns of lists were read before: one entry a list that looks different. */
export const columnsFile = z.strictObject({
  format: z.literal(COLUMNS_FORMAT),
  lists: z.array(list).max(50),
});
export type ColumnsFile = z.output<typeof columnsFile>;
/** How one list is read. */
export type ListColumns = ColumnsFile['lists'][number];

/** Why a column cannot be used so. */
export interface ColumnFault {
  readonly says: string;
  readonly found: string;
  readonly allowed: string;
  readonly remedy: string;
}

const USE = /^(?:(trust|spread|source) of )?(\S+)(?: in (.+))?$/;

/**
 * Reads what a column is: `mass in g`, `price in EUR`, `speedConstant in rpm/V`, `spread of mass in %`,
 * `trust of mass`, `name`.
 *
 * @param kind narrows the fields to those of one kind of part
 */
export function readUse(text: string, kind?: PartKind): ColumnUse | ColumnFault {
  const match = USE.exec(text.trim());
  const field = match?.[2] ?? '';
  const known = fieldsOfAnyKind();
  const names = [...known.keys(), 'kind'];
  const own = names.filter(
    (name) => kind === undefined || name === 'kind' || known.get(name)?.includes(kind),
  );
  if (!own.includes(field)) {
    const near = nearestName(field, own);
    return {
      says:
        names.includes(field) && kind !== undefined
          ? `a ${kind} has no field "${field}"`
          : `"${field.slice(0, 40)}" is not a field of a part`,
      found: `"${text.slice(0, 60)}"`,
      allowed: own.join(', '),
      remedy: near ? `Did you mean "${near}"?` : 'Write it like "mass in g".',
    };
  }
  const tells = TELLINGS.find((each) => each === match?.[1]) ?? 'value';
  const unit = match?.[3]?.trim();
  return { field, tells, ...(unit === undefined ? {} : { unit }) };
}

export const isFault = (use: ColumnUse | ColumnFault): use is ColumnFault => 'says' in use;
