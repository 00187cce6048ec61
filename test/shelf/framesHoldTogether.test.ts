import { describe, expect, it } from 'vitest';
import { tipGaps } from '../../src/airframe/tipGaps.ts';
import type { Point2 } from '../../src/airframe/types.ts';
import { layoutOf } from '../../src/build/resolve/layoutOf.ts';
import type { PartOf } from '../../src/build/schema/part.ts';
import { shipped } from './shippedFiles.ts';

const frames = shipped('frame');
/** Carbon laminate [kg/m3] (common practice, no source: 1500 to 1600). */
const CARBON = 1550;

function bodyOutline({ body }: PartOf<'frame'>): readonly Point2[] {
  const [x, y] = [(body?.length ?? 0) / 2, (body?.width ?? 0) / 2];
  return [
    [x, y],
    [-x, y],
    [-x, -y],
    [x, -y],
  ];
}

describe.each(frames.map((frame) => [frame.id, frame] as const))('%s', (_, frame) => {
  it('takes its largest propeller: 3 mm to the next prop, 3.5 mm to the body (common practice, no source)', () => {
    const layout = layoutOf(frame.layout, 'above');
    const body = { name: 'body', part: 'frame', shape: 'outline', outline: bodyOutline(frame) } as const;
    for (const { to, gap } of tipGaps(layout, frame.maxPropeller, [body])) {
      expect(gap, to).toBeGreaterThan(to === 'body' ? 0.0035 : 0.003);
    }
  });

  it('weighs more than its arms and plates cut from the sheet, and not thrice as much', () => {
    const layout = layoutOf(frame.layout, 'above');
    const { arms, body } = frame;
    const axes = new Map(layout.motors.map(({ armIndex, position }) => [armIndex, position]));
    const half = Math.min(body?.length ?? 0, body?.width ?? 0) / 2;
    const density = frame.material.kind === 'moulded nylon' ? 1150 : CARBON;
    let armVolume = 0;
    for (const [x, y] of axes.values()) {
      armVolume += (Math.hypot(x, y) - half) * (arms.neckWidth ?? 0) * arms.thickness.value;
    }
    const plates = (frame.bottomThickness ?? 0) + (frame.topThickness ?? 0);
    const plateVolume = 0.7 * (body?.length ?? 0) * (body?.width ?? 0) * plates;
    const sheet = (armVolume + plateVolume) * density;
    const rest = frame.mass.value / sheet;
    expect(rest).toBeGreaterThan(1);
    // Rings, servo and hinge, or a moulded body are not sheet.
    const more = frame.guards || frame.layout.kind === 'tri' ? 9 : 3;
    expect(rest).toBeLessThan(more);
  });

  it('has room for a flying camera the shelf sells, and bolts for motors the shelf sells', () => {
    const widths = shipped('camera').map(({ width }) => width);
    expect(frame.cameraWidths.some((width) => widths.some((w) => Math.abs(w - width) < 1e-4))).toBe(true);
    const circles = shipped('motor').flatMap(({ mountCircles }) => mountCircles ?? []);
    for (const circle of frame.motorCircles) {
      expect(circles.some((other) => Math.abs(other - circle) < 1e-4)).toBe(true);
    }
  });

  it('lists motor screws that reach 1.5 to 3 mm into the motor', () => {
    const listed = frame.notInTheBox.find(({ item }) => item === 'motor screws');
    const screws = shipped('screws').find(({ id }) => id === listed?.part);
    if (!screws) return;
    const reach = screws.length - frame.arms.thickness.value;
    expect(reach).toBeGreaterThan(0.0015);
    expect(reach).toBeLessThanOrEqual(0.003 + 1e-9);
  });
});
