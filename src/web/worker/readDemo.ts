import { type FileError, fileErrorText, type Reading } from '../../build/read/fileError.ts';
import { readBrief, readBuild } from '../../build/read/readBuild.ts';
import { readShelf } from '../../build/read/readShelf.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import { EMPTY_SHELF, type Shelf } from '../../build/shelf.ts';

interface Demo {
  readonly shelf: Shelf;
  readonly brief: Brief;
  readonly builds: readonly { readonly id: string; readonly build: Build }[];
}

type Texts = Readonly<Record<string, string>>;

const SHELF: Texts = import.meta.glob('../../../shelf/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});
const DEMO: Texts = import.meta.glob('../../../demo/first-freestyle/*.yaml', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/**
 * Reads the files that ship with the page, by the same readers as the command line. They are built
 * in as text: one source, and what is wrong in them is told with file and line.
 *
 * @throws Error with every fault in words
 */
export function readDemo(): Demo {
  let shelf: Shelf = EMPTY_SHELF;
  for (const [path, text] of Object.entries(SHELF)) shelf = taken(readShelf(text, nameOf(path), shelf));
  const builds: { id: string; build: Build }[] = [];
  let brief: Brief | undefined;
  for (const [path, text] of Object.entries(DEMO)) {
    const id = nameOf(path).replace(/\.yaml$/, '');
    if (id === 'brief') brief = taken(readBrief(text, nameOf(path)));
    else builds.push({ id, build: taken(readBuild(text, nameOf(path))).build });
  }
  if (brief === undefined) throw new Error('the demo has no brief.yaml');
  return { shelf, brief, builds };
}

const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1);

function taken<T>(reading: Reading<T>): T {
  if (reading.ok) return reading.value;
  throw new Error(reading.errors.map((error: FileError) => fileErrorText(error)).join('\n'));
}
