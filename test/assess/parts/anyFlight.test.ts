import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airOf } from '../../../src/assess/dayOf.ts';
import { wiringHeat } from '../../../src/assess/parts/heat.ts';
import { levelFlight } from '../../../src/assess/parts/levelFlight.ts';
import { usualMission } from '../../../src/assess/parts/mission.ts';
import { controlInReserve } from '../../../src/assess/parts/reserve.ts';
import type { PartContext } from '../../../src/assess/parts/types.ts';
import { windHolding } from '../../../src/assess/parts/wind.ts';
import { prepareFlight } from '../../../src/assess/prepareFlight.ts';
import { type PreparedRotors, prepareRotors } from '../../../src/assess/prepareRotors.ts';
import { rotorsAtSpeed } from '../../../src/assess/rotorsAtSpeed.ts';
import type { Craft } from '../../../src/build/craft.ts';
import { rotorFacts } from '../../../src/build/infer/rotorFacts.ts';
import { resolveBuild } from '../../../src/build/resolve/resolveBuild.ts';
import { type Brief, PURPOSES } from '../../../src/build/schema/brief.ts';
import type { PartKind } from '../../../src/build/schema/partKinds.ts';
import { sectionTables } from '../../../src/rotor/sections.ts';
import { shipped, shippedShelf } from '../../shelf/shippedFiles.ts';
import { demoBrief, demoBuild, everyNumber } from './crafts.ts';

/**
 * Any frame with any motors, propellers and pack of the shelf, in any wind: each part either has its
 * numbers, all finite, or says in words why not. FLIGHT_FUZZ draws more.
 */
const RUNS = Number(process.env.FLIGHT_FUZZ ?? 40);
const parts = [levelFlight, windHolding, controlInReserve, wiringHeat, usualMission];
const sections = sectionTables();
const base = demoBuild('first-freestyle/turnstone');
const day = demoBrief('first-freestyle/turnstone');

const oneOf = (kind: PartKind) => fc.constantFrom(...shipped(kind).map(({ id }) => id));
const drawn = fc.record({
  frame: oneOf('frame'),
  motors: oneOf('motor'),
  propellers: oneOf('propeller'),
  pack: oneOf('pack'),
  offset: fc.double({ min: -0.06, max: 0.06, noNaN: true }),
  side: fc.constantFrom('above' as const, 'below' as const),
  tilt: fc.double({ min: -0.2, max: 1.2, noNaN: true }),
  purpose: fc.constantFrom(...PURPOSES),
  wind: fc.constantFrom(0, 0.5, 4, 9, 25),
  reserve: fc.constantFrom(0, 0.2, 0.5),
});
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

// One air for all, so that each propeller is prepared once, from its nameplate and coarsely.
let rotors: PreparedRotors = new Map();

function contextOf(draw: Drawn): PartContext | undefined {
  const build = {
    ...base,
    frame: { part: draw.frame },
    motors: { part: draw.motors, except: [] },
    propellers: { part: draw.propellers, except: [], side: 'above' as const },
    pack: { part: draw.pack, side: draw.side, offset: draw.offset, cycles: 0 },
    cameras: base.cameras.map((camera) => ({ ...camera, tilt: draw.tilt })),
  };
  const facts = new Map([...rotors].map(([id, each]) => [id, each.facts]));
  for (const part of shipped('propeller')) {
    if (part.id === draw.propellers && !facts.has(part.id))
      facts.set(part.id, rotorFacts({ ...part, measured: [] }));
  }
  const resolved = resolveBuild(build, shippedShelf, undefined, facts);
  if (!resolved.ok) return undefined;
  const craft: Craft = resolved.value;
  const brief: Brief = {
    ...day,
    purpose: draw.purpose,
    reserve: draw.reserve,
    site: { ...day.site, wind: { value: draw.wind } },
  };
  const prepared = prepareRotors(craft, airOf(brief), sections, rotors, 'coarse');
  if (prepared.ok) rotors = rotorsAtSpeed(prepared.value, sections, airOf(brief));
  const flight = prepareFlight(craft, { brief, sections, rotors }, true);
  return { craft, brief, shelf: shippedShelf, sections, ...(flight.ok ? { flight: flight.value } : {}) };
}

describe('any parts of the shelf in the air', () => {
  it(`never give a number that is none, nor fall over (${RUNS} builds)`, () => {
    let flew = 0;
    fc.assert(
      fc.property(drawn, (draw) => {
        const context = contextOf(draw);
        if (context === undefined) return;
        for (const part of parts) {
          const result = part.run(context);
          everyNumber(result, (number, path) =>
            expect(Number.isFinite(number), `${part.id}${path}`).toBe(true),
          );
          for (const { value, band, id } of result.measures) {
            expect(band[0], id).toBeLessThanOrEqual(value);
            expect(band[1], id).toBeGreaterThanOrEqual(value);
          }
          for (const { says } of result.findings) expect(says).not.toMatch(/NaN|undefined|Infinity/);
          if (context.flight !== undefined) {
            expect(result.measures.length + result.findings.length, part.id).toBeGreaterThan(0);
          }
        }
        if (context.flight !== undefined) flew++;
      }),
      { numRuns: RUNS, seed: 20261125 },
    );
    expect(flew).toBeGreaterThan(RUNS / 5);
  });
});
