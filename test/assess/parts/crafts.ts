import { readFileSync } from 'node:fs';
import type { PartContext } from '../../../src/assess/parts/types.ts';
import { prepareFlight } from '../../../src/assess/prepareFlight.ts';
import type { Craft } from '../../../src/build/craft.ts';
import { readBrief, readBuild } from '../../../src/build/read/readBuild.ts';
import { resolveBuild } from '../../../src/build/resolve/resolveBuild.ts';
import type { Brief } from '../../../src/build/schema/brief.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import type { Part, PartOf } from '../../../src/build/schema/part.ts';
import type { Shelf } from '../../../src/build/shelf.ts';
import { sectionTables } from '../../../src/rotor/sections.ts';
import { shippedShelf } from '../../build/shippedShelf.ts';

export const DEMOS = [
  'first-freestyle/turnstone',
  'first-freestyle/bonxie',
  'first-freestyle/kittiwake',
  'first-freestyle/redshank',
  'first-freestyle/tystie',
  'first-freestyle/whimbrel',
  'cruiser/curlew',
  'guarded/dotterel',
  'micro/wheatear',
] as const;

export type Demo = (typeof DEMOS)[number];

export function demoBuild(name: string): Build {
  const read = readBuild(readFileSync(`demo/${name}.yaml`, 'utf8'), name);
  if (!read.ok) throw new Error(`${name} does not read`);
  return read.value.build;
}

export function demoBrief(name: string): Brief {
  const read = readBrief(readFileSync(`demo/${name.split('/')[0]}/brief.yaml`, 'utf8'), name);
  if (!read.ok) throw new Error(`the brief of ${name} does not read`);
  return read.value;
}

export function craftOf(build: Build, shelf: Shelf = shippedShelf()): Craft {
  const resolved = resolveBuild(build, shelf);
  if (!resolved.ok) throw new Error(`${build.name}: ${resolved.errors[0]?.says}`);
  return resolved.value;
}

/** A demo's context, with some of its frame's fields changed where a test compares frames. */
export function contextOf(
  name: Demo,
  change: { readonly frame?: Partial<PartOf<'frame'>>; readonly build?: Partial<Build> } = {},
  flies = true,
): PartContext {
  const build = { ...demoBuild(name), ...change.build };
  const shelf = change.frame ? withFrame(shippedShelf(), build.frame.part, change.frame) : shippedShelf();
  return contextFor(build, demoBrief(name), shelf, flies);
}

export function contextFor(build: Build, brief: Brief, shelf: Shelf, flies = true): PartContext {
  const craft = craftOf(build, shelf);
  const sections = sectionTables();
  const flight = flies ? prepareFlight(craft, { brief, sections }, true) : undefined;
  return { craft, brief, shelf, sections, ...(flight?.ok ? { flight: flight.value } : {}) };
}

export function withFrame(shelf: Shelf, id: string, change: Partial<PartOf<'frame'>>): Shelf {
  const frame = shelf.parts.get(id) as PartOf<'frame'>;
  return { ...shelf, parts: new Map(shelf.parts).set(id, { ...frame, ...change } as Part) };
}

/** No number anywhere in a value is anything but finite. */
export function everyNumber(value: unknown, see: (number: number, path: string) => void, path = ''): void {
  if (typeof value === 'number') see(value, path);
  else if (ArrayBuffer.isView(value) || Array.isArray(value)) {
    (value as unknown as readonly unknown[]).forEach((each, i) => {
      everyNumber(each, see, `${path}[${i}]`);
    });
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, each] of Object.entries(value)) everyNumber(each, see, `${path}.${key}`);
  }
}
