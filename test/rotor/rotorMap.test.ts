import { describe, expect, it } from 'vitest';
import { standardAtmosphere } from '../../src/air/standardAtmosphere.ts';
import { bladeFromNameplate } from '../../src/rotor/blade.ts';
import { buildRotorMap, emptyReading, readRotorMap } from '../../src/rotor/rotorMap.ts';
import { solveRotor } from '../../src/rotor/solveRotor.ts';
import type { MapDetail, RotorMap } from '../../src/rotor/types.ts';
import { sections } from './arbitrary.ts';

const sea = standardAtmosphere({ height: 0 });
const high = standardAtmosphere({ height: 3000, temperatureOffset: 10 });
const blades = [
  bladeFromNameplate({ diameter: 0.127, pitch: 0.0762, bladeCount: 2 }),
  bladeFromNameplate({ diameter: 0.127, pitch: 0.11, bladeCount: 3 }),
  bladeFromNameplate({ diameter: 0.0635, pitch: 0.03, bladeCount: 4 }),
];

function mapOf(index: number, detail: MapDetail): RotorMap {
  const map = buildRotorMap(blades[index]!, sections, sea, detail);
  if (!map.ok) throw new Error(map.reason);
  return map.value;
}

/** Errors against direct solves, of the static thrust and torque at the same rpm; sorted. */
function errors(map: RotorMap, flowLast: number, air = sea): number[] {
  const all: number[] = [];
  for (let i = 0; i < 300; i++) {
    const tip = 10 * 26 ** ((i * 0.61803) % 1);
    const angularSpeed = tip / (map.blade.diameter / 2);
    const axialSpeed = flowLast * ((i * 0.7548) % 1) * tip;
    const direct = solveRotor(map.blade, sections, { angularSpeed, axialSpeed, air });
    const still = solveRotor(map.blade, sections, { angularSpeed, axialSpeed: 0, air });
    if (!direct.ok || !still.ok) continue;
    const read = readRotorMap(map, angularSpeed, axialSpeed, air);
    all.push(
      Math.abs(read.thrust - direct.value.thrust) / still.value.thrust,
      Math.abs(read.torque - direct.value.torque) / still.value.torque,
    );
  }
  return all.sort((a, b) => a - b);
}

const quantile = (sorted: number[], q: number) => sorted[Math.floor(q * (sorted.length - 1))]!;

describe('rotor map', () => {
  it('full: in hover within 0.1 % in the middle and 1.5 % at worst; up to V = 0.25 tip 4 %', () => {
    blades.forEach((_, i) => {
      const map = mapOf(i, 'full');
      const still = errors(map, 0);
      expect(quantile(still, 0.5)).toBeLessThan(0.001);
      expect(quantile(still, 1)).toBeLessThan(0.015);
      expect(quantile(errors(map, 0.25), 1)).toBeLessThan(0.04);
    });
  });

  it('coarse: 95 % of hover within 4 %, of forward flight within 6 %', () => {
    blades.forEach((_, i) => {
      const map = mapOf(i, 'coarse');
      expect(quantile(errors(map, 0), 0.95)).toBeLessThan(0.04);
      expect(quantile(errors(map, 0.25), 0.95)).toBeLessThan(0.06);
    });
  });

  it('read in thin warm air, a map made at sea level keeps 95 % within 1.5 %', () => {
    blades.forEach((_, i) => {
      expect(quantile(errors(mapOf(i, 'full'), 0.2, high), 0.95)).toBeLessThan(0.015);
    });
  });

  it('slopes are those of the reading itself', () => {
    const map = mapOf(1, 'full');
    const h = 1e-3;
    for (const [omega, V] of [
      [700, 0],
      [1500, 4],
      [2500, 25],
      [1200, 30],
    ] as const) {
      for (const air of [sea, high]) {
        const here = readRotorMap(map, omega, V, air);
        const faster = readRotorMap(map, omega + h, V, air);
        const slower = readRotorMap(map, omega - h, V, air);
        const ahead = readRotorMap(map, omega, V + h, air);
        const behind = readRotorMap(map, omega, V - h, air);
        const slope = (a: number, b: number) => (a - b) / (2 * h);
        expect(here.thrustByAngularSpeed).toBeCloseTo(slope(faster.thrust, slower.thrust), 6);
        expect(here.torqueByAngularSpeed).toBeCloseTo(slope(faster.torque, slower.torque), 8);
        expect(here.thrustByAxialSpeed).toBeCloseTo(slope(ahead.thrust, behind.thrust), 4);
        expect(here.torqueByAxialSpeed).toBeCloseTo(slope(ahead.torque, behind.torque), 6);
      }
    }
  });

  it('a stopped rotor reads zero thrust, and outside is said', () => {
    const map = mapOf(0, 'coarse');
    const still = readRotorMap(map, 0, 0, sea);
    expect(Math.abs(still.thrust)).toBeLessThan(1e-9);
    expect(readRotorMap(map, 1000, 5, sea).inside).toBe(true);
    expect(readRotorMap(map, 1000, -20, sea).inside).toBe(false);
    expect(readRotorMap(map, 6000, 0, sea).inside).toBe(false);
  });

  it('fills what it is given and allocates nothing else', () => {
    const map = mapOf(0, 'coarse');
    const out = emptyReading();
    expect(readRotorMap(map, 1000, 0, sea, out)).toBe(out);
  });
});
