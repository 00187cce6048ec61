import { briefData } from '../../build/write/briefData.ts';
import { buildData } from '../../build/write/buildData.ts';
import { yamlText } from '../../build/write/yamlText.ts';
import { openList } from '../lists/list.ts';
import { useAnswers } from '../state/answers.ts';
import { addBuild, rethink, useDesk } from '../state/desk.ts';
import { tell } from '../state/notices.ts';
import { takeShelf, theWorkers } from '../state/work.ts';

/** Hands a file to the browser to save; it never leaves the machine. */
export function saveFile(name: string, content: string | Blob, type = 'text/plain'): void {
  const address = URL.createObjectURL(content instanceof Blob ? content : new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export function exportBuild(id: string): void {
  const build = useDesk.getState().builds[id];
  if (build) saveFile(`${id}.yaml`, yamlText(buildData(build)), 'application/yaml');
}

export function exportBrief(): void {
  const { brief } = useDesk.getState();
  if (brief) saveFile('brief.yaml', yamlText(briefData(brief)), 'application/yaml');
}

export function exportShelf(): void {
  const { ownShelf } = useAnswers.getState();
  if (ownShelf !== undefined) saveFile('shelf.yaml', ownShelf, 'application/yaml');
}

/** A file larger than the reader takes is not even opened [bytes]. */
const LARGEST = 2 * 1024 * 1024;

/** Reads files that a user gave: builds are added, a brief takes the place of the old one, parts are laid on the shelf; a list is shown first. */
export async function importFiles(files: Iterable<File>): Promise<void> {
  const done: string[] = [];
  const refused: string[] = [];
  for (const file of files) {
    if (file.size > LARGEST) {
      refused.push(
        `${file.name}: ${Math.ceil(file.size / 1024)} kB is too large for a build, a brief or a shelf.`,
      );
      continue;
    }
    if (/\.(csv|tsv|txt)$/i.test(file.name)) {
      openList(file.name, await file.text());
      continue;
    }
    const read = await theWorkers().quick.read(await file.text(), file.name);
    switch (read.is) {
      case 'build':
        addBuild(read.build);
        done.push(`${read.build.name}, from ${file.name}`);
        break;
      case 'brief':
        rethink(() => read.brief);
        done.push(`the brief ${read.brief.name}, from ${file.name}`);
        break;
      case 'shelf': {
        const reasons = await takeShelf(read.text);
        if (reasons.length > 0) refused.push(...reasons);
        else done.push(`your parts, from ${file.name}`);
        break;
      }
      case 'list':
        openList(file.name, await file.text());
        break;
      case 'unreadable':
        refused.push(...read.reasons);
    }
  }
  if (refused.length > 0) tell('import', 'Not taken; nothing on the desk has changed by it:', refused);
  if (done.length > 0) tell('imported', `On the desk now: ${done.join('; ')}.`);
}
