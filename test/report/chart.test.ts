import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawChart } from '../../src/report/chart.ts';
import type { Shape } from '../../src/report/shapes.ts';
import { ticks } from '../../src/report/ticks.ts';

describe('ticks', () => {
  it('are round and inside', () => {
    expect(ticks(0, 100, 5)).toEqual([0, 20, 40, 60, 80, 100]);
    expect(ticks(0, 0.3, 3)).toEqual([0, 0.1, 0.2, 0.3]);
    expect(ticks(-3, 7, 5)).toEqual([-2, 0, 2, 4, 6]);
    expect(ticks(4, 4, 5)).toEqual([4]);
  });

  it('rise, stay inside and are never many more than asked', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(
        number,
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.integer({ min: 1, max: 12 }),
        (low, size, count) => {
          const found = ticks(low, low + size, count);
          expect(found.length).toBeLessThanOrEqual(count + 1);
          found.forEach((tick, i) => {
            if (i > 0) expect(tick).toBeGreaterThan(found[i - 1]!);
            expect(tick).toBeGreaterThanOrEqual(low - 1e-6 * size - 1e-9 * Math.abs(low));
            expect(tick).toBeLessThanOrEqual(low + size * (1 + 1e-6) + 1e-9 * Math.abs(low));
          });
        },
      ),
    );
  });
});

describe('drawChart', () => {
  const chart = {
    description: 'a line',
    across: { label: 'throttle, %', low: 0, high: 100 },
    upright: { label: 'lift over weight', low: 0, high: 8 },
    marks: [
      { kind: 'window' as const, low: 6, high: 10, name: 'window' },
      {
        kind: 'curve' as const,
        points: [
          { x: 0, y: 0 },
          { x: 100, y: 8 },
        ],
      },
    ],
  };

  it('puts the ends of a curve on the ends of the axes', () => {
    const { shapes } = drawChart(chart, 400, 200);
    const curve = shapes.find((shape) => shape.kind === 'path' && shape.ink === 'curve');
    expect(curve).toEqual({ kind: 'path', ink: 'curve', d: 'M40 166L384 22' });
  });

  it('cuts a window at the top of the axis', () => {
    const { shapes } = drawChart(chart, 400, 200);
    const window = shapes.find(
      (shape): shape is Extract<Shape, { kind: 'path' }> => shape.kind === 'path' && shape.ink === 'window',
    );
    // 6 of 8 up: 166 - 0.75 x 144 = 58; the window's top at 10 is cut at 8, at 22.
    expect(window?.d).toBe('M40 22L384 22L384 58L40 58Z');
  });

  it('refuses a size that cannot hold it', () => {
    expect(() => drawChart(chart, 60, 200)).toThrow(RangeError);
  });
});
