import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readShelf } from '../../src/build/read/readShelf.ts';
import { shelfFiles, shipped, shippedShelf } from './shippedFiles.ts';

/** Least counts that the foundation issue asks for. */
const LEAST = {
  frame: 14,
  motor: 24,
  propeller: 24,
  pack: 16,
  controller: 10,
  flightController: 8,
  videoLink: 3,
  receiver: 3,
  antenna: 3,
  mount: 5,
  strap: 3,
  connector: 3,
  wire: 3,
  goggles: 2,
  transmitter: 2,
  charger: 2,
} as const;

describe('the shipped shelf', () => {
  it.each(shelfFiles)('%s reads without an error', (file) => {
    expect(readShelf(readFileSync(file, 'utf8'), file)).toMatchObject({ ok: true });
  });

  it('holds enough of every kind', () => {
    for (const [kind, least] of Object.entries(LEAST)) {
      expect(shipped(kind as keyof typeof LEAST).length, kind).toBeGreaterThanOrEqual(least);
    }
    const cameras = shipped('camera');
    expect(cameras.filter(({ roles }) => roles.includes('flying')).length).toBeGreaterThanOrEqual(8);
    expect(cameras.filter(({ roles }) => roles.includes('recording')).length).toBeGreaterThanOrEqual(5);
  });

  it('has each id and each name once, over all files', () => {
    const ids = shelfFiles.flatMap((file) => readFileSync(file, 'utf8').match(/(?<=- id: ).+$/gm) ?? []);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length).toBe(shippedShelf.parts.size);
    const names = [...shippedShelf.parts.values()].map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  it('marks every part as invented', () => {
    const real = [...shippedShelf.parts.values()].filter(({ invented }) => !invented);
    expect(real.map(({ id }) => id)).toEqual([]);
  });

  it('says whence each value comes, and measured some of them', () => {
    const texts = shelfFiles.map((file) => readFileSync(file, 'utf8')).join('\n');
    for (const part of shippedShelf.parts.values()) expect(part.source, part.id).toMatch(/invented/);
    expect(texts.match(/trust: measured/g)?.length).toBeGreaterThan(20);
  });

  it('names parts that exist, and of the right kind, for what is not in the box', () => {
    for (const part of shippedShelf.parts.values()) {
      for (const { item, part: wanted, price } of part.notInTheBox) {
        expect(wanted !== undefined || price !== undefined, `${part.id}: ${item}`).toBe(true);
        if (wanted === undefined) continue;
        const served = shippedShelf.parts.get(wanted);
        const kind = item.endsWith('mount') ? 'mount' : item.endsWith('screws') ? 'screws' : item;
        expect(served?.kind, `${part.id}: ${wanted}`).toBe(kind);
        if (served?.kind === 'mount') expect(item).toBe(`${served.holds} mount`);
      }
    }
  });

  it('never has the same thing in the box and missing, but a second strap', () => {
    for (const part of shippedShelf.parts.values()) {
      const inside = new Set(part.inTheBox.map(({ item }) => item));
      const both = part.notInTheBox.filter(({ item }) => inside.has(item) && item !== 'strap');
      expect(both, part.id).toEqual([]);
    }
  });
});

describe('the shipped frames', () => {
  const frames = shipped('frame');

  it('show every layout', () => {
    const kinds = new Set(frames.map(({ layout }) => layout.kind));
    const asked = ['true X', 'stretched X', 'squashed X', 'H', 'dead cat', 'plus', 'tri', 'hexa X', 'octo'];
    for (const kind of [...asked, 'X8 coaxial', 'Y6 coaxial']) expect([...kinds]).toContain(kind);
  });

  it('are cut in every way, from 3 to 6 mm, with the pack above and below, from 2 to 7 inch', () => {
    const cut = new Set(frames.map(({ arms }) => arms.construction));
    expect(cut).toEqual(new Set(['separate arms', 'one-piece plate', 'arm pairs']));
    const thickness = frames.map(({ arms }) => Math.round(arms.thickness.value * 1e3));
    for (const mm of [3, 4, 5, 6]) expect(thickness).toContain(mm);
    expect(new Set(frames.map(({ pack }) => pack.side))).toEqual(new Set(['above', 'below']));
    const inches = new Set(frames.map(({ maxPropeller }) => Math.floor(maxPropeller / 0.0254 + 1e-9)));
    for (const size of [2, 3, 4, 5, 6, 7]) expect([...inches]).toContain(size);
  });

  it('include guarded ones, and ones with all or next to nothing in the box', () => {
    expect(frames.filter(({ guards }) => guards).length).toBeGreaterThanOrEqual(2);
    expect(frames.some(({ notInTheBox }) => notInTheBox.length === 0)).toBe(true);
    expect(frames.some(({ inTheBox, notInTheBox }) => notInTheBox.length > 2 * inTheBox.length)).toBe(true);
  });
});

describe('the shipped propellers', () => {
  const propellers = shipped('propeller');

  it('have two to five blades', () => {
    const blades = new Set(propellers.map(({ size }) => size.bladeCount));
    for (const count of [2, 3, 4, 5]) expect([...blades]).toContain(count);
  });

  it('are known in each of the four ways', () => {
    const plain = propellers.filter((p) => !p.chordAt75 && !p.bladeTable && p.measured.length === 0);
    const chord = propellers.filter((p) => p.chordAt75 && !p.bladeTable && p.measured.length === 0);
    for (const group of [plain, chord]) expect(group.length).toBeGreaterThanOrEqual(5);
    expect(propellers.filter(({ bladeTable }) => bladeTable).length).toBeGreaterThanOrEqual(3);
    expect(propellers.filter(({ measured }) => measured.length > 0).length).toBeGreaterThanOrEqual(3);
  });
});
