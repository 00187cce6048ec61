import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tradeFigures } from './tradeFacts.ts';

/** Draws docs/method/figures/ anew: npx tsx scripts/figures.ts. A test says when they are stale. */
const folder = new URL('../docs/method/figures/', import.meta.url);
const css = readFileSync(new URL('../src/report/drawing.css', import.meta.url), 'utf8');
mkdirSync(folder, { recursive: true });
const figures = tradeFigures(css);
for (const [name, svg] of figures) writeFileSync(new URL(name, folder), svg);
console.log(`${figures.size} figures drawn`);
