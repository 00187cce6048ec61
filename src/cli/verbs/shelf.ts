import type { Part } from '../../build/schema/part.ts';
import { PART_KINDS, type PartKind } from '../../build/schema/partKinds.ts';
import { yamlText } from '../../build/write/yamlText.ts';
import { factsOfPart } from '../../report/partFacts.ts';
import { nearestName } from '../../units/nearestName.ts';
import { loadShelf } from '../context.ts';
import { BadInput, type Io } from '../io.ts';
import { printTable } from '../print/table.ts';

export interface ShelfOptions {
  readonly shelf: readonly string[];
  readonly find?: string;
  readonly json?: boolean;
}

/** `shelf`: the parts known, of one kind or holding some words; one whole when its id is given. */
export function lookThroughShelf(what: string | undefined, options: ShelfOptions, io: Io): void {
  const shelf = loadShelf(options.shelf, io);
  const one = what === undefined ? undefined : shelf.parts.get(what);
  if (one !== undefined) {
    const raw = shelf.raw.get(one.id) ?? {};
    io.writeOut(options.json ? `${JSON.stringify(one, null, 2)}\n` : yamlText(raw));
    return;
  }
  const kind = what === undefined ? undefined : kindOption(what, [...shelf.parts.keys()]);
  const words = (options.find ?? '').toLowerCase().split(/\s+/).filter(Boolean);
  const parts = [...shelf.parts.values()].filter(
    (part) => (kind === undefined || part.kind === kind) && words.every((word) => matches(part, word)),
  );
  if (options.json) {
    io.writeOut(`${JSON.stringify(parts, null, 2)}\n`);
    return;
  }
  if (parts.length === 0) {
    io.writeOut('Nothing on the shelf matches.\n');
    return;
  }
  if (kind === undefined && words.length === 0) {
    const counts = PART_KINDS.map(
      (each) => [each, parts.filter((part) => part.kind === each).length] as const,
    );
    const rows = counts.filter(([, count]) => count > 0).map(([each, count]) => [each, String(count)]);
    io.writeOut(
      `${printTable(['kind', 'parts'], rows, ['left', 'right'])}\n\nquadwright shelf KIND lists them.\n`,
    );
    return;
  }
  const rows = parts.map((part) => [
    part.id,
    part.name,
    `${part.price.amount.toFixed(2)} ${part.price.currency}`,
    `${+(part.mass.value * 1000).toPrecision(3)} g`,
    factsOfPart(part),
    part.invented ? 'invented' : part.trust,
  ]);
  io.writeOut(
    `${printTable(['id', 'name', 'price', 'mass', 'facts', 'trust'], rows, ['left', 'left', 'right', 'right'])}\n`,
  );
}

function kindOption(text: string, ids: readonly string[]): PartKind {
  const found = PART_KINDS.find((kind) => kind === text);
  if (found !== undefined) return found;
  const near = nearestName(text, [...PART_KINDS, ...ids]);
  throw new BadInput(
    `shelf: "${text}" is neither a kind nor the id of a part. Kinds: ${PART_KINDS.join(', ')}.` +
      `${near ? ` Did you mean "${near}"?` : ''}`,
  );
}

function matches(part: Part, word: string): boolean {
  return `${part.id} ${part.name} ${part.kind} ${part.note ?? ''} ${factsOfPart(part)}`
    .toLowerCase()
    .includes(word);
}
