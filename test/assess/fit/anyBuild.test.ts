import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { tipGaps } from '../../../src/airframe/tipGaps.ts';
import { fitLines, fitRules } from '../../../src/assess/fit/fitLines.ts';
import type { FitContext, FitLine } from '../../../src/assess/fit/types.ts';
import { costLines } from '../../../src/assess/money/costLines.ts';
import { obstaclesOf } from '../../../src/assess/obstacles.ts';
import type { CraftRotor } from '../../../src/build/craft.ts';
import { rotorFacts } from '../../../src/build/infer/rotorFacts.ts';
import { resolveBuild } from '../../../src/build/resolve/resolveBuild.ts';
import { PURPOSES, REGIONS } from '../../../src/build/schema/brief.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import type { PartKind } from '../../../src/build/schema/partKinds.ts';
import { shipped, shippedShelf } from '../../shelf/shippedFiles.ts';
import { demoBrief, demoBuild, TURNSTONE } from './variations.ts';

/**
 * Any parts of the shelf on any frame: whatever the newcomer throws together, no rule throws, and every
 * line can be read and acted on.
 */
const ids = (kind: PartKind) => shipped(kind).map(({ id }) => id);
const oneOf = (kind: PartKind) => fc.constantFrom(...ids(kind));
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const place = fc.record({
  x: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
  y: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
  z: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
});
const current = fc.double({ min: 0.1, max: 400, noNaN: true });
const extraKinds = [
  'mount',
  'strap',
  'capacitor',
  'screws',
  'positionReceiver',
  'beeper',
  'lamp',
  'guardSet',
] as const;
const owned = [...shippedShelf.parts.keys(), 'goggles', 'bench', 'charger', 'no-such-part'];

const anyParts = fc.record({
  frame: oneOf('frame'),
  motors: oneOf('motor'),
  propellers: oneOf('propeller'),
  controllers: oneOf('controller'),
  flightController: oneOf('flightController'),
  pack: oneOf('pack'),
  cameras: fc.array(
    fc.record({
      part: oneOf('camera'),
      role: fc.constantFrom('flying' as const, 'recording' as const),
      tilt: fc.double({ min: -0.5, max: 1.5, noNaN: true }),
      place: maybe(place),
    }),
    { maxLength: 3 },
  ),
  videoLink: maybe(oneOf('videoLink')),
  receiver: maybe(oneOf('receiver')),
  antennas: fc.array(fc.record({ part: oneOf('antenna'), place: maybe(place) }), { maxLength: 3 }),
  extras: fc.array(
    fc.record({ part: fc.constantFrom(...extraKinds.flatMap(ids)), count: fc.integer({ min: 1, max: 4 }) }),
    { maxLength: 6 },
  ),
  connector: maybe(oneOf('connector')),
  screw: maybe(fc.double({ min: 0.003, max: 0.02, noNaN: true })),
  side: fc.constantFrom('above' as const, 'below' as const),
  packSide: fc.constantFrom('above' as const, 'below' as const),
  offset: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
  cycles: fc.integer({ min: 0, max: 400 }),
});

const anyBrief = fc.record({
  purpose: fc.constantFrom(...PURPOSES),
  region: fc.constantFrom(...REGIONS),
  flights: fc.integer({ min: 0, max: 100 }),
  hours: fc.integer({ min: 0, max: 20 }),
  massLimit: maybe(fc.double({ min: 0.05, max: 2, noNaN: true })),
  farthest: maybe(fc.double({ min: 10, max: 50000, noNaN: true })),
  mustCarry: maybe(fc.constantFrom(...owned)),
  owns: fc.uniqueArray(fc.constantFrom(...owned), { maxLength: 5 }),
  packs: fc.integer({ min: 1, max: 8 }),
});

const anyFigures = maybe(
  fc.record({
    peakMotorCurrent: current,
    peakPackCurrent: current,
    fullThrottleCellVoltage: fc.double({ min: 1, max: 4.2, noNaN: true }),
    hoverCaseTemperature: fc.double({ min: 280, max: 500, noNaN: true }),
    topSpeed: fc.double({ min: 5, max: 60, noNaN: true }),
  }),
);

type Parts = typeof anyParts extends fc.Arbitrary<infer T> ? T : never;
type BriefParts = typeof anyBrief extends fc.Arbitrary<infer T> ? T : never;

const rotors = new Map<string, CraftRotor>();
beforeAll(() => {
  for (const part of shipped('propeller')) rotors.set(part.id, rotorFacts({ ...part, measured: [] }));
});

