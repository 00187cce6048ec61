import { describe, expect, it } from 'vitest';
import { assessCraft } from '../../src/assess/assess.ts';
import { restate } from '../../src/units/restate.ts';
import { shippedShelf } from '../build/shippedShelf.ts';
import { contextOf, DEMOS, type Demo } from './parts/crafts.ts';

/** In SI, NIST SP 811 (2008) appendix B; temperatures apart. */
const FACTORS: Readonly<Record<string, number>> = {
  mm: 1e-3,
  m: 1,
  km: 1e3,
  g: 1e-3,
  kg: 1,
  'm/s': 1,
  in: 0.0254,
  ft: 0.3048,
  mi: 1609.344,
  oz: 0.028349523125,
  lb: 0.45359237,
  mph: 0.44704,
};
const MARKED = /(-?[\d.]+(?: to -?[\d.]+)?)\u00a0(mm|km|m\/s|m|kg|g|degC|in|ft|mi|oz|lb|mph|degF)(?![\w/])/g;
const UNMARKED = /\d (mm|cm|m|km|kg|g|m\/s|degC)(?![\w/])/;

/** Rules whose sentences are about sizes that parts go by, and those that quote the law. */
const BY_NAME = [
  'arm-thickness',
  'camera-width',
  'main-wire',
  'mass-class',
  'mass-threshold-near',
  'motor-hole-circle',
  'motor-screw-into-winding',
  'motor-screw-short',
  'motor-screw-thread',
  'motor-screws-at-hand',
  'pads-over-carbon',
  'propeller-bore',
  'recording-camera-mount',
  'stack-one-pattern',
  'stack-pattern',
  'strap-count',
  'strap-length',
  'strap-width',
];
/** Most of what is said comes with the quick tier; these have what only the full one tells. */
const WHOLE: readonly Demo[] = ['first-freestyle/kittiwake', 'cruiser/curlew'];

const inSI = (number: number, unit: string): number =>
  unit === 'degC'
    ? number
    : unit === 'degF'
      ? ((number - 32) * 5) / 9
      : number * (FACTORS[unit] ?? Number.NaN);
/** Half of the last place that a number shows [its unit]. */
const half = (number: string): number => 0.5 * 10 ** -(number.split('.')[1]?.length ?? 0);

const assessed = DEMOS.map((name) => {
  const { craft, flight: _, ...context } = contextOf(name);
  return assessCraft(craft, { ...context, tier: WHOLE.includes(name) ? 'full' : 'quick' });
});
const findings = assessed.flatMap((each) => [...each.findings, ...each.fit]);
const sentences = [
  ...findings.flatMap(({ says, remedy }) => [says, remedy]),
  ...assessed.flatMap(({ measures }) => measures.flatMap(({ label, how }) => [label, how])),
];

describe('sentences of the demo builds in imperial units', () => {
  it('hold quantities to turn', () => {
    const units = new Set(sentences.flatMap((text) => [...text.matchAll(MARKED)].map(([, , unit]) => unit)));
    for (const unit of ['mm', 'g', 'm/s', 'degC', 'm']) expect(units.has(unit), unit).toBe(true);
  });

  it('change in their quantities alone, and those turn back to what they were', () => {
    for (const text of sentences) {
      const told = restate(text, { system: 'imperial' });
      expect(told.replaceAll(MARKED, '#')).toBe(text.replaceAll(MARKED, '#'));
      const [was, now] = [text, told].map((each) => [...each.matchAll(MARKED)]);
      for (const [i, [, numbers, unit]] of was!.entries()) {
        const [, turned, other] = now![i]!;
        expect(['in', 'ft', 'mi', 'oz', 'lb', 'mph', 'degF'], told).toContain(other);
        const ends = turned!.split(' to ');
        for (const [k, number] of numbers!.split(' to ').entries()) {
          const back = inSI(Number(ends[k]), other!);
          // Whole numbers in tens and hundreds: two digits are kept at least.
          const step = Math.max(
            inSI(half(ends[k]!), other!) - inSI(0, other!),
            /\.|degF/.test(ends[k]! + other) ? 0 : 0.05 * Math.abs(back),
          );
          expect(Math.abs(back - inSI(Number(number), unit!)), told).toBeLessThanOrEqual(step * 1.0001);
        }
      }
    }
  });

  it('mark every quantity that is no name, no size a part is sold by and no limit of a law', () => {
    for (const { id, sheet, says, remedy } of findings.map((each) => ({ sheet: 'fit', ...each }))) {
      if (sheet === 'fit' && BY_NAME.includes(id)) continue;
      // What a change of the frame is called.
      const told = `${says} ${remedy}`.replaceAll(/[Aa]rms \d mm (thicker|wider|shorter)/g, '');
      expect(told, id).not.toMatch(UNMARKED);
    }
    for (const { label, how } of assessed.flatMap(({ measures }) => measures))
      expect(`${label} ${how}`).not.toMatch(UNMARKED);
  });

  it('never turn a name: none on the shelf has the space of a quantity', () => {
    for (const { name } of shippedShelf().parts.values()) expect(name).not.toContain('\u00a0');
  });
});
