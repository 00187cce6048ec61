import { describe, expect, it } from 'vitest';
import { type ArmQuestion, askArm, type Grip } from '../../src/airframe/askArm.ts';
import type { PlateModuli } from '../../src/airframe/section.ts';
import { iso, oneWay, ort, quasi } from '../airframe/materials.ts';

/**
 * Solid finite elements: CalculiX 2.20, C3D20R bricks, root face fixed, tip section rigid, motor a rigid
 * body above the mid-plane. A-cases: figures of the project's case file. S-, G- and H-cases: our own
 * runs of the same program with scripts/solid-arm.py; H-cases were run after every constant was set.
 * Tolerances are the aims of issue 4: first out-of-plane 1 %, first in-plane 2 %, torsion 3 % (stubby,
 * under 4 widths long, 5 %), tip stiffness 1 % (stubby 2 %), stress away from the root 1 %.
 */

type Tip = readonly [grams: number, height: number, ix: number, iy: number, iz: number];
const plain: Tip = [35, 0, 2881.7, 2881.7, 3430];
const heavy: Tip = [50, 16, 6000, 6000, 7500];
const raised: Tip = [35, 12, 2881.7, 2881.7, 3430];

const arm = (
  [length, root, tip, thickness]: readonly [number, number, number, number],
  moduli: PlateModuli,
  body?: Tip,
  kind: Grip['kind'] = 'held face',
): ArmQuestion => ({
  length: length / 1e3,
  outline: [
    { at: 0, width: root / 1e3 },
    { at: 1, width: tip / 1e3 },
  ],
  thickness: thickness / 1e3,
  moduli,
  density: moduli === quasi ? 1520 : 1550,
  grip: { kind },
  ...(body === undefined
    ? {}
    : {
        tipBody: {
          mass: body[0] / 1e3,
          height: body[1] / 1e3,
          inertia: [body[2] * 1e-9, body[3] * 1e-9, body[4] * 1e-9] as const,
        },
      }),
});

interface Case {
  readonly id: string;
  readonly question: ArmQuestion;
  /** First modes [Hz]; the aim of each by its kind, Z, Y or T. */
  readonly modes: readonly (readonly [number, 'Z' | 'Y' | 'T'])[];
  /** Tip deflection under 10 N [mm]. */
  readonly deflection: readonly [ux: number, uy: number, uz: number];
}

