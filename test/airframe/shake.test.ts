import { describe, expect, it } from 'vitest';
import { frameStructure } from '../../src/airframe/askFrame.ts';
import { freeModes } from '../../src/airframe/frameModel.ts';
import { frameModes } from '../../src/airframe/frameModes.ts';
import {
  campbellCrossings,
  hubShake,
  imageBlur,
  imbalanceForce,
  mountTransmission,
  residualEccentricity,
  shakeModel,
} from '../../src/airframe/shake.ts';
import { hubBody, placedArm } from './sampleFrame.ts';

const structure = frameStructure({
  arms: [45, 135, 225, 315].map((a) => placedArm(a)),
  hub: { kind: 'rigid', body: hubBody },
});
if (!structure.ok) throw new Error(structure.reason);
const { model } = structure.value;
const free = freeModes(model);
if (!free.ok) throw new Error(free.reason);
const withDamping = (damping: number) => shakeModel(free.value, damping);
const first = frameModes(model, 1);
const firstFrequency = first.ok ? 2 * Math.PI * first.value[0]!.frequency : Number.NaN;

describe('shake', () => {
  it('far below the modes moves the craft as a rigid body', () => {
    // A force in the disc, turning: F/m at the centre of gravity in each of two directions, sqrt 2 in all.
    // Taken at the centre of gravity of all, so that the moment turns but does not move it.
    const armMass = ((0.0144 + 0.012) / 2) * 0.085 * 0.005 * 1550;
    const mass = 0.35 + 4 * (0.035 + armMass);
    const centre = [(0.35 * 0.004) / mass, 0, -(0.35 * 0.012 + 4 * 0.035 * 0.012) / mass] as const;
    const source = { arm: 'arm at 45', discHeight: 0.03, turning: 1, axial: 0, spin: 1 } as const;
    const shaken = hubShake(withDamping(0.02), source, firstFrequency / 300, centre);
    expect((shaken.acceleration * mass) / Math.SQRT2).toBeCloseTo(1, 3);
  });

  it('at resonance goes as one over the damping', () => {
    const modes = frameModes(model, 10);
    const rocking = modes.ok
      ? modes.value.find(({ shape }) => shape === 'pitch rocking' || shape === 'roll rocking')
      : undefined;
    const frequency = 2 * Math.PI * rocking!.frequency;
    const source = { arm: 'arm at 45', discHeight: 0.03, turning: 0, axial: 1, spin: 1 } as const;
    const at = (damping: number) => hubShake(withDamping(damping), source, frequency, [0, 0, 0]).turnRate;
    expect(at(0.001) / at(0.002)).toBeCloseTo(2, 1);
  });

  it('is mirrored: a left motor turning the other way shakes the middle as its right twin', () => {
    const shake = withDamping(0.02);
    const one = (arm: string, spin: 1 | -1) =>
      hubShake(shake, { arm, discHeight: 0.03, turning: 1, axial: 0.3, spin }, 900, [0.01, 0, -0.01]);
    expect(one('arm at 45', 1).acceleration / one('arm at 315', -1).acceleration).toBeCloseTo(1, 9);
  });

  it('smears a picture by the whole swing when the shutter is slow', () => {
    expect(imageBlur(1, 1000, 0.1, 800)).toBeCloseTo(800 * 2 * 0.001, 12);
    expect(imageBlur(1, 1000, 1e-5, 800)).toBeCloseTo(800 * 1e-5, 6);
  });

  it('a soft mount passes all at sqrt 2 times its frequency, whatever its damping (Den Hartog)', () => {
    for (const damping of [0.05, 0.2, 0.7])
      expect(mountTransmission(Math.SQRT2 * 80, 80, damping)).toBeCloseTo(1, 12);
    expect(mountTransmission(800, 80, 0.1)).toBeLessThan(0.03);
  });

  it('finds crossings inside the range only, rising', () => {
    const found = campbellCrossings([100, 300], [1, 2], [2 * Math.PI * 80, 2 * Math.PI * 160]);
    expect(found.map(({ mode, order }) => [mode, order])).toEqual([
      [0, 1],
      [1, 2],
    ]);
  });
});

describe('balance grade', () => {
  it('G 6.3 at 30 000 rpm: 2.00535 um; 30 g: 0.59376 N (ISO 21940-11, e = G/Omega; arithmetic by hand)', () => {
    const speed = (30_000 * 2 * Math.PI) / 60;
    const eccentricity = residualEccentricity(0.0063, speed);
    expect(eccentricity * 1e6).toBeCloseTo(2.00535, 5);
    expect(imbalanceForce(0.03 * eccentricity, speed)).toBeCloseTo(0.59376, 5);
  });
});
