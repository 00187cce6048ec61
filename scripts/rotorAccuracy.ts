/**
 * How true the rotor is, against the UIUC Propeller Database (development half):
 *   npx tsx scripts/rotorAccuracy.ts [folder]
 * Errors by what is known of the propeller, by family and over the advance ratio; coverage of the bands with their spreads
 * scaled on other propellers than they are counted on.
 */
import { fileURLToPath } from 'node:url';
import { standardAtmosphere } from '../src/air/standardAtmosphere.ts';
import { interpolateLinear } from '../src/numerics/interpolate.ts';
import { rotorBand } from '../src/rotor/band.ts';
import { bladeFromNameplate, bladeFromTable } from '../src/rotor/blade.ts';
import { anchorBlade } from '../src/rotor/fitBlade.ts';
import { sectionTables } from '../src/rotor/sections.ts';
import { solveRotor } from '../src/rotor/solveRotor.ts';
import type { Blade } from '../src/rotor/types.ts';
import { readUiuc, type UiucPropeller, type UiucRow } from './uiuc/readUiuc.ts';

/** One forecast against one measurement; weights make propellers count alike. */
interface Score {
  readonly propeller: string;
  readonly family: string;
  readonly kind: 'static' | 'advancing';
  readonly weight: number;
  /** Advance ratio over pitch over diameter: about one where thrust ends; 0 at a standstill. */
  readonly advance: number;
  readonly thrustError: number;
  readonly powerError: number;
  /** Error over the band's half width. */
  readonly thrustReach: number;
  readonly powerReach: number;
}

const folder = process.argv[2] ?? fileURLToPath(new URL('../../shared/data/uiuc', import.meta.url));
const propellers = readUiuc(folder);
if (propellers === undefined) {
  console.error(`no data at ${folder}`);
  process.exit(2);
}
const sections = sectionTables();
const air = standardAtmosphere({ height: 220 }); // Urbana, Illinois

const chordAt75 = ({ shape, diameter }: UiucPropeller) =>
  shape && (interpolateLinear(0.75, shape.radiusRatio, shape.chordRatio) * diameter) / 2;

const cases: Record<string, (p: UiucPropeller) => Blade | undefined> = {
  'blade table': (p) => p.shape && bladeFromTable({ ...p, ...p.shape }),
  'blade table, no pitch': ({ shape, diameter, bladeCount }) =>
    shape && bladeFromTable({ diameter, bladeCount, ...shape }),
  nameplate: (p) => bladeFromNameplate(p),
  'nameplate + chord': (p) => {
    const chord = chordAt75(p);
    return chord === undefined ? undefined : bladeFromNameplate({ ...p, chordAt75: chord });
  },
  'blade table + point': (p) => p.shape && anchored(p, bladeFromTable({ ...p, ...p.shape })),
  'nameplate + point': (p) => anchored(p, bladeFromNameplate(p)),
};

/** Anchored on the middle of the still rows, as a thrust stand's owner would. */
function anchored(p: UiucPropeller, blade: Blade): Blade | undefined {
  const row = anchorRow(p);
  if (row === undefined) return undefined;
  const { angularSpeed } = row;
  const n = angularSpeed / (2 * Math.PI);
  const thrust = row.thrustCoefficient * air.density * n ** 2 * p.diameter ** 4;
  const power = row.powerCoefficient * air.density * n ** 3 * p.diameter ** 5;
  const fit = anchorBlade(blade, sections, { angularSpeed, thrust, power, air });
  return fit.ok ? fit.value : undefined;
}

function anchorRow(p: UiucPropeller): UiucRow | undefined {
  const sorted = [...p.still].sort((a, b) => a.angularSpeed - b.angularSpeed);
  return sorted[Math.floor(sorted.length / 2)];
}

function scoresOf(p: UiucPropeller, blade: Blade): Score[] {
  const skip = blade.anchored ? anchorRow(p) : undefined;
  return (['static', 'advancing'] as const).flatMap((kind) => {
    const rows = (kind === 'static' ? p.still : p.advancing).filter((row) => row !== skip);
    return rows.flatMap((row) => {
      const axialSpeed = (row.advanceRatio * row.angularSpeed * p.diameter) / (2 * Math.PI);
      const condition = { angularSpeed: row.angularSpeed, axialSpeed, air };
      const state = solveRotor(blade, sections, condition);
      if (!state.ok) throw new Error(`${p.name}: ${state.reason}`);
      const band = rotorBand(blade, sections, condition, state.value);
      if (!band.ok) throw new Error(`${p.name}: ${band.reason}`);
      const { thrustCoefficient, powerCoefficient } = state.value;
      const reach = (found: number, middle: number, [low, high]: readonly [number, number]) =>
        (found - middle) / ((high - low) / 2);
      return {
        propeller: p.name,
        family: p.family,
        kind,
        weight: 1 / rows.length,
        advance: (row.advanceRatio * p.diameter) / p.pitch,
        thrustError: thrustCoefficient / row.thrustCoefficient - 1,
        powerError: powerCoefficient / row.powerCoefficient - 1,
        thrustReach: reach(row.thrustCoefficient, thrustCoefficient, band.value.thrustCoefficient),
        powerReach: reach(row.powerCoefficient, powerCoefficient, band.value.powerCoefficient),
      };
    });
  });
}

/** Weighted quantile of values. */
function quantile(pairs: readonly (readonly [value: number, weight: number])[], q: number): number {
  const sorted = [...pairs].sort((a, b) => a[0] - b[0]);
  const total = sorted.reduce((sum, [, weight]) => sum + weight, 0);
  let run = 0;
  for (const [value, weight] of sorted) {
    run += weight;
    if (run >= q * total) return value;
  }
  return Number.NaN;
}

