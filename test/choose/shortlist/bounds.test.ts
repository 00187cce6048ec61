import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessCraft } from '../../../src/assess/assess.ts';
import { rangeOf, standingBound } from '../../../src/choose/shortlist/bounds.ts';
import { resolveCandidate } from '../../../src/choose/shortlist/candidate.ts';
import { evaluate } from '../../../src/choose/shortlist/evaluate.ts';
import { firstStop } from '../../../src/choose/shortlist/finishes.ts';
import { leavesOf, refined } from '../../../src/choose/shortlist/leaves.ts';
import { nodesOf } from '../../../src/choose/shortlist/nodes.ts';
import { PAIR_RULES } from '../../../src/choose/shortlist/pairRules.ts';
import { cellOf, type SearchTask } from '../../../src/choose/shortlist/prepare.ts';
import { utility, utilityBound } from '../../../src/choose/shortlist/softWants.ts';
import { SEATS, spaceOf } from '../../../src/choose/shortlist/space.ts';
import { choiceAt, sizesOf } from '../../../src/choose/shortlist/tables.ts';
import { newTally } from '../../../src/choose/shortlist/tally.ts';
import { demo, question, ready, shelf } from './smallShelf.ts';

const BOUNDED = [
  'first-flight-cost',
  'all-up-mass',
  'flown-time',
  'thrust-to-weight',
  'full-throttle-time-to-limit',
  'hardest-motor-load',
  'pack-share',
];

describe.each([
  ['first-freestyle', 'turnstone', 'its own day'],
  // Packs sag in it and bursts are eased, which takes less current.
  ['first-freestyle', 'turnstone', 'frost'],
  ['cruiser', 'curlew-li-ion', 'its own day'],
  ['micro', 'wheatear', 'its own day'],
] as const)('bounds over the whole shelf, %s, %s, %s', (folder, name, day) => {
  const { brief: told, template } = demo(folder, name);
  // Loose limits, so that most combinations are there to be held against their bounds.
  const site = day === 'frost' ? { ...told.site, temperature: 258.15 } : told.site;
  const brief = { ...told, site, massLimit: 2, budget: { amount: 5000, currency: 'GBP' } };
  const whole = spaceOf(template, shelf, SEATS);
  // A third of the propellers, as each needs a map; one of them stalls in still air.
  const space = {
    ...whole,
    propellers: whole.propellers.filter((id, at) => at % 3 === 0 || id === 'riffle-5148-3'),
  };
  const asked = question({ brief, template }, space, {
    front: BOUNDED,
  });
  const made = ready(asked, brief);
  const { prepared, searcher } = made;
  const any = fc.nat({ max: 1_000_000 });
  const { packs, propellers } = space;
  const orders = [...Array(propellers.length * packs.length).keys()];
  const fittingOf = ({ frame, motor }: SearchTask) =>
    orders.filter((order) => {
      const propeller = Math.floor(order / packs.length);
      return (
        firstStop(prepared.tables, { frame, motor, propeller, pack: order % packs.length }) === undefined
      );
    });

  it('hold every combination drawn, at the node, at the leaf and refined', () => {
    let seen = 0;
    fc.assert(
      fc.property(any, any, any, (a, b, c) => {
        const task = prepared.tasks[a % prepared.tasks.length]!;
        const fitting = fittingOf(task);
        const order = fitting[b % Math.max(fitting.length, 1)];
        const [node] = nodesOf(searcher, task, newTally(), (each) => each === order);
        const leaves = node === undefined ? [] : leavesOf(prepared, node);
        const leaf = leaves[c % Math.max(leaves.length, 1)];
        if (node === undefined || leaf === undefined) return;
        const verdict = evaluate(asked, choiceAt(space, leaf.place), searcher.context);
        if (!verdict.ok) return;
        seen++;
        const close = refined(searcher, node, leaf);
        expect(close).toBeDefined();
        for (const ranges of [node.ranges, leaf.ranges, close!.ranges]) {
          expect(standingBound(asked, ranges)).toBeGreaterThanOrEqual(verdict.scored.standing);
          expect(ranges.risks).toBeLessThanOrEqual(verdict.scored.risks);
          for (const id of BOUNDED) {
            const [low, high] = rangeOf(id, ranges);
            const value = verdict.scored.values[id]!;
            expect(value, id).toBeGreaterThanOrEqual(low - 1e-9 * Math.abs(low));
            expect(value, id).toBeLessThanOrEqual(high + 1e-9 * Math.abs(high));
          }
        }
        expect(leaf.ranges.mass[0]).toBeCloseTo(verdict.scored.values['all-up-mass']!, 9);
      }),
      { numRuns: 150 },
    );
    expect(seen).toBeGreaterThan(20);
  });

  it('pair rules say of two parts what whole crafts that hold them say', () => {
    const sizes = sizesOf(space);
    const pick = (size: number) => fc.nat({ max: size - 1 });
    const place = fc.record({
      frame: pick(sizes.frame),
      motor: pick(sizes.motor),
      propeller: pick(sizes.propeller),
      pack: pick(sizes.pack),
      electronics: pick(sizes.electronics),
      camera: pick(sizes.camera),
    });
    fc.assert(
      fc.property(place, (at) => {
        const craft = resolveCandidate(template, choiceAt(space, at), shelf, searcher.context.ready);
        if (!craft.ok) return;
        const failing = assessCraft(craft.value, made.context).fit.filter((line) => !line.passes);
        for (const [index, { rules }] of PAIR_RULES.entries()) {
          const table = prepared.tables[index]!;
          const cell = cellOf(table, at);
          const own = failing.filter(({ id }) => rules.includes(id));
          expect(table.risks[cell], rules.join()).toBe(
            own.filter(({ severity }) => severity === 'risk').length,
          );
          const told = table.stops[cell] === 0 ? undefined : table.rules[table.stops[cell]! - 1];
          if (told !== 'must-carry') {
            expect(told !== undefined, rules.join()).toBe(own.some(({ severity }) => severity === 'stop'));
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

it('a utility bound is never under a utility inside its range, for ramps, windows and targets', () => {
  const number = fc.double({ min: -10, max: 10, noNaN: true });
  const scale = fc.oneof(
    fc
      .record({ kind: fc.constant('ramp' as const), worst: number, best: number })
      .filter((s) => Math.abs(s.best - s.worst) > 1e-3),
    fc
      .record({ kind: fc.constant('window' as const), low: number, high: number })
      .filter((s) => s.high - s.low > 1e-3),
    fc.record({
      kind: fc.constant('target' as const),
      target: number,
      tolerance: fc.double({ min: 0.01, max: 5, noNaN: true }),
    }),
  );
  fc.assert(
    fc.property(scale, number, number, fc.double({ min: 0, max: 1, noNaN: true }), (own, a, b, share) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      const inside = Math.min(high, Math.max(low, low + share * (high - low)));
      expect(utilityBound(own, low, high)).toBeGreaterThanOrEqual(utility(own, inside) - 1e-12);
    }),
  );
});
