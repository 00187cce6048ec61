import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Chart, drawChart } from '../../src/report/chart.ts';
import { alongLine, type Box, boxOf, type Name, placedNames } from '../../src/report/chartNames.ts';
import type { Shape } from '../../src/report/shapes.ts';

const PAPER: Box = { left: 0, top: 0, right: 400, bottom: 200 };
const apart = (a: Box, b: Box) =>
  a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
const inside = (box: Box, paper: Box) =>
  box.left >= paper.left && box.right <= paper.right && box.top >= paper.top && box.bottom <= paper.bottom;
const texts = (shapes: readonly Shape[]) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));
const name = (text: string, ...places: Name['places']): Name => ({ text, hand: 'label', places });

describe('names on a chart', () => {
  it('stand in their first place where it is free, else in the next', () => {
    const [here, there] = [
      { x: 20, y: 50, anchor: 'start' as const },
      { x: 20, y: 150, anchor: 'start' as const },
    ];
    const placed = placedNames([name('first', here, there), name('second', here, there)], PAPER);
    expect(placed.map(({ y }) => y)).toEqual([50, 150]);
  });

  it('rather hide one another than stick out of the paper', () => {
    const [here, out] = [
      { x: 20, y: 50, anchor: 'start' as const },
      { x: 390, y: 50, anchor: 'start' as const },
    ];
    const placed = placedNames([name('first', here), name('second', here, out)], PAPER);
    expect(placed.map(({ x }) => x)).toEqual([20, 20]);
  });

  it('stand beside a rising curve, not on it', () => {
    const points = Array.from({ length: 21 }, (_, i) => ({ x: 5 * i, y: 5 * i }));
    const chart: Chart = {
      description: 'a rising line',
      across: { label: 'x', low: 0, high: 100 },
      upright: { label: 'y', low: 0, high: 100 },
      marks: [{ kind: 'curve', points, name: 'rises all the way' }],
    };
    const { shapes } = drawChart(chart, 400, 300);
    const said = texts(shapes).find(({ text }) => text === 'rises all the way');
    const curve = shapes.find((shape) => shape.kind === 'path' && shape.ink === 'curve');
    if (said === undefined || curve?.kind !== 'path') throw new Error('the chart has lost its curve');
    const numbers = (curve.d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
    const drawn = points.map((_, i) => ({ x: numbers[2 * i] ?? 0, y: numbers[2 * i + 1] ?? 0 }));
    const box = boxOf(said.text, said.hand, said);
    expect(alongLine(drawn).filter((each) => !apart(each, box))).toEqual([]);
  });

  it('take a free place whenever they have one, whoever else is there', () => {
    const place = fc.record({
      x: fc.integer({ min: 0, max: 400 }),
      y: fc.integer({ min: 0, max: 200 }),
      anchor: fc.constantFrom('start' as const, 'middle' as const, 'end' as const),
    });
    const names = fc.array(
      fc.record({
        length: fc.integer({ min: 1, max: 20 }),
        places: fc.array(place, { minLength: 1, maxLength: 6 }),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(names, (asked) => {
        const placed = placedNames(
          asked.map(({ length, places }) => name('n'.repeat(length), ...places)),
          PAPER,
        );
        const boxes = placed.map((shape) => boxOf(shape.text, shape.hand, shape));
        boxes.forEach((box, i) => {
          const before = boxes.slice(0, i);
          const free = asked[i]!.places.some((each) => {
            const could = boxOf(placed[i]!.text, 'label', each);
            return inside(could, PAPER) && before.every((other) => apart(could, other));
          });
          if (free) expect(inside(box, PAPER) && before.every((other) => apart(box, other))).toBe(true);
        });
      }),
    );
  });

  it('of a crowded figure are apart on a telephone: modes close together, orders through them, the hover', () => {
    const line = (top: number) =>
      Array.from({ length: 40 }, (_, i) => ({ x: (100 * i) / 39, y: (top * i) / 39 }));
    const chart: Chart = {
      description: 'Modes and orders.',
      across: { label: 'throttle, %', low: 0, high: 100 },
      upright: { label: 'hertz', low: 0, high: 600 },
      marks: [
        { kind: 'level', at: 170, name: 'out-of-plane pair' },
        { kind: 'level', at: 194, band: [179, 209], name: 'out-of-plane together' },
        { kind: 'level', at: 250, band: [230, 270], name: 'pitch rocking' },
        { kind: 'level', at: 346, band: [320, 370], name: 'yaw twist' },
        { kind: 'curve', points: line(450), name: '1 a turn, imbalance' },
        { kind: 'curve', points: line(1350), name: '3 a turn, blade passing', dashed: true },
        { kind: 'plumb', at: 29, name: 'hover' },
        ...[194, 250, 346].map((y) => ({ kind: 'dot' as const, at: { x: y / 4.5, y } })),
      ],
    };
    for (const width of [320, 352, 960]) {
      const drawn = drawChart(chart, width, Math.max(180, Math.round(0.42 * width)));
      const wanted = chart.marks.flatMap((mark) => ('name' in mark ? [mark.name] : []));
      const placed = texts(drawn.shapes).filter(({ text }) => wanted.includes(text));
      expect(placed).toHaveLength(wanted.length);
      const boxes = placed.map((shape) => boxOf(shape.text, shape.hand, shape));
      boxes.forEach((box, i) => {
        expect(inside(box, { ...PAPER, right: width, bottom: drawn.frame.height }), placed[i]!.text).toBe(
          true,
        );
        for (const other of boxes.slice(0, i))
          expect(apart(box, other), `${width} ${placed[i]!.text}`).toBe(true);
      });
    }
  });
});