type Key = 'thrustError' | 'powerError' | 'thrustReach' | 'powerReach';
const sizes = (scores: readonly Score[], key: Key) =>
  scores.map((s) => [Math.abs(s[key]), s.weight] as const);
const percent = (value: number) => (100 * value).toFixed(value < 0.0995 ? 1 : 0);
const errorCell = (scores: readonly Score[], key: Key) =>
  scores.length === 0
    ? '-'
    : `${percent(quantile(sizes(scores, key), 0.5))} / ${percent(quantile(sizes(scores, key), 0.9))}`;
const share = (scores: readonly Score[], key: Key, limit: number) => {
  let inside = 0;
  let total = 0;
  for (const s of scores) {
    total += s.weight;
    if (Math.abs(s[key]) <= limit) inside += s.weight;
  }
  return inside / total;
};

/** Coverage with the band scaled to hold 80 % of four fifths of the propellers, counted on the fifth. */
function heldOut(scores: readonly Score[], key: Key): number {
  const names = [...new Set(scores.map((s) => s.propeller))];
  let inside = 0;
  let total = 0;
  for (let fold = 0; fold < 5; fold++) {
    const out = new Set(names.filter((_, i) => i % 5 === fold));
    const scale = quantile(
      sizes(
        scores.filter((s) => !out.has(s.propeller)),
        key,
      ),
      0.8,
    );
    for (const s of scores) {
      if (!out.has(s.propeller)) continue;
      total += s.weight;
      if (Math.abs(s[key]) <= scale) inside += s.weight;
    }
  }
  return inside / total;
}

const byCase = new Map<string, Score[]>();
for (const [name, make] of Object.entries(cases)) {
  byCase.set(
    name,
    propellers.flatMap((p) => {
      const blade = make(p);
      return blade === undefined ? [] : scoresOf(p, blade);
    }),
  );
}

const kinds = ['static', 'advancing'] as const;
const title = 'static C_T, static C_P, advancing C_T, advancing C_P';
console.log(`Absolute relative error [%], median / 90th, propellers counting alike: ${title}`);
for (const [name, scores] of byCase) {
  const cells = kinds.flatMap((kind) => {
    const some = scores.filter((s) => s.kind === kind);
    return [errorCell(some, 'thrustError'), errorCell(some, 'powerError')];
  });
  const count = new Set(scores.map((s) => s.propeller)).size;
  console.log(`  ${name.padEnd(22)}${cells.map((c) => c.padStart(12)).join('')}   (${count} propellers)`);
}
console.log(`\nMedian signed error [%]: ${title}`);
for (const [name, scores] of byCase) {
  const cells = kinds.flatMap((kind) =>
    (['thrustError', 'powerError'] as const).map((key) =>
      percent(
        quantile(
          scores.filter((s) => s.kind === kind).map((s) => [s[key], s.weight]),
          0.5,
        ),
      ),
    ),
  );
  console.log(`  ${name.padEnd(22)}${cells.map((c) => c.padStart(12)).join('')}`);
}
console.log(
  `\nShare of points inside the shown band [%] (and with the band scaled on other propellers): ${title}`,
);
for (const [name, scores] of byCase) {
  const cells = kinds.flatMap((kind) =>
    (['thrustReach', 'powerReach'] as const).map((key) => {
      const some = scores.filter((s) => s.kind === kind);
      return `${(100 * share(some, key, 1)).toFixed(0)} (${(100 * heldOut(some, key)).toFixed(0)}) x${quantile(sizes(some, key), 0.8).toFixed(2)}`;
    }),
  );
  console.log(`  ${name.padEnd(22)}${cells.map((c) => c.padStart(16)).join('')}`);
}
const split = ['nameplate', 'blade table', 'blade table + point'];
for (const name of split) {
  const scores = byCase.get(name) ?? [];
  console.log(`\nMedian / 90th by family, ${name}: ${title}`);
  for (const family of [...new Set(scores.map((s) => s.family))].sort()) {
    const own = scores.filter((s) => s.family === family);
    const count = new Set(own.map((s) => s.propeller)).size;
    const cells = kinds.flatMap((kind) => {
      const some = own.filter((s) => s.kind === kind);
      return [errorCell(some, 'thrustError'), errorCell(some, 'powerError')];
    });
    console.log(
      `  ${family.padEnd(10)}${String(count).padStart(3)}${cells.map((c) => c.padStart(14)).join('')}`,
    );
  }
}
/** Lower ends of stretches of J over P/D; the last is open. */
const STRETCHES = [0, 0.2, 0.4, 0.6, 0.8];
for (const name of split) {
  const scores = byCase.get(name) ?? [];
  console.log(`\nMedian / 90th over J, ${name}: C_T, C_P, points`);
  const row = (label: string, some: readonly Score[]) =>
    console.log(
      `  ${label.padEnd(22)}${errorCell(some, 'thrustError').padStart(14)}${errorCell(some, 'powerError').padStart(14)}${String(some.length).padStart(7)}`,
    );
  row(
    'standing still',
    scores.filter(({ kind }) => kind === 'static'),
  );
  STRETCHES.forEach((from, i) => {
    const to = STRETCHES[i + 1] ?? Number.POSITIVE_INFINITY;
    row(
      Number.isFinite(to) ? `J ${from} to ${to} of P/D` : `J over ${from} of P/D`,
      scores.filter(({ kind, advance }) => kind === 'advancing' && advance >= from && advance < to),
    );
  });
}