function buildOf(parts: Parts): Build {
  const base = demoBuild(TURNSTONE);
  const { screw, connector, videoLink, receiver, cameras, antennas } = parts;
  const { videoLink: _link, receiver: _receiver, ...rest } = base;
  return {
    ...rest,
    frame: { part: parts.frame },
    motors: { part: parts.motors, except: [] },
    propellers: { part: parts.propellers, except: [], side: parts.side },
    controllers: { part: parts.controllers },
    flightController: { part: parts.flightController },
    pack: { part: parts.pack, side: parts.packSide, offset: parts.offset, cycles: parts.cycles },
    cameras: cameras.map(({ place, ...seat }) => ({ ...seat, ...(place ? { place } : {}) })),
    antennas: antennas.map(({ place, ...seat }) => ({ ...seat, ...(place ? { place } : {}) })),
    extras: parts.extras,
    wiring: connector === undefined ? {} : { connector },
    screws: screw === undefined ? {} : { motorLength: screw },
    ...(videoLink === undefined ? {} : { videoLink: { part: videoLink } }),
    ...(receiver === undefined ? {} : { receiver: { part: receiver } }),
  };
}

function contextOf(parts: Parts, brief: BriefParts, figures: FitContext['figures'] | undefined): FitContext {
  const craft = resolveBuild(buildOf(parts), shippedShelf, undefined, rotors);
  if (!craft.ok) throw new Error(JSON.stringify(craft));
  const { massLimit, farthest, mustCarry } = brief;
  const { mustCarry: _carry, massLimit: _limit, ...base } = demoBrief(TURNSTONE);
  return {
    craft: craft.value,
    brief: {
      ...base,
      purpose: brief.purpose,
      region: brief.region,
      pilot: { flightsFlown: brief.flights, simulatorHours: brief.hours },
      alreadyOwns: brief.owns,
      packsWanted: brief.packs,
      ...(massLimit === undefined ? {} : { massLimit }),
      ...(farthest === undefined ? {} : { farthest }),
      ...(mustCarry === undefined ? {} : { mustCarry }),
    },
    shelf: shippedShelf,
    gaps: tipGaps(
      craft.value.layout,
      Math.max(...craft.value.rotors.map((rotor) => rotor.blade.diameter)),
      obstaclesOf(craft.value),
    ),
    figures: figures ?? {},
  };
}

function checkLine(line: FitLine) {
  const told = `${line.id}: ${line.says} | ${line.remedy}`;
  for (const text of [line.says, line.remedy, line.source]) {
    expect(text.trim().length, told).toBeGreaterThan(4);
    expect(text, told).not.toMatch(/NaN|Infinity|undefined|null|-0(?![.\d])|\[object/);
  }
  expect(line.says, told).toMatch(/^[A-Z0-9].*[.:]$/);
  if (line.number !== undefined) {
    expect(Number.isFinite(line.number.value) && Number.isFinite(line.number.limit), told).toBe(true);
  }
  if (line.place !== undefined) {
    expect(Number.isFinite(line.place.x) && Number.isFinite(line.place.y), told).toBe(true);
  }
  const rule = fitRules.find(({ id }) => id === line.id);
  if (!line.passes) expect(rule?.severities, told).toContain(line.severity);
  expect(line.parts.length, told).toBeGreaterThan(0);
}

describe('any parts on any frame', () => {
  it('give lines that can be read, with finite numbers and severities the rule tells of', () => {
    fc.assert(
      fc.property(anyParts, anyBrief, anyFigures, (parts, brief, figures) => {
        for (const line of fitLines(contextOf(parts, brief, figures))) checkLine(line);
      }),
      { numRuns: 300 },
    );
  });

  it.each(ids('frame'))('%s, whatever goes on it', (frame) => {
    fc.assert(
      fc.property(anyParts, anyBrief, anyFigures, (parts, brief, figures) => {
        for (const line of fitLines(contextOf({ ...parts, frame }, brief, figures))) checkLine(line);
      }),
      { numRuns: 8 },
    );
  });

  it('cost finite money, every line once and bought whole', () => {
    fc.assert(
      fc.property(anyParts, anyBrief, (parts, brief) => {
        const { craft, brief: whole, shelf } = contextOf(parts, brief, undefined);
        const list = costLines(craft, whole, shelf);
        const names = list.lines.map(({ id }) => id);
        expect(new Set(names).size).toBe(names.length);
        for (const line of list.lines) {
          expect(Number.isInteger(line.count) && line.count > 0, line.what).toBe(true);
          expect(Number.isFinite(line.unitPrice) && line.unitPrice >= 0, line.what).toBe(true);
        }
        for (const id of list.owned) expect(names).toContain(id);
      }),
      { numRuns: 200 },
    );
  });
});
