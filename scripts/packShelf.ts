// Packs the shipped shelf beside the built command line: reading its YAML anew takes longer than an assessment.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileErrorText } from '../src/build/read/fileError.ts';
import { packRotors } from '../src/build/read/packedRotors.ts';
import { packShelf } from '../src/build/read/packedShelf.ts';
import { readShelf } from '../src/build/read/readShelf.ts';
import { EMPTY_SHELF } from '../src/build/shelf.ts';

let shelf = EMPTY_SHELF;
for (const name of readdirSync('shelf').sort()) {
  if (!name.endsWith('.yaml')) continue;
  const file = `shelf/${name}`;
  const reading = readShelf(readFileSync(file, 'utf8'), file, shelf);
  if (!reading.ok) {
    console.error(reading.errors.map(fileErrorText).join('\n'));
    process.exit(1);
  }
  shelf = reading.value;
}
mkdirSync('dist/cli', { recursive: true });
writeFileSync('dist/cli/shelf.json', packShelf(shelf));
writeFileSync('dist/cli/rotors.json', packRotors(shelf));
console.log(`${shelf.parts.size} parts packed`);
