import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { jsonSchemas } from '../src/build/schema/jsonSchema.ts';

/** Writes the published JSON Schemas to schema/; with --check only says whether they are current. */
const folder = new URL('../schema/', import.meta.url);
const check = process.argv.includes('--check');
const stale: string[] = [];
mkdirSync(folder, { recursive: true });
for (const [name, schema] of Object.entries(jsonSchemas())) {
  const text = `${JSON.stringify(schema, null, 2)}\n`;
  const file = new URL(name, folder);
  if (!check) writeFileSync(file, text);
  else if (current(file) !== text) stale.push(name);
}
if (stale.length > 0) {
  console.error(`schema/ is stale: ${stale.join(', ')}. Run: npx tsx scripts/writeSchemas.ts`);
  process.exitCode = 1;
}

function current(file: URL): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
}
