import { z } from 'zod';
import { nearestName } from '../../units/nearestName.ts';
import { PART_SCHEMAS, type Part } from '../schema/part.ts';
import { PART_KINDS } from '../schema/partKinds.ts';
import { SHELF_FORMAT, shelfFile } from '../schema/shelfFile.ts';
import { shown } from '../schema/shown.ts';
import { EMPTY_SHELF, type Shelf } from '../shelf.ts';
import { baseOn } from './baseOn.ts';
import { check } from './check.ts';
import { type FileError, failed, type Path, pathText, type Reading } from './fileError.ts';
import { readKind } from './readKind.ts';

/** The file's own fields; its parts are checked one by one, each against the schema of its kind. */
const envelope = shelfFile.extend({ parts: z.array(z.unknown()).max(2000) });

/**
 * Reads a shelf from YAML or JSON text and lays it over another: a part with the same id replaces the
 * one below, and `replaced` tells which. A part may be based on one of either.
 */
export function readShelf(text: string, file: string, under: Shelf = EMPTY_SHELF): Reading<Shelf> {
  const parsed = readKind(text, file, SHELF_FORMAT);
  if (!parsed.ok) return parsed;
  const { data, placeOf } = parsed.value;
  const outer = check(envelope, data, parsed.value, file);
  if (outer.value === undefined) return failed(outer.errors);

  const errors: FileError[] = [];
  const complain = (path: Path, says: string, found: string, allowed: string, remedy: string) =>
    errors.push({ file, ...placeOf(path), path: pathText(path), says, found, allowed, remedy });

  const own = new Map<string, OwnPart>();
  for (const [index, raw] of outer.value.parts.entries()) {
    const path = ['parts', index];
    if (!isRecord(raw)) {
      complain(
        path,
        `${shown(raw)} is not a part`,
        shown(raw),
        'a group of fields',
        'Give id, kind, name, price, mass.',
      );
      continue;
    }
    const id = typeof raw.id === 'string' ? raw.id : `(part ${index + 1})`;
    const earlier = own.get(id);
    if (earlier) {
      const line = placeOf(earlier.path).line;
      complain(
        [...path, 'id'],
        `a part with this id stands in line ${line} already`,
        shown(id),
        'each id once',
        'Rename one.',
      );
      continue;
    }
    own.set(id, { raw, path });
  }

  const parts = new Map(under.parts);
  const rawParts = new Map(under.raw);
  const replaced: string[] = [];
  for (const [id, { raw, path }] of own) {
    const based = baseOn(id, (wanted) => own.get(wanted)?.raw ?? under.raw.get(wanted));
    if (!based.ok) {
      const known = [...own.keys(), ...under.raw.keys()];
      const near = based.missing === undefined ? undefined : nearestName(based.missing, known);
      const remedy = near ? `Did you mean "${near}"?` : based.remedy;
      complain(
        [...path, 'basedOn'],
        based.says,
        shown(raw.basedOn),
        'the id of another part of the same kind',
        remedy,
      );
      continue;
    }
    const kind = PART_KINDS.find((known) => known === based.value.kind);
    if (!kind) {
      const found = based.value.kind;
      const says = found === undefined ? 'is missing' : `${shown(found)} is not a kind of part`;
      const near = typeof found === 'string' ? nearestName(found, PART_KINDS) : undefined;
      const remedy = near ? `Did you mean "${near}"?` : 'Say what kind of part it is.';
      complain([...path, 'kind'], says, shown(found), `one of ${PART_KINDS.join(', ')}`, remedy);
      continue;
    }
    const schema: z.ZodType<Part> = PART_SCHEMAS[kind];
    const checked = check(schema, based.value, parsed.value, file, path);
    errors.push(...checked.errors);
    if (checked.value === undefined) continue;
    if (parts.has(id)) replaced.push(id);
    parts.set(id, checked.value);
    rawParts.set(id, based.value);
  }
  return errors.length > 0 ? failed(errors) : { ok: true, value: { parts, raw: rawParts, replaced } };
}

interface OwnPart {
  readonly raw: Readonly<Record<string, unknown>>;
  readonly path: Path;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
