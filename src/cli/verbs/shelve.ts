import { COLUMNS_FORMAT, type ColumnsFile } from '../../build/lists/columns.ts';
import { readColumnsFile, remembered } from '../../build/lists/columnsOfLists.ts';
import { ontoShelf, SAME_CHOICES, type Settled, settle } from '../../build/lists/ontoShelf.ts';
import { readRates } from '../../build/lists/rates.ts';
import { type ListPreview, type ListWishes, readList } from '../../build/lists/readList.ts';
import { readShelf } from '../../build/read/readShelf.ts';
import { TRUSTS } from '../../build/schema/fields.ts';
import { PART_KINDS } from '../../build/schema/partKinds.ts';
import { EMPTY_SHELF, type Shelf } from '../../build/shelf.ts';
import { yamlText } from '../../build/write/yamlText.ts';
import { nearestName } from '../../units/nearestName.ts';
import { mustRead } from '../files.ts';
import { BadInput, type ExitCode, exitCode, type Io } from '../io.ts';
import { shelveText } from '../print/shelveText.ts';
import type { ShelveReport } from '../shelveReport.ts';
import { writeFile } from '../writeFile.ts';

export interface ShelveOptions {
  readonly onto: string;
  readonly kind?: string;
  readonly column: readonly string[];
  readonly decimals?: string;
  readonly separator?: string;
  readonly trust?: string;
  readonly source?: string;
  readonly same?: string;
  readonly rates?: string;
  readonly goodRows?: boolean;
  readonly keep?: boolean;
  readonly json?: boolean;
}

/**
 * `shelve`: a list of parts from elsewhere onto the user's own shelf. Shows what it would do; with `--keep` it does it, and
 * remembers the columns beside the shelf.
 */
export function shelveList(file: string, options: ShelveOptions, io: Io): ExitCode {
  const { onto } = options;
  const memoryFile = `${onto.replace(/\.(ya?ml|json)$/i, '')}.columns.yaml`;
  const choice = oneOf('--same', options.same, SAME_CHOICES);
  const shipped = io.shippedShelf();
  const ownText = readIfThere(onto, io);
  const own = ownText === undefined ? EMPTY_SHELF : mustRead(readShelf(ownText, onto, shipped));
  const memoryText = readIfThere(memoryFile, io);
  const memory = memoryText === undefined ? undefined : mustRead(readColumnsFile(memoryText, memoryFile));
  const known = { shipped, own: ownParts(own, shipped) };
  const preview = mustRead(readList(io.readText(file), file, wishesOf(options, io), memory, known));
  const all = new Set([...shipped.parts.keys(), ...own.parts.keys()]);
  const settled = settle(preview.parts, () => choice, all);
  const written = options.keep
    ? keep({ preview, settled, options, ownText, memory, memoryFile, shipped }, io)
    : [];
  const report: ShelveReport = { ...preview, settled, onto, written };
  io.writeOut(options.json ? `${JSON.stringify(report, null, 2)}\n` : shelveText(report, choice));
  return settled.bad.length > 0 && !options.goodRows ? exitCode.badInput : exitCode.fine;
}

interface ToKeep {
  readonly preview: ListPreview;
  readonly settled: Settled;
  readonly options: ShelveOptions;
  readonly ownText: string | undefined;
  readonly memory: ColumnsFile | undefined;
  readonly memoryFile: string;
  readonly shipped: Shelf;
}

function keep(
  { preview, settled, options, ownText, memory, memoryFile, shipped }: ToKeep,
  io: Io,
): readonly string[] {
  const { onto } = options;
  if (settled.bad.length > 0 && !options.goodRows) return [];
  if (settled.open.length > 0) {
    throw new BadInput(
      `${preview.table.file}: ${settled.open.length} parts are known already (${settled.open
        .slice(0, 3)
        .map(({ id }) => id)
        .join(', ')}). Say what to do with them: --same old, new or both. Nothing was written.`,
    );
  }
  const files: string[] = [];
  const write = (path: string, text: string) => {
    writeFile('--keep', path, text, io);
    files.push(path);
  };
  if (settled.taken.length > 0) {
    const text = ontoShelf(ownText, settled.taken);
    mustRead(readShelf(text, onto, shipped));
    write(onto, text);
  }
  const next = remembered(memory, preview.columns);
  write(memoryFile, yamlText({ format: COLUMNS_FORMAT, lists: next.lists }));
  return files;
}

function wishesOf(options: ShelveOptions, io: Io): ListWishes {
  const kind = oneOf('--kind', options.kind, PART_KINDS);
  const decimals = oneOf('--decimals', options.decimals, ['point', 'comma'] as const);
  const separator = oneOf('--separator', options.separator, ['comma', 'semicolon', 'tab', 'bar'] as const);
  const trust = oneOf('--trust', options.trust, TRUSTS);
  const { source, rates } = options;
  return {
    columns: Object.fromEntries(options.column.map(columnOption)),
    ...(kind === undefined ? {} : { kind }),
    ...(decimals === undefined ? {} : { decimals }),
    ...(separator === undefined ? {} : { separator }),
    ...(trust === undefined ? {} : { trust }),
    ...(source === undefined ? {} : { source }),
    ...(rates === undefined ? {} : { rates: mustRead(readRates(io.readText(rates), rates)) }),
  };
}

/** `Gewicht=mass in g`; `Gewicht=` leaves a column out. The last equals sign parts, as a name may hold one. */
function columnOption(text: string): readonly [name: string, use: string] {
  const at = text.lastIndexOf('=');
  if (at > 0) return [text.slice(0, at).trim(), text.slice(at + 1).trim()];
  throw new BadInput(
    `--column: "${text.slice(0, 60)}" does not read. Write NAME=FIELD in UNIT, such as "Weight=mass in g", or NAME= to leave a column out.`,
  );
}

function oneOf<T extends string>(
  option: string,
  text: string | undefined,
  allowed: readonly T[],
): T | undefined {
  if (text === undefined) return undefined;
  const found = allowed.find((each) => each === text);
  if (found !== undefined) return found;
  const near = nearestName(text, allowed);
  throw new BadInput(
    `${option}: "${text}" is not known. Allowed: ${allowed.join(', ')}.${near ? ` Did you mean "${near}"?` : ''}`,
  );
}

function ownParts(own: Shelf, shipped: Shelf) {
  return new Map(
    [...own.raw].filter(
      ([id, raw]) => shipped.raw.get(id) !== raw && (own.replaced.includes(id) || !shipped.parts.has(id)),
    ),
  );
}

const readIfThere = (path: string, io: Io): string | undefined =>
  io.machine?.exists(path) === true ? io.readText(path) : undefined;
