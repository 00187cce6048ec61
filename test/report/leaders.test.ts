import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cross, orderNotes } from '../../src/report/leaders.ts';

describe('orderNotes', () => {
  it('uses every place once and crosses no two leaders', () => {
    const spot = fc.record({
      x: fc.double({ min: 0, max: 700, noNaN: true }),
      y: fc.double({ min: 0, max: 600, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(spot, { maxLength: 9 }), (places) => {
        const slots = places.map((_, i) => ({ x: 800, y: 30 + i * 70 }));
        const order = orderNotes(places, slots);
        expect(order.toSorted((a, b) => a - b)).toEqual(places.map((_, i) => i));
        const lines = order.map((place, slot) => ({ from: places[place]!, to: slots[slot]! }));
        lines.forEach((a, i) => {
          for (const b of lines.slice(i + 1)) expect(cross(a, b)).toBe(false);
        });
      }),
    );
  });

  it('sees a crossing where there is one', () => {
    const [o, ne, n, e] = [
      { x: 0, y: 0 },
      { x: 1, y: 1 },
      { x: 0, y: 1 },
      { x: 1, y: 0 },
    ];
    expect(cross({ from: o, to: ne }, { from: n, to: e })).toBe(true);
    expect(cross({ from: o, to: e }, { from: n, to: ne })).toBe(false);
  });

  it('wants a slot for each place', () => {
    expect(() => orderNotes([{ x: 0, y: 0 }], [])).toThrow(RangeError);
  });
});
