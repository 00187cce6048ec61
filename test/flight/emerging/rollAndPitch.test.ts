import { describe, expect, it } from 'vitest';
import { layoutMotors } from '../../../src/airframe/layout.ts';
import { massProperties } from '../../../src/airframe/massProperties.ts';
import type { LayoutParameters } from '../../../src/airframe/types.ts';
import { controlReserve, type Reserve } from '../../../src/flight/reserve/momentReach.ts';
import { plainParts } from './plainParts.ts';

/**
 * 'Roll and pitch differ in stretched and squashed X, and their moments match in true X; the
 * accelerations differ with the inertias' (common practice, no source). Nothing of it is coded: the same
 * motors, packs and plates are put on three layouts.
 */
function build(layout: LayoutParameters, packYaw = 0): Reserve {
  const motors = layoutMotors(layout).motors;
  const items = plainParts(layout, 0.22, { mass: 0.2, yaw: packYaw });
  const { mass, centreOfGravity, inertia } = massProperties(items);
  const reserve = controlReserve({
    mass,
    centreOfGravity,
    inertia,
    gravity: 9.80665,
    effectors: motors.map(({ name, position, spin }) => ({
      name,
      position,
      spin,
      torquePerThrust: 0.014,
      minimumThrust: 0.15,
      maximumThrust: 12,
    })),
  });
  if (!reserve.ok) throw new Error(reserve.reason);
  return reserve.value;
}

/** Layouts of equal motor diagonal, 0.22 m. */
const side = 0.22 / Math.SQRT2;
const long = 0.17;
const short = Math.sqrt(0.22 ** 2 - long ** 2);

describe('roll against pitch', () => {
  const trueX = build({ kind: 'true X', diagonal: 0.22 });
  const stretched = build({ kind: 'stretched X', width: short, length: long });
  const squashed = build({ kind: 'squashed X', width: long, length: short });

  it('moments match in true X', () => {
    expect(trueX.moments.roll.positive / trueX.moments.pitch.positive).toBeCloseTo(1, 9);
    const h = build({ kind: 'H', width: side, length: side });
    expect(h.moments.roll.positive).toBeCloseTo(trueX.moments.roll.positive, 9);
  });

  it('moments go with the levers in stretched and squashed X', () => {
    expect(stretched.moments.pitch.positive / stretched.moments.roll.positive).toBeCloseTo(long / short, 9);
    expect(squashed.moments.roll.positive / squashed.moments.pitch.positive).toBeCloseTo(long / short, 9);
  });

  it('accelerations differ even in true X while the pack lies lengthwise', () => {
    const ratio = trueX.accelerations.roll.positive / trueX.accelerations.pitch.positive;
    expect(ratio).toBeGreaterThan(1.05);
    expect(ratio).toBeLessThan(2);
    const across = build({ kind: 'true X', diagonal: 0.22 }, Math.PI / 2);
    const turned = across.accelerations.roll.positive / across.accelerations.pitch.positive;
    expect(turned).toBeLessThan(ratio);
  });

  it('a longer lever is not a livelier axis: the motors at its end weigh', () => {
    // Moment grows with the lever, the motors' inertia with its square: pitch in the stretched X gains less than its moment.
    const moments = stretched.moments.pitch.positive / trueX.moments.pitch.positive;
    const accelerations = stretched.accelerations.pitch.positive / trueX.accelerations.pitch.positive;
    expect(moments).toBeGreaterThan(1);
    expect(accelerations).toBeLessThan(moments);
  });
});
