import fc from 'fast-check';
import { expect, it } from 'vitest';
import { propellerPoints, riseFromTables } from '../../src/build/infer/motorTable.ts';
import { motorAt } from '../../src/drive/motor.ts';
import { motorFromNameplate } from '../../src/drive/motorFromNameplate.ts';

const base = motorFromNameplate({ statorDiameter: 0.022, statorHeight: 0.007, speedConstant: 204 }).model;
const given = (value: number) => ({ value });

/** A table as a stand would print it for a motor: the stand's controller included as the code under test takes it. */
function tableOf(rise: number, lines: readonly (readonly [speed: number, torque: number])[]) {
  const motor = { ...base, resistanceRise: rise };
  return {
    propeller: { diameter: 0.13, pitch: 0.09, bladeCount: 3 },
    points: lines.map(([speed, torque]) => {
      const point = motorAt(motor, torque, speed, motor.referenceTemperature);
      return {
        throttle: 1,
        angularSpeed: given(speed),
        voltage: given(point.voltage + 6e-3 * point.current),
        current: given(point.current),
        thrust: given(10),
      };
    }),
  };
}

it('finds the rise that made a table', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-5, max: 1e-3, noNaN: true }), (rise) => {
      const table = tableOf(rise, [
        [3400, 0.2],
        [3000, 0.15],
      ]);
      expect(riseFromTables(base, [table])).toBeCloseTo(rise, 9);
    }),
  );
});

it('finds the shaft power of every line to the stand’s own loss', () => {
  const table = tableOf(3e-4, [
    [3400, 0.2],
    [2000, 0.07],
  ]);
  const doubt = { resistance: 0.12, noLoadCurrent: 0.15, resistanceRise: 0.2 };
  const points = propellerPoints({ ...base, resistanceRise: 3e-4 }, table, doubt);
  expect(points).toHaveLength(2);
  // The stand's switching loss is counted in the code and not in this table: 1.5 % of the supply, 2.5 % of the shaft.
  expect(Math.abs(points[0]!.power / (3400 * 0.2) - 1)).toBeLessThan(0.025);
  expect(Math.abs(points[1]!.power / (2000 * 0.07) - 1)).toBeLessThan(0.025);
  // No better known than the supply's amperes; worse where the motor keeps more of it.
  expect(points[0]!.powerSpread).toBeGreaterThan(0.03);
  const idle = propellerPoints({ ...base, resistanceRise: 3e-4 }, tableOf(3e-4, [[2000, 0.01]]), doubt)[0]!;
  expect(idle.powerSpread).toBeGreaterThan(1.5 * points[1]!.powerSpread!);
});

it('leaves a table that contradicts the motor alone', () => {
  expect(riseFromTables(base, [tableOf(5e-3, [[3400, 0.2]])])).toBeUndefined();
  expect(riseFromTables(base, [])).toBeUndefined();
});
