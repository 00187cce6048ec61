import { expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { bladeFromNameplate } from '../../src/rotor/blade.ts';
import { EDGEWISE_LOADS, edgewiseBand } from '../../src/rotor/edgewiseBand.ts';
import { solveEdgewise } from '../../src/rotor/solveEdgewise.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import { SPREADS } from '../../src/rotor/spreads.ts';
import { sections } from './arbitrary.ts';

const air = standardAtmosphere({ height: 0 });
const blade = bladeFromNameplate({ diameter: 0.1295, pitch: 0.0914, bladeCount: 3 });
const angularSpeed = 400 * Math.PI; // 12 000 rpm

it.each([2, 5, 10, 20, 25, 30])(
  'holds what the pitch alone may do to every load at %d m/s',
  (edgewiseSpeed) => {
    // Once a share of the value: at 20 m/s, where the aft moment crosses zero, half a degree of pitch left the band.
    const condition = { angularSpeed, axialSpeed: 0, edgewiseSpeed, air };
    const state = solveEdgewise(blade, sections, condition);
    const still = solveRotor(blade, sections, { angularSpeed, axialSpeed: 0, air });
    if (!state.ok || !still.ok) throw new Error('no state');
    const band = edgewiseBand(blade, sections, condition, state.value, still.value.reynolds75);
    if (!band.ok) throw new Error(band.reason);
    for (const sign of [-1.2816, 1.2816]) {
      const pitchOffset = sign * SPREADS.nameplate.pitch;
      const moved = solveEdgewise({ ...blade, pitchOffset }, sections, condition);
      if (!moved.ok) throw new Error(moved.reason);
      for (const load of EDGEWISE_LOADS) {
        const [low, high] = band.value[load];
        const room = 0.1 * (high - low); // beyond one deviation a stalled side bends further
        expect(moved.value[load], load).toBeGreaterThan(low - room);
        expect(moved.value[load], load).toBeLessThan(high + room);
      }
    }
  },
);

it('keeps both signs of a moment that crosses zero', () => {
  const condition = { angularSpeed, axialSpeed: 0, edgewiseSpeed: 20, air };
  const state = solveEdgewise(blade, sections, condition);
  if (!state.ok) throw new Error(state.reason);
  const band = edgewiseBand(blade, sections, condition, state.value, 60_000);
  if (!band.ok) throw new Error(band.reason);
  const [low, high] = band.value.momentAftUp;
  expect(low).toBeLessThan(0);
  expect(high).toBeGreaterThan(0);
});
