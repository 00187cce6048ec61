import fc from 'fast-check';
import { expect, it } from 'vitest';
import { hitsPart } from '../../../src/assess/parts/hits/hitsPart.ts';
import { knocksPart } from '../../../src/assess/parts/knocks/knocksPart.ts';
import { picturePart } from '../../../src/assess/parts/picture/picturePart.ts';
import { shakePart } from '../../../src/assess/parts/shake/shakePart.ts';
import { prepareFlight } from '../../../src/assess/prepareFlight.ts';
import { resolveBuild } from '../../../src/build/resolve/resolveBuild.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import { partsOf } from '../../../src/build/shelf.ts';
import { sectionTables } from '../../../src/rotor/sections.ts';
import { shippedShelf } from '../../cli/fakeIo.ts';
import { DEMOS, demoBrief, demoBuild, everyNumber } from './crafts.ts';

const shelf = shippedShelf();
const ids = (kind: Parameters<typeof partsOf>[1]) => partsOf(shelf, kind).map(({ id }) => id);
const sections = sectionTables();

/** Any frame with any motor, propeller and pack of the shelf, cameras anywhere near: fitting or not. */
const anyBuild = fc.record({
  base: fc.constantFrom(...DEMOS),
  frame: fc.constantFrom(...ids('frame')),
  motor: fc.constantFrom(...ids('motor')),
  propeller: fc.constantFrom(...ids('propeller')),
  pack: fc.constantFrom(...ids('pack')),
  side: fc.constantFrom('above' as const, 'below' as const),
  propSide: fc.constantFrom('above' as const, 'below' as const),
  thickness: fc.double({ min: 1e-3, max: 0.01, noNaN: true }),
  tilt: fc.double({ min: -0.5, max: 1.4, noNaN: true }),
  place: fc.record({
    x: fc.double({ min: -0.2, max: 0.3, noNaN: true }),
    y: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
    z: fc.double({ min: -0.15, max: 0.1, noNaN: true }),
  }),
});

it('no part of the airframe throws or tells a number that is none, for any build of the shelf', () => {
  let resolvedOnes = 0;
  fc.assert(
    fc.property(anyBuild, (drawn) => {
      const base = demoBuild(drawn.base);
      const [first, ...rest] = base.cameras;
      const build: Build = {
        ...base,
        frame: { ...base.frame, part: drawn.frame, armThickness: drawn.thickness },
        motors: { ...base.motors, part: drawn.motor },
        propellers: { ...base.propellers, part: drawn.propeller, side: drawn.propSide },
        pack: { ...base.pack, part: drawn.pack, side: drawn.side },
        cameras: first === undefined ? [] : [{ ...first, tilt: drawn.tilt, place: drawn.place }, ...rest],
      };
      const craft = resolveBuild(build, shelf);
      if (!craft.ok) return;
      resolvedOnes += 1;
      const brief = demoBrief(drawn.base);
      const flight = prepareFlight(craft.value, { brief, sections });
      const context = {
        craft: craft.value,
        brief,
        shelf,
        sections,
        ...(flight.ok ? { flight: flight.value } : {}),
      };
      for (const part of [picturePart, shakePart, hitsPart, knocksPart]) {
        const result = part.run(context);
        everyNumber(result, (number, path) => {
          if (!Number.isFinite(number))
            throw new Error(`${part.id}${path} is ${number} for ${JSON.stringify(drawn)}`);
        });
        for (const { id, value, band, how, source } of result.measures) {
          expect(band[0], id).toBeLessThanOrEqual(value + 1e-12);
          expect(band[1], id).toBeGreaterThanOrEqual(value - 1e-12);
          expect(how.length, id).toBeGreaterThan(10);
          expect(source.length, id).toBeGreaterThan(3);
        }
        for (const { says, remedy } of result.findings)
          expect(`${says} ${remedy}`).not.toMatch(/NaN|undefined|Infinity/);
      }
    }),
    { numRuns: 25 },
  );
  expect(resolvedOnes).toBeGreaterThan(5);
});
