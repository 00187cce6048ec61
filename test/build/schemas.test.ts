import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { jsonSchemas } from '../../src/build/schema/jsonSchema.ts';
import { PART_SCHEMAS } from '../../src/build/schema/part.ts';
import { PART_KINDS } from '../../src/build/schema/partKinds.ts';

test.each(Object.entries(jsonSchemas()))('schema/%s is current', (name, schema) => {
  const written = readFileSync(new URL(`../../schema/${name}`, import.meta.url), 'utf8');
  expect(JSON.parse(written)).toEqual(JSON.parse(JSON.stringify(schema)));
});

test('every kind of part has its schema, and says its own kind', () => {
  expect(Object.keys(PART_SCHEMAS).sort()).toEqual([...PART_KINDS].sort());
  for (const kind of PART_KINDS) expect(PART_SCHEMAS[kind].shape.kind.value).toBe(kind);
});
