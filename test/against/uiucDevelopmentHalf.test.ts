// The whole development half of the UIUC Propeller Database (sources in uiuc.test.ts), where its folder
// is present. Limits: what this method reached on it plus about a tenth, so that a change for the worse
// shows; the same propeller measured twice differs by 3 to 6 %.
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readUiuc, type UiucPropeller, type UiucRow } from '../../scripts/uiuc/readUiuc.ts';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { rotorBand } from '../../src/rotor/band.ts';
import { bladeFromNameplate, bladeFromTable } from '../../src/rotor/blade.ts';
import { anchorBlade } from '../../src/rotor/fitBlade.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import type { Blade } from '../../src/rotor/types.ts';
import { sections } from '../rotor/arbitrary.ts';

const propellers = readUiuc(fileURLToPath(new URL('../../../shared/data/uiuc', import.meta.url)));
const air = standardAtmosphere({ height: 220 });

interface Point {
  readonly thrustError: number;
  readonly powerError: number;
  readonly inThrustBand: boolean;
  readonly inPowerBand: boolean;
}

/** The mean over propellers would follow one odd propeller: medians of each propeller's median. */
const median = (values: number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

function points(p: UiucPropeller, blade: Blade, rows: readonly UiucRow[]): Point[] {
  return rows.map(({ angularSpeed, advanceRatio, thrustCoefficient, powerCoefficient }) => {
    const axialSpeed = (advanceRatio * angularSpeed * p.diameter) / (2 * Math.PI);
    const condition = { angularSpeed, axialSpeed, air };
    const state = solveRotor(blade, sections, condition);
    if (!state.ok) throw new Error(`${p.name}: ${state.reason}`);
    const band = rotorBand(blade, sections, condition, state.value);
    if (!band.ok) throw new Error(`${p.name}: ${band.reason}`);
    const within = (value: number, [low, high]: readonly [number, number]) => value >= low && value <= high;
    return {
      thrustError: Math.abs(state.value.thrustCoefficient / thrustCoefficient - 1),
      powerError: Math.abs(state.value.powerCoefficient / powerCoefficient - 1),
      inThrustBand: within(thrustCoefficient, band.value.thrustCoefficient),
      inPowerBand: within(powerCoefficient, band.value.powerCoefficient),
    };
  });
}

function summary(make: (p: UiucPropeller) => Blade | undefined, rows: 'still' | 'advancing') {
  const byPropeller = (propellers ?? []).flatMap((p) => {
    const blade = make(p);
    const some = blade === undefined ? [] : points(p, blade, p[rows]);
    return some.length === 0 ? [] : [some];
  });
  const shareOf = (key: 'inThrustBand' | 'inPowerBand') =>
    byPropeller.reduce((sum, some) => sum + some.filter((q) => q[key]).length / some.length, 0) /
    byPropeller.length;
  return {
    count: byPropeller.length,
    thrust: median(byPropeller.map((some) => median(some.map((q) => q.thrustError)))),
    power: median(byPropeller.map((some) => median(some.map((q) => q.powerError)))),
    thrustShare: shareOf('inThrustBand'),
    powerShare: shareOf('inPowerBand'),
  };
}

const table = (p: UiucPropeller) => p.shape && bladeFromTable({ ...p, ...p.shape });
const plate = (p: UiucPropeller) => bladeFromNameplate(p);

describe.skipIf(propellers === undefined)('UIUC development half', () => {
  it.each([
    ['blade table, static', table, 'still', 0.075, 0.12],
    ['blade table, advancing', table, 'advancing', 0.12, 0.14],
    ['nameplate, static', plate, 'still', 0.12, 0.145],
    ['nameplate, advancing', plate, 'advancing', 0.15, 0.165],
  ] as const)('%s', (_, make, rows, thrustLimit, powerLimit) => {
    const found = summary(make, rows);
    expect(found.count).toBeGreaterThan(40);
    expect(found.thrust).toBeLessThan(thrustLimit);
    expect(found.power).toBeLessThan(powerLimit);
    for (const share of [found.thrustShare, found.powerShare]) {
      expect(share).toBeGreaterThan(0.75);
      expect(share).toBeLessThan(0.92);
    }
  });

  // Found by a check on Reynolds number: anchored on the slowest still point above 20k, where the section's polars begin,
  // the band held only 49 % (C_T) and 57 % (C_P) of the fastest ones, an e-fold of Reynolds number further on, because
  // it did not grow with the distance.
  it('anchored on its slowest still point, the band holds the fastest', () => {
    let thrust = 0;
    let power = 0;
    let count = 0;
    for (const p of propellers ?? []) {
      const blade = table(p) || plate(p);
      const [slow, ...rest] = [...p.still]
        .sort((a, b) => a.angularSpeed - b.angularSpeed)
        .filter(({ angularSpeed }) => {
          const state = solveRotor(blade, sections, { angularSpeed, axialSpeed: 0, air });
          return state.ok && state.value.reynolds75 > 20_000;
        });
      const fast = rest.at(-1);
      if (slow === undefined || fast === undefined) continue;
      const n = slow.angularSpeed / (2 * Math.PI);
      const unit = air.density * n ** 2 * p.diameter ** 4;
      const fit = anchorBlade(blade, sections, {
        angularSpeed: slow.angularSpeed,
        thrust: slow.thrustCoefficient * unit,
        power: slow.powerCoefficient * unit * n * p.diameter,
        air,
      });
      if (!fit.ok) continue;
      const [found] = points(p, fit.value, [fast]);
      count += 1;
      if (found?.inThrustBand) thrust += 1;
      if (found?.inPowerBand) power += 1;
    }
    expect(count).toBeGreaterThan(60);
    for (const share of [thrust / count, power / count]) {
      expect(share).toBeGreaterThan(0.7);
      expect(share).toBeLessThan(0.95);
    }
  });
});
