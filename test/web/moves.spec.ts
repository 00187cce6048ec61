import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutMotors } from '../../src/airframe/layout.ts';
import { LAYOUT_KINDS, layoutOfKind } from '../../src/web/schedule/layouts.ts';
import { withMotorAt } from '../../src/web/stage/moves.ts';

/** The motors that a layout of the page's gives, by the airframe's own rules. */
const motorsOf = (layout: ReturnType<typeof layoutOfKind>) =>
  layoutMotors(layout as Parameters<typeof layoutMotors>[0]).motors.map(({ position }) => position);

describe('a motor dragged', () => {
  for (const kind of LAYOUT_KINDS)
    it(`stays under the hand in the layout ${kind}`, () => {
      const layout = layoutOfKind(kind, 0.18);
      const before = motorsOf(layout);
      fc.assert(
        fc.property(
          fc.integer({ min: 0, max: before.length - 1 }),
          fc.double({ min: 0.85, max: 1.2, noNaN: true }),
          (index, scale) => {
            const [x = 0, y = 0] = before[index] ?? [];
            const to = { x: x * scale, y: y * scale };
            const after = motorsOf(withMotorAt(layout, index, to) as typeof layout);
            const [nx = 0, ny = 0] = after[index] ?? [];
            expect(nx).toBeCloseTo(to.x, 6);
            // A tail motor stands on the centre line whatever the hand does.
            expect(ny).toBeCloseTo(to.y, 6);
          },
        ),
        { numRuns: 40 },
      );
    });

  // The story: a rear motor dragged wider than the front ones left a dead cat that is none, and no numbers at all.
  it('leaves a dead cat wider in front however far a rear motor is pulled', () => {
    const layout = layoutOfKind('dead cat', 0.18);
    const pulled = withMotorAt(layout, 1, { x: -0.09, y: 0.3 });
    expect(() => motorsOf(pulled as typeof layout)).not.toThrow();
  });
});
