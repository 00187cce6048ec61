import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { rotorFacts, staticPoints } from '../../src/build/infer/rotorFacts.ts';
import { bladeFromNameplate, bladeFromTable } from '../../src/rotor/blade.ts';
import { fitBlade } from '../../src/rotor/fitBlade.ts';
import { sectionTables } from '../../src/rotor/sections.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import { shipped } from './shippedFiles.ts';

/*
 * The shelf's measured points are invented. They must still obey momentum theory, and lie where a
 * propeller of that shape can lie.
 */

const air = standardAtmosphere({ height: 0 });
const sections = sectionTables();
const measured = shipped('propeller').filter((propeller) => propeller.measured.length > 0);

/** The blade before any point is laid on it. */
function bareBlade(propeller: (typeof measured)[number]) {
  const { size, chordAt75, bladeTable } = propeller;
  if (!bladeTable) return bladeFromNameplate({ ...size, ...(chordAt75 && { chordAt75: chordAt75.value }) });
  const radius = size.diameter / 2;
  return bladeFromTable({
    ...size,
    radiusRatio: bladeTable.map(({ at }) => at),
    chordRatio: bladeTable.map(({ chord }) => chord / radius),
    twist: bladeTable.map(({ angle }) => angle),
  });
}

describe.each(measured.map((propeller) => [propeller.id, propeller] as const))('%s', (_, propeller) => {
  const area = (Math.PI / 4) * propeller.size.diameter ** 2;

  it.each(staticPoints(propeller))(
    'at $angularSpeed rad/s stays under the actuator disc',
    ({ thrust, power }) => {
      // Ideal power T^1.5 / sqrt(2 rho A): Leishman, Principles of Helicopter Aerodynamics, 2nd ed., eq. 2.15.
      const figureOfMerit = thrust ** 1.5 / Math.sqrt(2 * air.density * area) / power;
      // The limit is 1. Small multirotor propellers of the UIUC database reach 0.31 to 0.65 at rest (Brandt, Deters,
      // Ananda, Dantsker, Selig; static rows of 2.5 to 5 in), the larger ones at 7 in a little more.
      expect(figureOfMerit).toBeGreaterThan(0.31);
      expect(figureOfMerit).toBeLessThan(0.68);
    },
  );

  it('is matched by its own blade, moved by no more than propellers usually are', () => {
    const fitted = fitBlade(bareBlade(propeller), sections, staticPoints(propeller));
    if (!fitted.ok) throw new Error(fitted.reason);
    // Pitch offset 2.6 degrees (1 sd over the UIUC database), drag about exp(0.35) a standard deviation.
    expect(Math.abs(fitted.value.pitchOffset)).toBeLessThan((2 * 2.6 * Math.PI) / 180);
    expect(Math.abs(Math.log(fitted.value.dragScale))).toBeLessThan(2 * 0.35);
    for (const { angularSpeed, thrust, power } of staticPoints(propeller)) {
      const state = solveRotor(fitted.value, sections, { angularSpeed, axialSpeed: 0, air });
      if (!state.ok) throw new Error(state.reason);
      // A few per cent: the spread of one propeller measured twice is 3 to 6 % (UIUC database).
      expect(Math.abs(state.value.thrust / thrust - 1)).toBeLessThan(0.08);
      expect(Math.abs(state.value.power / power - 1)).toBeLessThan(0.06);
    }
  });
});

describe('propellers known by their shape alone', () => {
  it.each(shipped('propeller').map((propeller) => [propeller.id, propeller] as const))(
    '%s gives a static thrust coefficient of 0.07 to 0.36 and less merit than 0.8',
    (_, propeller) => {
      const { blade } = rotorFacts(propeller);
      // A tip Mach number near 0.45, about the middle of the throttle.
      const angularSpeed = (0.45 * 340) / (blade.diameter / 2);
      const state = solveRotor(blade, sections, { angularSpeed, axialSpeed: 0, air });
      if (!state.ok) throw new Error(state.reason);
      const { thrustCoefficient, powerCoefficient } = state.value;
      expect(thrustCoefficient).toBeGreaterThan(0.07);
      expect(thrustCoefficient).toBeLessThan(0.36);
      // Figure of merit from propeller coefficients: sqrt(2/pi) C_T^1.5 / C_P.
      expect((Math.sqrt(2 / Math.PI) * thrustCoefficient ** 1.5) / powerCoefficient).toBeLessThan(0.8);
    },
  );
});
