import { describe, expect, it } from 'vitest';
import { askFrame } from '../../src/airframe/askFrame.ts';
import { buildArms } from '../../src/airframe/buildArms.ts';
import { framePrimitives } from '../../src/airframe/framePrimitives.ts';
import { frameQuestion } from '../../src/airframe/frameQuestion.ts';
import { layoutMotors } from '../../src/airframe/layout.ts';
import { massProperties } from '../../src/airframe/massProperties.ts';
import type { FrameGeometry, LayoutParameters, MassItem } from '../../src/airframe/types.ts';
import { sheet } from './sampleFrame.ts';

function frameOf(parameters: LayoutParameters): {
  frame: FrameGeometry;
  items: readonly MassItem[];
  tips: Record<string, MassItem[]>;
} {
  const layout = layoutMotors(parameters);
  const frame: FrameGeometry = {
    construction: 'separate arms',
    material: sheet,
    arms: buildArms(layout, {
      bodyHalfLength: 0.05,
      bodyHalfWidth: 0.02,
      rootWidth: 0.015,
      tipWidth: 0.011,
      thickness: 0.005,
      padDiameter: 0.026,
      clampedLength: 0.02,
    }),
    plates: [
      {
        name: 'bottom plate',
        outline: [
          [-0.06, -0.02],
          [0.06, -0.02],
          [0.06, 0.02],
          [-0.06, 0.02],
        ],
        thickness: 0.002,
        z: 0.0035,
        cutAway: 0.2,
      },
    ],
    standoffs: [],
    guards: [],
    pack: { side: 'above', faceZ: -0.03, strapRange: [-0.03, 0.03], maxLength: 0.09, maxWidth: 0.04 },
    stack: { place: [0, 0], faceZ: 0, headroom: 0.02, patterns: [0.0305] },
    hardwareMass: 0.008,
  };
  const tips: Record<string, MassItem[]> = {};
  for (const arm of frame.arms) {
    tips[arm.name] = arm.motors.map((name) => ({
      name: `${name} motor`,
      part: 'motors',
      primitive: { kind: 'cylinder', diameter: 0.028, height: 0.02 },
      place: [arm.tip[0], arm.tip[1], -0.0125],
      amount: { mass: 0.034 },
    }));
  }
  return { frame, items: framePrimitives(frame, layout), tips };
}

describe('a frame from its geometry', () => {
  const everyLayout: readonly LayoutParameters[] = [
    { kind: 'true X', diagonal: 0.22 },
    { kind: 'H', width: 0.17, length: 0.17 },
    { kind: 'dead cat', frontWidth: 0.2, rearWidth: 0.16, length: 0.16 },
    { kind: 'hexa plus', diagonal: 0.3 },
    { kind: 'X8 coaxial', width: 0.16, length: 0.16, discSpacing: 0.04 },
  ];
  it.each(everyLayout)('$kind: weighs and rings from one description', (parameters) => {
    const { frame, items, tips } = frameOf(parameters);
    const arms = new Set(frame.arms.map(({ name }) => name));
    const hub = [...items.filter(({ name }) => !arms.has(name))];
    const pack: MassItem = {
      name: 'pack',
      part: 'pack',
      primitive: { kind: 'box', length: 0.075, width: 0.035, height: 0.035 },
      place: [0, 0, -0.045],
      amount: { mass: 0.19 },
    };
    const answer = askFrame(frameQuestion(frame, { tips, hub: [...hub, pack] }));
    if (!answer.ok) throw new Error(answer.reason);
    const frequencies = answer.value.frequencies.map(({ frequency }) => frequency);
    // Common 5 inch frames ring between some 80 and 300 Hz first (common practice, no source).
    expect(frequencies[0]!).toBeGreaterThan(40);
    expect(frequencies[0]!).toBeLessThan(400);
    expect([...frequencies].sort((a, b) => a - b)).toEqual(frequencies);
    const whole = massProperties(items);
    expect(Math.abs(whole.centreOfGravity[1])).toBeLessThan(1e-9);
  });

  it('an arm weighs its outline: trapezium, clamped tongue and the pad past it', () => {
    const { items } = frameOf({ kind: 'true X', diagonal: 0.22 });
    const arm = items.find(({ name }) => name === 'front right arm')!;
    const mass = massProperties([arm]).mass;
    const length = 0.11 - Math.hypot(0.02, 0.02);
    const bar = ((0.015 + 0.011) / 2) * length + 0.015 * 0.02;
    const pad = (Math.PI / 4) * 0.026 ** 2;
    // The pad hides part of the bar's end under it: between the bar with half a pad and with a whole one.
    expect(mass).toBeGreaterThan((bar + pad / 2) * 0.005 * 1550);
    expect(mass).toBeLessThan((bar + pad) * 0.005 * 1550);
  });
});
