import { expect, it } from 'vitest';
import { layoutMotors } from '../../../src/airframe/layout.ts';
import { wakeTable, writeWash } from '../../../src/flight/wakes/wakeTable.ts';

/** Found by the fuzz: behind a wake as flat as can be, discs in its own plane had no number. */
it.each(['octo', 'true X', 'hexa X'] as const)('has a number at every skew, flat ones too: %s', (kind) => {
  const stations = layoutMotors({ kind, diagonal: 0.4 }).motors.map(({ position }) => ({
    position,
    propDiameter: 0.13,
  }));
  const table = wakeTable(stations);
  const out = new Float64Array(stations.length);
  for (const throughSpeed of [0, 1e-9, 0.5, 5]) {
    const source = { inducedSpeed: 2, throughSpeed, edgewiseSpeed: 14 };
    writeWash(
      table,
      stations.map(() => source),
      out,
    );
    for (const wash of out) expect(Math.abs(wash)).toBeLessThan(12);
  }
});
