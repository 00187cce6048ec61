// A plugin of the page's build: the shelf and the demo that ship with it, read by the program's own readers when the
// page is built, so that a first visit needs neither the readers nor their checker.
import { readdirSync, readFileSync } from 'node:fs';
import type { Plugin } from 'vite';
import { type FileError, fileErrorText, type Reading } from '../src/build/read/fileError.ts';
import { readBrief, readBuild } from '../src/build/read/readBuild.ts';
import { readShelf } from '../src/build/read/readShelf.ts';
import { EMPTY_SHELF, type Shelf } from '../src/build/shelf.ts';

const NAME = 'virtual:shipped';
const SHELF = 'shelf';
const DEMO = 'demo/first-freestyle';

export function shippedFiles(): Plugin {
  return {
    name: 'shipped-files',
    resolveId: (id) => (id === NAME ? `\0${NAME}` : undefined),
    load(id) {
      if (id !== `\0${NAME}`) return undefined;
      for (const folder of [SHELF, DEMO])
        for (const name of yamlIn(folder)) this.addWatchFile(`${folder}/${name}`);
      return `export default ${JSON.stringify(JSON.stringify(shipped()))};`;
    },
  };
}

function shipped() {
  let shelf: Shelf = EMPTY_SHELF;
  for (const name of yamlIn(SHELF)) shelf = taken(readShelf(text(SHELF, name), name, shelf));
  const builds = yamlIn(DEMO)
    .filter((name) => name !== 'brief.yaml')
    .map((name) => ({
      id: name.replace(/\.yaml$/, ''),
      build: taken(readBuild(text(DEMO, name), name)).build,
    }));
  return {
    parts: [...shelf.parts.values()],
    brief: taken(readBrief(text(DEMO, 'brief.yaml'), 'brief.yaml')),
    builds,
  };
}

const yamlIn = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort();

const text = (folder: string, name: string): string => readFileSync(`${folder}/${name}`, 'utf8');

function taken<T>(reading: Reading<T>): T {
  if (reading.ok) return reading.value;
  throw new Error(reading.errors.map((error: FileError) => fileErrorText(error)).join('\n'));
}