const cases: readonly Case[] = [
  {
    id: 'A1 no motor',
    question: arm([100, 12, 12, 5], iso),
    modes: [
      [460.4834, 'Z'],
      [1092.471, 'Y'],
      [2852.705, 'Z'],
      [5916.682, 'T'],
    ],
    deflection: [0.0003315869, 0.09312829, 0.5296935],
  },
  {
    id: 'A2',
    question: arm([100, 12, 12, 5], iso, plain),
    modes: [
      [112.416, 'Z'],
      [267.6473, 'Y'],
      [796.7552, 'T'],
      [1269.914, 'Z'],
    ],
    deflection: [0.0003315869, 0.09312829, 0.5296935],
  },
  {
    id: 'A4 tapered',
    question: arm([160, 18, 12, 6], ort, [60, 15, 7215, 7215, 8670]),
    modes: [
      [65.28487, 'Z'],
      [141.2315, 'Y'],
      [398.199, 'Y'],
      [546.4643, 'Z'],
    ],
    deflection: [0.0003466205, 0.1232092, 0.8948169],
  },
  {
    id: 'A6',
    question: arm([90, 10, 10, 6], ort, [25, 11, 1433.3, 1433.3, 1800]),
    modes: [
      [184.3204, 'Z'],
      [260.9219, 'Y'],
      [784.4825, 'Y'],
      [1374.301, 'Z'],
    ],
    deflection: [0.000288257, 0.09561041, 0.2644805],
  },
  {
    id: 'A6 between plates',
    question: arm([90, 10, 10, 6], ort, [25, 11, 1433.3, 1433.3, 1800], 'between plates'),
    modes: [
      [178.8833, 'Z'],
      [249.0826, 'Y'],
      [764.8008, 'Y'],
      [1356.627, 'Z'],
    ],
    deflection: [0.0003035503, 0.1088811, 0.2808709],
  },
  {
    id: 'S1 stubby',
    question: arm([35, 16, 16, 5], iso, raised),
    modes: [
      [538.1245, 'Z'],
      [958.5007, 'Y'],
      [2047.591, 'Z'],
      [2872.975, 'Y'],
    ],
    deflection: [8.591989e-5, 0.001910095, 0.01687215],
  },
  {
    id: 'S2 stubby',
    question: arm([35, 16, 16, 5], ort, raised),
    modes: [
      [532.6095, 'Z'],
      [612.4959, 'Y'],
      [1842.191, 'Z'],
      [2619.955, 'Y'],
    ],
    deflection: [8.395096e-5, 0.002242071, 0.01791042],
  },
  {
    id: 'S3 steep taper',
    question: arm([40, 20, 14, 4], ort, raised),
    modes: [
      [347.3026, 'Z'],
      [457.3481, 'Y'],
      [1253.921, 'Z'],
      [2360.254, 'Y'],
    ],
    deflection: [0.000115123, 0.002770568, 0.04391569],
  },
  {
    id: 'S4 quasi-isotropic',
    question: arm([60, 14, 10, 4], quasi, raised),
    modes: [
      [158.6168, 'Z'],
      [306.979, 'Y'],
      [755.7165, 'Z'],
      [917.8781, 'Y'],
    ],
    deflection: [0.0002917424, 0.02409083, 0.2441292],
  },
  {
    id: 'G5 one-way carbon between plates',
    question: arm([90, 10, 10, 6], oneWay, raised, 'between plates'),
    modes: [
      [218.4361, 'Y'],
      [226.991, 'Y'],
    ],
    deflection: [0.0001457845, 0.05664164, 0.1359571],
  },
  {
    id: 'G6 wide and thin between plates',
    question: arm([60, 20, 20, 3], ort, raised, 'between plates'),
    modes: [
      [138.029, 'Z'],
      [276.8111, 'Y'],
    ],
    deflection: [0.0001993681, 0.009195435, 0.32234],
  },
  {
    id: 'H1 wide, one-way carbon, between plates',
    question: arm([50, 18, 12, 4], oneWay, raised, 'between plates'),
    modes: [
      [322.5286, 'T'],
      [345.3406, 'Z'],
      [1418.794, 'Z'],
      [1857.932, 'Y'],
    ],
    deflection: [8.336885e-5, 0.005073455, 0.04932599],
  },
  {
    id: 'H2 widening to the motor',
    question: arm([70, 8, 12, 5], quasi, raised),
    modes: [
      [148.4641, 'Z'],
      [224.1112, 'Y'],
      [636.9876, 'Y'],
      [927.7396, 'Z'],
    ],
    deflection: [0.0003286084, 0.09206678, 0.2885057],
  },
  {
    id: 'H3 shortest',
    question: arm([25, 14, 14, 6], iso, raised),
    modes: [
      [951.359, 'Z'],
      [1328.444, 'Y'],
      [3285.054, 'Z'],
      [3672.518, 'Y'],
    ],
    deflection: [5.806126e-5, 0.0009199706, 0.004163664],
  },
  {
    id: 'H4 long, thin, between plates',
    question: arm([110, 16, 9, 3], ort, heavy, 'between plates'),
    modes: [
      [40.89343, 'Z'],
      [85.4415, 'Y'],
      [247.2356, 'Z'],
      [339.9615, 'Y'],
    ],
    deflection: [0.0005895858, 0.1348361, 2.750723],
  },
  {
    id: 'H5 stubby with a heavy motor',
    question: arm([45, 15, 11, 5], ort, heavy),
    modes: [
      [284.4491, 'Z'],
      [284.8865, 'Y'],
      [972.3958, 'Z'],
      [1312.904, 'Y'],
    ],
    deflection: [0.0001344603, 0.006130665, 0.04258358],
  },
];
const aims = { Z: 0.01, Y: 0.02, T: 0.03 };

describe('arms against solid finite elements', () => {
  it.each(cases)('$id', ({ question, modes, deflection }) => {
    const answer = askArm(question);
    if (!answer.ok) throw new Error(answer.reason);
    for (const [i, [frequency, kind]] of modes.entries()) {
      expect(Math.abs(answer.value.frequencies[i]!.frequency / frequency - 1)).toBeLessThan(aims[kind]);
    }
    const stubby = question.length < 4 * question.outline[0]!.width;
    const { x, y, z } = answer.value.tipStiffness;
    for (const [i, stiffness] of [x, y, z].entries()) {
      expect(Math.abs((stiffness * deflection[i]! * 1e-3) / 10 - 1)).toBeLessThan(stubby ? 0.02 : 0.01);
    }
  });

  it.each([
    ['A1', [100, 12, 12, 5], iso, -17.9744, -7.49547],
    ['A4', [160, 18, 12, 6], ort, -14.194, -4.83304],
    ['A6', [90, 10, 10, 6], ort, -13.3407, -8.00737],
  ] as const)('%s: stress 10 mm from the root under 10 N', (_id, size, moduli, upright, sideways) => {
    const stressOf = (force: readonly [number, number, number], across: number, up: number): number => {
      const answer = askArm({ ...arm(size, moduli), load: { force }, stressAt: { along: 0.01, across, up } });
      if (!answer.ok || answer.value.stress === undefined) throw new Error('no stress');
      return answer.value.stress.alongArm / 1e6;
    };
    const [length, root, tip, thickness] = size;
    const width = root + ((tip - root) * 10) / length;
    expect(stressOf([0, 0, 10], 0, thickness / 2e3) / upright).toBeCloseTo(1, 2);
    expect(stressOf([0, 10, 0], width / 2e3, 0) / sideways).toBeCloseTo(1, 2);
  });

  it('misses the first lateral mode by a fifth or more when the motor stands on the mid-plane', () => {
    const flat = askArm(arm([90, 10, 10, 6], ort, [25, 0, 1433.3, 1433.3, 1800]));
    expect(flat.ok && flat.value.frequencies[1]!.frequency / 260.9219).toBeGreaterThan(1.18);
  });
});
