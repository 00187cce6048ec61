import { describe, expect, it } from 'vitest';
import { shakePart } from '../../../src/assess/parts/shake/shakePart.ts';
import { contextOf } from './crafts.ts';

describe('the swing told with a mode', () => {
  const context = contextOf('first-freestyle/turnstone');
  const shake = shakePart.run(context).data!.shake!;

  it('stands where propellers turn as fast as the mode rings, and nowhere else', () => {
    const speeds = shake.throttles.map(({ angularSpeed }) => angularSpeed);
    const [low, high] = [Math.min(...speeds), Math.max(...speeds)];
    const turned = shake.modes.map(
      ({ frequency }) => frequency * 2 * Math.PI >= low && frequency * 2 * Math.PI <= high,
    );
    expect(new Set(turned).size).toBe(2);
    expect(shake.modes.map(({ swing }) => swing !== undefined)).toEqual(turned);
  });

  it('is of the size that the response at the flight controller says', () => {
    // Two roads: one mode by its formula, and all modes by superposition at the throttles of the table, whose steps
    // stand a little off the peaks. The two are modes with little else near them that turns the hub.
    for (const shape of ['yaw twist', 'roll rocking'] as const) {
      const index = shake.modes.findIndex((each) => each.shape === shape);
      const { swing, frequency, motion } = shake.modes[index]!;
      const { throttle } = shake.crossings.find((each) => each.mode === index && each.what === 'imbalance')!;
      const off = (each: { readonly throttle: number }) => Math.abs(each.throttle - throttle);
      const near = shake.response.toSorted((a, b) => off(a) - off(b))[0]!;
      const largest = Math.max(...motion.tips.map(({ motion: [x, y, z] }) => Math.hypot(x!, y!, z!)));
      const turn = Math.hypot(...motion.hub.slice(3)) * (swing! / largest) * 2 * Math.PI * frequency;
      expect(near.turnRate / turn, shape).toBeGreaterThan(0.7);
      expect(near.turnRate / turn, shape).toBeLessThan(1.3);
    }
  });

  it('gives every arm a motion', () => {
    for (const { motion } of shake.modes) {
      expect(motion.hub).toHaveLength(6);
      expect(motion.tips.map(({ arm }) => arm)).toEqual(context.craft.frame.arms.map(({ name }) => name));
    }
  });
});
