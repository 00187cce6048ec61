import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
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

interface Schema {
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly const?: string;
}

const schemaOf = (name: string): Schema =>
  JSON.parse(readFileSync(new URL(`../../schema/${name}.schema.json`, import.meta.url), 'utf8'));

/** What may stand for any quantity: told once on the page. */
const ANY_QUANTITY = ['value', 'spread', 'trust', 'source'];

function namesIn(schema: Schema): readonly string[] {
  const { properties = {}, items, anyOf = [], oneOf = [] } = schema;
  const own = Object.keys(properties);
  const quantity = own.includes('value') && own.every((name) => ANY_QUANTITY.includes(name));
  return [
    ...(quantity ? [] : own.flatMap((name) => [name, ...namesIn(properties[name] ?? {})])),
    ...[...anyOf, ...oneOf, ...(items ? [items] : [])].flatMap(namesIn),
  ];
}

const rowOf = (name: string): string =>
  page.slice(page.indexOf('## Every field')).match(new RegExp(`^\\| ${name} \\|.*$`, 'm'))?.[0] ?? '';
const wordsOf = (text: string): readonly string[] => text.match(/[A-Za-z0-9]+/g) ?? [];

describe('docs/files.md names every field of the schemas', () => {
  test.each(['build', 'brief'])('of a %s', (name) => {
    const missing = namesIn(schemaOf(name)).filter((field) => !wordsOf(rowOf(name)).includes(field));
    expect(missing).toEqual([]);
  });

  test('of every kind of part', () => {
    const kinds = schemaOf('shelf').properties?.parts?.items?.oneOf ?? [];
    expect(kinds.length).toBeGreaterThan(20);
    const common = wordsOf(page.match(/^Of every part: .*$/m)?.[0] ?? '');
    for (const kind of kinds) {
      const name = kind.properties?.kind?.const ?? '';
      const words = [...common, ...wordsOf(rowOf(name))];
      expect(
        namesIn(kind).filter((field) => !words.includes(field)),
        name,
      ).toEqual([]);
    }
  });
});
