import { readFileSync } from 'node:fs';
import { tipGaps } from '../../../src/airframe/tipGaps.ts';
import type { TipGap } from '../../../src/airframe/types.ts';
import { fitRules } from '../../../src/assess/fit/fitLines.ts';
import type { FitContext, FitFigures, FitVerdict } from '../../../src/assess/fit/types.ts';
import { obstaclesOf } from '../../../src/assess/obstacles.ts';
import type { Craft, CraftRotor } from '../../../src/build/craft.ts';
import { readBrief, readBuild } from '../../../src/build/read/readBuild.ts';
import { resolveBuild } from '../../../src/build/resolve/resolveBuild.ts';
import type { Brief } from '../../../src/build/schema/brief.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import type { Part } from '../../../src/build/schema/part.ts';
import type { Shelf } from '../../../src/build/shelf.ts';
import { shippedShelf } from '../../shelf/shippedFiles.ts';

/** A demo build with one thing changed. */
export interface Variation {
  /** `first-freestyle/turnstone` when absent. */
  readonly demo?: string;
  readonly build?: (build: Build) => void;
  readonly brief?: (brief: Brief) => void;
  /** Fields of parts laid over the shelf's, by id. */
  readonly parts?: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  readonly figures?: FitFigures;
  /** Instead of the gaps of the geometry. */
  readonly gaps?: readonly TipGap[];
  /** Told by a scale [kg]. */
  readonly weighed?: number;
}

/** Of the Turnstone, rounded; a test that is about one tells its own. */
const FIGURES: FitFigures = {
  peakMotorCurrent: 27,
  peakPackCurrent: 70,
  fullThrottleCellVoltage: 3.4,
  hoverCaseTemperature: 310,
};

export const TURNSTONE = 'first-freestyle/turnstone';

const builds = new Map<string, Build>();
const briefs = new Map<string, Brief>();

/** Read once, handed out as copies to be changed. */
export function demoBuild(demo: string): Build {
  const file = `demo/${demo}.yaml`;
  const known = builds.get(file);
  if (known !== undefined) return structuredClone(known);
  const reading = readBuild(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(JSON.stringify(reading, null, 1));
  builds.set(file, reading.value.build);
  return demoBuild(demo);
}

export function demoBrief(demo: string): Brief {
  const file = `demo/${demo.split('/')[0]}/brief.yaml`;
  const known = briefs.get(file);
  if (known !== undefined) return structuredClone(known);
  const reading = readBrief(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(JSON.stringify(reading, null, 1));
  briefs.set(file, reading.value);
  return demoBrief(demo);
}

/** Rotors made before, since matching one to measured points takes long. Only for parts as shipped. */
const made = new Map<string, CraftRotor>();

export function craftFrom(build: Build, shelf: Shelf = shippedShelf, changed: readonly string[] = []): Craft {
  const ready = new Map([...made].filter(([id]) => !changed.includes(id)));
  const craft = resolveBuild(build, shelf, undefined, ready);
  if (!craft.ok) throw new Error(JSON.stringify(craft, null, 1));
  for (const rotor of craft.value.rotors) if (!changed.includes(rotor.partId)) made.set(rotor.partId, rotor);
  return craft.value;
}

export function shelfWith(changes: NonNullable<Variation['parts']>): Shelf {
  const parts = new Map(shippedShelf.parts);
  for (const [id, fields] of Object.entries(changes)) {
    const part = parts.get(id);
    if (part === undefined) throw new Error(`no part ${id}`);
    parts.set(id, { ...part, ...fields } as Part);
  }
  return { ...shippedShelf, parts };
}

export function contextOf({
  demo = TURNSTONE,
  build,
  brief,
  parts = {},
  figures,
  gaps,
  weighed,
}: Variation): FitContext {
  const ownBuild = demoBuild(demo);
  build?.(ownBuild);
  // A scale so far off the sum of the parts would be refused; the rules only look at the mass.
  if (weighed !== undefined) ownBuild.measured.mass = { value: 0.65 };
  const ownBrief = demoBrief(demo);
  brief?.(ownBrief);
  const shelf = shelfWith(parts);
  const made = craftFrom(ownBuild, shelf, Object.keys(parts));
  const mass = weighed ?? made.massProperties.mass;
  const craft = { ...made, massProperties: { ...made.massProperties, mass } };
  const diameter = Math.max(...craft.rotors.map((rotor) => rotor.blade.diameter));
  return {
    craft,
    brief: ownBrief,
    shelf,
    gaps: gaps ?? tipGaps(craft.layout, diameter, obstaclesOf(craft)),
    figures: figures === undefined ? FIGURES : { ...FIGURES, ...figures },
  };
}

/** What one rule says of a variation. */
export function look(id: string, variation: Variation): readonly FitVerdict[] {
  const rule = fitRules.find((each) => each.id === id);
  if (rule === undefined) throw new Error(`no rule ${id}`);
  return rule.look(contextOf(variation));
}
