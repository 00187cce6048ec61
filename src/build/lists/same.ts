import type { Part } from '../schema/part.ts';
import type { Known, ListedPart, Same } from './listedPart.ts';

/** Whether a part is known by the id its row told, or by its kind and name whatever the case and spaces. */
export function sameAs(
  part: Part,
  raw: Readonly<Record<string, unknown>>,
  id: string | undefined,
  { own, shipped }: Known,
  earlier: readonly ListedPart[],
): Same | undefined {
  const { kind } = part;
  const called = (other: string, otherKind: unknown, otherName: unknown): boolean =>
    other === id || (otherKind === kind && plainName(otherName) === plainName(part.name));
  const above = earlier.find((each) => each.part !== undefined && called(each.id, each.part.kind, each.name));
  if (above !== undefined) {
    return {
      where: 'list',
      id: above.id,
      line: above.line,
      unchanged: equal(above.raw, { ...raw, id: above.id }),
    };
  }
  for (const [other, fields] of own) {
    if (called(other, fields.kind, fields.name)) {
      return { where: 'own shelf', id: other, unchanged: equal(fields, { ...raw, id: other }) };
    }
  }
  for (const [other, known] of shipped.parts) {
    if (called(other, known.kind, known.name)) return { where: 'shipped shelf', id: other, unchanged: false };
  }
  return undefined;
}

const plainName = (name: unknown): string => String(name).toLowerCase().replace(/\s+/g, ' ').trim();

/** Equal whatever the order of the fields. */
function equal(a: unknown, b: unknown): boolean {
  return JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, each]) => [key, sorted(each)]),
  );
}
