import type { CraftRotor } from '../craft.ts';
import { rotorFacts } from '../infer/rotorFacts.ts';
import { partsOf, type Shelf } from '../shelf.ts';

/**
 * The propellers of a shelf that carry measured points, with their blades matched to them, as JSON text:
 * the matching takes longer than everything else of an assessment, and the shipped shelf does not change.
 */
export function packRotors(shelf: Shelf): string {
  const fitted = partsOf(shelf, 'propeller').filter((part) => part.measured.length > 0);
  return JSON.stringify(fitted.map(rotorFacts), (_, value: unknown) =>
    value instanceof Float64Array ? { numbers: [...value] } : value,
  );
}

/** What `packRotors` wrote, by part id, for `resolveBuild`. Trusts its text; holds for that very shelf only. */
export function unpackRotors(text: string): ReadonlyMap<string, CraftRotor> {
  const packed: readonly CraftRotor[] = JSON.parse(text, (_, value: unknown) =>
    typeof value === 'object' && value !== null && 'numbers' in value && Array.isArray(value.numbers)
      ? Float64Array.from(value.numbers)
      : value,
  );
  return new Map(packed.map((rotor) => [rotor.partId, rotor]));
}
