import { expect, it } from 'vitest';
import { fitFromTable } from '../../src/build/infer/fitFromTable.ts';
import { matchPropeller } from '../../src/build/infer/matchPropeller.ts';
import { motorFacts } from '../../src/build/infer/motorFacts.ts';
import { propellerPoints } from '../../src/build/infer/motorTable.ts';
import { shipped } from './shippedFiles.ts';

/*
 * The shelf's thrust tables are invented (scripts/inventTables.ts). They must still be tables of their motor and of the
 * propeller of that size, as a maker's are: once they asked for three times its drag, and nobody noticed.
 */

const tables = shipped('motor').flatMap((motor) =>
  motor.thrustTables.map((table) => [motor.id, motor, table] as const),
);

it.each(tables)('%s: its table is of its motor and of its propeller', (_, motor, table) => {
  const propeller = shipped('propeller').find(
    ({ size }) => JSON.stringify(size) === JSON.stringify(table.propeller),
  );
  if (propeller === undefined) throw new Error('no such propeller on the shelf');
  expect(table.source).toContain('invented');

  const fit = fitFromTable(motor, motorFacts(motor), table);
  if (fit === undefined) throw new Error('no line at full throttle');
  // Within one and a half standard deviations of the listing; a table of another motor is far out.
  expect(Math.abs(fit.speedConstant.value / motor.speedConstant.value - 1)).toBeLessThan(1.5 * 0.03);
  expect(Math.abs(fit.resistance.value / motor.windingResistance!.value - 1)).toBeLessThan(1.5 * 0.12);
  expect(Math.abs(fit.noLoadCurrent.value / motor.noLoadCurrent!.value - 1)).toBeLessThan(1.5 * 0.15);
  expect(fit.misfit).toBeLessThan(1);
  // What the losses at speed came to, over what is usual (40 %, one standard deviation).
  expect(Math.abs(Math.log(fit.resistanceRise.value / 3.36e-4))).toBeLessThan(0.4);

  const doubt = { resistance: 0.12, noLoadCurrent: 0.15, resistanceRise: 0.3 };
  const points = propellerPoints(fit.model, table, doubt).map((point) => ({
    ...point,
    source: 'table',
    trust: 'maker' as const,
  }));
  expect(points).toHaveLength(table.points.length);
  for (const choice of ['both', 'new'] as const) {
    const match = matchPropeller(propeller, points, choice);
    if (!match.ok) throw new Error(match.reason);
    expect(match.value.verdict).toBe('agree');
    // No pitch, drag or lift that is rarer than one in twenty, from the table alone either.
    expect(match.value.oddness.deviations).toBeLessThan(2);
    for (const { thrust, power } of match.value.apart) {
      expect(Math.abs(thrust)).toBeLessThan(0.1);
      expect(Math.abs(power)).toBeLessThan(0.15);
    }
  }
  for (const [i, { angularSpeed, thrust, power }] of points.entries()) {
    // Ideal power T^1.5 / sqrt(2 rho A): Leishman, Principles of Helicopter Aerodynamics, 2nd ed., eq. 2.15.
    const area = (Math.PI / 4) * propeller.size.diameter ** 2;
    const merit = thrust ** 1.5 / Math.sqrt(2 * 1.225 * area) / power;
    expect(merit).toBeGreaterThan(0.31);
    expect(merit).toBeLessThan(0.75);
    expect(angularSpeed).toBeGreaterThan(points[i - 1]?.angularSpeed ?? 0);
  }
});
