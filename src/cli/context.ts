import type { CraftRotor } from '../build/craft.ts';
import { type BuildFile, readBrief, readBuild } from '../build/read/readBuild.ts';
import { readShelf } from '../build/read/readShelf.ts';
import type { Brief } from '../build/schema/brief.ts';
import { BRIEF_FORMAT, PURPOSES, type Purpose } from '../build/schema/brief.ts';
import type { Shelf } from '../build/shelf.ts';
import { nearestName } from '../units/nearestName.ts';
import { mustRead } from './files.ts';
import { BadInput, type Io } from './io.ts';

/** The shipped shelf with the user's own files laid over it, the last on top. */
export function loadShelf(own: readonly string[], io: Io): Shelf {
  let shelf = io.shippedShelf();
  for (const file of own) {
    shelf = mustRead(readShelf(io.readText(file), file, shelf));
    if (shelf.replaced.length > 0) {
      io.writeError(`${file}: lies over the shipped ${shelf.replaced.join(', ')}\n`);
    }
  }
  return shelf;
}

/** Blades matched beforehand; none with shelves of the user's own, whose parts may stand in for them. */
export function loadBlades(own: readonly string[], io: Io): ReadonlyMap<string, CraftRotor> {
  return own.length === 0 ? io.shippedRotors() : new Map();
}

export function loadBuild(file: string, io: Io): BuildFile {
  return mustRead(readBuild(io.readText(file), file));
}

/** The brief of a file, or a plain one for a purpose where none is given. */
export function loadBrief(file: string | undefined, purpose: string | undefined, io: Io): Brief {
  if (file !== undefined) {
    if (purpose !== undefined)
      throw new BadInput('--for: a brief tells its purpose itself. Give one of the two.');
    return mustRead(readBrief(io.readText(file), file));
  }
  const wanted = purposeOption(purpose ?? 'freestyle');
  const text = JSON.stringify({
    format: BRIEF_FORMAT,
    name: `${wanted}, calm day at sea level`,
    purpose: wanted,
  });
  return mustRead(readBrief(text, 'plain brief'));
}

function purposeOption(text: string): Purpose {
  const found = PURPOSES.find((purpose) => purpose === text);
  if (found !== undefined) return found;
  const near = nearestName(text, PURPOSES);
  throw new BadInput(
    `--for: "${text}" is not a purpose. Allowed: ${PURPOSES.join(', ')}.${near ? ` Did you mean "${near}"?` : ''}`,
  );
}
