/**
 * Makes the section tables from XFOIL (Drela 1989; a Debian package) and a C compiler:
 *   npx tsx scripts/polars/makePolars.ts [section] [n_crit] [output]
 * Without arguments it rewrites src/rotor/sections.generated.ts.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildTrapShim, type PolarPoint, sweep } from './runXfoil.ts';
import { smoothPolars } from './smoothPolars.ts';

const [section = '4407', criticalN = '9', output = 'src/rotor/sections.generated.ts'] = process.argv.slice(2);
const REYNOLDS_FIRST = 20_000;
const ROWS = 10; // each sqrt(2) above the one before: 20k to 453k
const reynolds = Array.from({ length: ROWS }, (_, row) => REYNOLDS_FIRST * 2 ** (row / 2));

const folder = mkdtempSync(join(tmpdir(), 'polars-'));
const library = buildTrapShim(folder);
const started = 3; // [deg] both sweeps leave from here, where every Reynolds number converges
const raw: PolarPoint[][] = [];
for (const value of reynolds) {
  const sweeps = await Promise.all(
    [140, 180].flatMap((panels) => [
      sweep(library, section, Math.round(value), Number(criticalN), [started, 19, 0.25], panels),
      sweep(library, section, Math.round(value), Number(criticalN), [started - 0.25, -10, -0.25], panels),
    ]),
  );
  raw.push(sweeps.flat());
  console.log(`Re ${Math.round(value)}: ${sweeps.map((points) => points.length).join(' ')} points`);
}
rmSync(folder, { recursive: true, force: true });

const table = smoothPolars(raw, reynolds);
const numbers = (values: readonly number[], digits: number) =>
  `[${values.map((value) => Number(value.toFixed(digits))).join(',')}]`;
writeFileSync(
  output,
  `// Made by scripts/polars/makePolars.ts from XFOIL: NACA ${section}, n_crit ${criticalN}. Don't edit.
export const sectionPolars = {
  section: 'NACA ${section}',
  criticalN: ${criticalN},
  angleFirst: ${table.angleFirst},
  angleStep: ${table.angleStep},
  reynoldsFirst: ${REYNOLDS_FIRST},
  rowsPerOctave: 2,
  lift: [
${table.lift.map((row) => `    ${numbers(row, 3)}`).join(',\n')},
  ],
  drag: [
${table.drag.map((row) => `    ${numbers(row, 4)}`).join(',\n')},
  ],
} as const;
`,
);
console.log(`wrote ${output}`);
