import type { Brief } from '../../build/schema/brief.ts';
import type { Build } from '../../build/schema/build.ts';
import type { Part } from '../../build/schema/part.ts';
import type { Shelf } from '../../build/shelf.ts';
import type { Drive } from './ownPartProtocol.ts';
import { openWorkshop } from './workshop.ts';

const MORE = 1.05;
/** Under this share of a measure a value does not drive it. */
const FELT = 0.002;
const TOLD = 3;

/**
 * What the values of a part drive in a build: each of them is made 5 % more, and the measures that move most are
 * named. Asked of the craft itself, since what a value drives hangs on the rest of it.
 */
export function drivesOf(
  shelf: Shelf,
  raw: Readonly<Record<string, unknown>>,
  build: Build,
  brief: Brief,
): readonly Drive[] {
  const id = String(raw.id);
  const part = shelf.parts.get(id);
  if (part === undefined) return [];
  const parts = new Map(shelf.parts);
  const workshop = openWorkshop({ ...shelf, parts });
  const before = workshop.figures(build, brief);
  return valuesOf(part, raw).flatMap(({ path, value }, i): readonly Drive[] => {
    // Another id each time: a workshop keeps what it has made ready for one.
    const other = `${id.slice(0, 50)}-more-${i}`;
    parts.set(other, { ...changed(part, path, value), id: other });
    // The text of a build names its parts: all that was this one becomes the other.
    const swapped: Build = JSON.parse(JSON.stringify(build).replaceAll(`"${id}"`, `"${other}"`));
    const moved = workshop.figures(swapped, brief).flatMap((after) => {
      const was = before.find((each) => each.id === after.id);
      const size =
        was === undefined ? 0 : Math.abs(after.value - was.value) / Math.max(Math.abs(was.value), 1e-12);
      return size > FELT ? [{ label: after.label, size }] : [];
    });
    const moves = moved.toSorted((a, b) => b.size - a.size).slice(0, TOLD);
    return [{ path: path.join('.'), moves: moves.map(({ label }) => label) }];
  });
}

/** The numbers that its file tells, each 5 % more. */
function valuesOf(part: Part, raw: Readonly<Record<string, unknown>>) {
  return Object.keys(raw).flatMap((key) => {
    const value = (part as unknown as Readonly<Record<string, unknown>>)[key];
    if (isGiven(value)) return [{ path: [key], value: { ...value, value: value.value * MORE } as unknown }];
    if (key === 'price' && typeof value === 'object' && value !== null && 'amount' in value)
      return [{ path: [key], value: { ...value, amount: Number(value.amount) * MORE } as unknown }];
    if (key === 'size' && part.kind === 'propeller') {
      const { diameter, pitch } = part.size;
      return [
        { path: [key, 'diameter'], value: (diameter * MORE) as unknown },
        { path: [key, 'pitch'], value: (pitch * MORE) as unknown },
      ];
    }
    return [];
  });
}

const isGiven = (value: unknown): value is { readonly value: number } =>
  typeof value === 'object' && value !== null && 'value' in value && typeof value.value === 'number';

function changed(part: Part, path: readonly string[], value: unknown): Part {
  const [head = '', next] = path;
  const group = (part as unknown as Readonly<Record<string, unknown>>)[head];
  const filled = next === undefined ? value : { ...(group as object), [next]: value };
  return { ...part, [head]: filled } as Part;
}
