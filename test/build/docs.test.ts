import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fileErrorText, type Reading } from '../../src/build/read/fileError.ts';
import { readBrief, readBuild } from '../../src/build/read/readBuild.ts';
import { readShelf } from '../../src/build/read/readShelf.ts';

const page = readFileSync(new URL('../../docs/files.md', import.meta.url), 'utf8');
const examples = [...page.matchAll(/```yaml\n(format: quadwright-(\w+)-1\n[\s\S]*?)```/g)].map(
  ([, text, kind]) => ({ text: text ?? '', kind: kind ?? '' }),
);

test('docs/files.md holds an example of each format', () => {
  expect(examples.map(({ kind }) => kind)).toEqual(['shelf', 'build', 'brief']);
});

test.each(examples)('the $kind in docs/files.md reads', ({ text, kind }) => {
  const readers: Record<string, (text: string, file: string) => Reading<unknown>> = {
    shelf: readShelf,
    build: readBuild,
    brief: readBrief,
  };
  const read = readers[kind]?.(text, 'docs/files.md');
  expect(read?.ok ? [] : read?.errors.map(fileErrorText)).toEqual([]);
});
