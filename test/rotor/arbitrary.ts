import fc from 'fast-check';
import { bladeFromNameplate, bladeFromTable } from '../../src/rotor/blade.ts';
import { sectionTables } from '../../src/rotor/sections.ts';

export const sections = sectionTables();

/** Any propeller a shelf could hold, by nameplate or by an odd table. */
export const anyBlade = fc.oneof(
  fc
    .record({
      diameter: fc.double({ min: 0.03, max: 0.45, noNaN: true }),
      pitchRatio: fc.double({ min: 0, max: 1.4, noNaN: true }),
      bladeCount: fc.integer({ min: 1, max: 8 }),
      chordRatio: fc.option(fc.double({ min: 0.05, max: 0.5, noNaN: true }), { nil: undefined }),
    })
    .map(({ diameter, pitchRatio, bladeCount, chordRatio }) =>
      bladeFromNameplate({
        diameter,
        pitch: pitchRatio * diameter,
        bladeCount,
        ...(chordRatio === undefined ? {} : { chordAt75: (chordRatio * diameter) / 2 }),
      }),
    ),
  fc
    .record({
      diameter: fc.double({ min: 0.03, max: 0.45, noNaN: true }),
      bladeCount: fc.integer({ min: 1, max: 8 }),
      chords: fc.array(fc.double({ min: 0.02, max: 0.45, noNaN: true }), { minLength: 5, maxLength: 5 }),
      twists: fc.array(fc.double({ min: -0.05, max: 0.9, noNaN: true }), { minLength: 5, maxLength: 5 }),
    })
    .map(({ diameter, bladeCount, chords, twists }) =>
      bladeFromTable({
        diameter,
        bladeCount,
        radiusRatio: [0.15, 0.4, 0.6, 0.8, 1],
        chordRatio: chords,
        twist: twists,
      }),
    ),
);
