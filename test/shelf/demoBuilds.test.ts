import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Craft } from '../../src/build/craft.ts';
import { readBrief, readBuild } from '../../src/build/read/readBuild.ts';
import { resolveBuild } from '../../src/build/resolve/resolveBuild.ts';
import type { Shelf } from '../../src/build/shelf.ts';
import { layShelf, shippedShelf } from './shippedFiles.ts';

const FOLDERS = ['first-freestyle', 'micro', 'guarded', 'cruiser'] as const;

const buildsIn = (folder: string) =>
  readdirSync(`demo/${folder}`)
    .filter((name) => name.endsWith('.yaml') && name !== 'brief.yaml')
    .map((name) => `demo/${folder}/${name}`);

function craftOf(file: string, shelf: Shelf = shippedShelf): Craft {
  const reading = readBuild(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(JSON.stringify(reading, null, 1));
  const craft = resolveBuild(reading.value.build, shelf, reading.value);
  if (!craft.ok) throw new Error(JSON.stringify(craft, null, 1));
  return craft.value;
}

function briefOf(folder: string) {
  const file = `demo/${folder}/brief.yaml`;
  const reading = readBrief(readFileSync(file, 'utf8'), file);
  if (!reading.ok) throw new Error(JSON.stringify(reading, null, 1));
  return reading.value;
}

const packShare = ({ parts, massProperties }: Craft) => parts.pack.mass.value / massProperties.mass;

describe.each(FOLDERS)('demo/%s', (folder) => {
  const brief = briefOf(folder);

  it('names only parts that are on the shelf', () => {
    const wanted = [brief.mustCarry, ...brief.alreadyOwns].filter((each) => each?.includes('-'));
    for (const id of wanted) expect(shippedShelf.parts.has(id ?? ''), id).toBe(true);
  });

  it.each(buildsIn(folder))('%s resolves, carries what it must and keeps under the mass limit', (file) => {
    const craft = craftOf(file);
    if (brief.massLimit) expect(craft.massProperties.mass).toBeLessThan(brief.massLimit);
    const aboard = [...craft.parts.cameras, ...craft.parts.extras.map(({ part }) => part)];
    if (brief.mustCarry) expect(aboard.map(({ id }) => id)).toContain(brief.mustCarry);
  });

  it.each(buildsIn(folder))(
    '%s tells sizes for all that is drawn, and has a plug that its pack fits',
    (file) => {
      const craft = craftOf(file);
      expect(craft.inferred.filter((each) => /size|body/.test(each))).toEqual([]);
      expect(craft.wiring.plug).toBe(craft.parts.pack.connector);
    },
  );
});

describe('the six first freestyle builds', () => {
  const crafts = buildsIn('first-freestyle').map((file) => craftOf(file));

  it('are six, on six frames', () => {
    expect(new Set(crafts.map(({ parts }) => parts.frame.id)).size).toBe(6);
  });

  it('differ in layout, pack, cells, arms and what is in the box', () => {
    const count = (of: (craft: Craft) => unknown) => new Set(crafts.map(of)).size;
    expect(count(({ layout }) => layout.kind)).toBeGreaterThanOrEqual(4);
    expect(count(({ parts }) => parts.pack.id)).toBeGreaterThanOrEqual(4);
    expect(count(({ parts }) => parts.pack.cells)).toBe(2);
    expect(count(({ parts }) => parts.frame.arms.thickness.value)).toBeGreaterThanOrEqual(4);
    expect(count(({ parts }) => parts.frame.notInTheBox.length)).toBeGreaterThanOrEqual(4);
  });

  it('weigh 590 to 800 g with a pack of 25 to 35 % (common practice, no source)', () => {
    for (const craft of crafts) {
      const { mass } = craft.massProperties;
      expect(mass, craft.build.name).toBeGreaterThan(0.59);
      expect(mass, craft.build.name).toBeLessThan(0.8);
      expect(packShare(craft), craft.build.name).toBeGreaterThan(0.25);
      expect(packShare(craft), craft.build.name).toBeLessThan(0.35);
    }
  });

  it('balance within 5 mm of the motors', () => {
    for (const craft of crafts) {
      expect(Math.abs(craft.massProperties.centreOfGravity[0]), craft.build.name).toBeLessThan(0.005);
    }
  });

  it('have one whose screws reach the winding, and only one', () => {
    const tooLong = crafts.filter(({ build, parts, motors }) => {
      const reach = (build.screws.motorLength ?? 0) - parts.frame.arms.thickness.value;
      return reach > (motors[0]?.fit.threadDepth ?? 0) + 1e-6;
    });
    expect(tooLong.map(({ parts }) => parts.frame.id)).toEqual(['bonxie-5']);
  });
});

describe('the later demos', () => {
  it('keep the micro under 250 g with 5 g in hand', () => {
    for (const file of buildsIn('micro')) expect(craftOf(file).massProperties.mass).toBeLessThan(0.245);
  });
});

describe("the user's own shelf", () => {
  const own = layShelf(['demo/own-shelf.yaml'], shippedShelf);

  it('adds parts and replaces none', () => {
    expect(own.parts.size).toBe(shippedShelf.parts.size + 2);
    expect(own.replaced).toEqual([]);
  });

  it('enters a part in some ten lines', () => {
    const text = readFileSync('demo/own-shelf.yaml', 'utf8');
    const parts = text.split('\n  - id: ').slice(1);
    for (const part of parts) {
      const fields = part.split('\n').filter((line) => /^ {4}\w+:/.test(line));
      expect(fields.length + 1).toBeLessThanOrEqual(13);
    }
  });

  it('gives a build whose missing values are inferred, and say so', () => {
    const craft = craftOf('demo/own-build.yaml', own);
    for (const name of ['frame: body width', 'frame: arm at the root', 'motors: winding resistance']) {
      expect(craft.inferred).toContain(name);
    }
    // Words, not the fields of a file.
    expect(craft.inferred.filter((each) => /[a-z][A-Z]/.test(each))).toEqual([]);
    const told = craftOf('demo/first-freestyle/turnstone.yaml');
    expect(craft.inferred.length).toBeGreaterThan(told.inferred.length);
  });
});
