import { describe, expect, it } from 'vitest';
import { paretoFront } from '../../../src/choose/pareto.ts';
import { groupOf } from '../../../src/choose/shortlist/archive.ts';
import { runTask } from '../../../src/choose/shortlist/runTask.ts';
import { revived, type SearchState, startState } from '../../../src/choose/shortlist/state.ts';
import type { SearchSpace } from '../../../src/choose/shortlist/types.ts';
import { bruteForce, demo, question, ready } from './smallShelf.ts';

/** Small enough to assess every combination; mixed so that most limits and rules bite somewhere. */
const FIVE_INCH: SearchSpace = {
  frames: ['turnstone-5', 'kittiwake-5', 'tystie-5', 'godwit-6', 'smew-x8'],
  motors: ['haar-2306-1720', 'haar-2207-2500', 'capful-1404-3800'],
  propellers: ['spume-5130-3', 'neap-6030-2'],
  packs: ['samphire-1300-6s', 'samphire-1500-4s', 'samphire-1100-6s'],
  electronics: [
    { controllers: 'groyne-45', flightController: 'daymark-30' },
    { controllers: 'groyne-55', flightController: 'daymark-30' },
    { flightController: 'daymark-cove-40' },
  ],
  cameras: ['periwinkle-19', 'periwinkle-14'],
};
const SMALL: SearchSpace = {
  frames: ['wheatear-35', 'dotterel-3', 'dunlin-3'],
  motors: ['capful-1404-3800', 'sough-1505-3400'],
  propellers: ['lop-3526-3', 'clapotis-3025-5'],
  packs: ['samphire-850-3s', 'samphire-850-4s'],
  electronics: [{ flightController: 'daymark-cove-20' }, { flightController: 'daymark-cove-40' }],
  cameras: ['periwinkle-14', 'periwinkle-19'],
};

const cases = [
  ['first-freestyle', 'turnstone', FIVE_INCH, {}],
  ['cruiser', 'curlew', FIVE_INCH, {}],
  ['micro', 'wheatear', SMALL, {}],
  ['guarded', 'dotterel', SMALL, { limits: [{ measure: 'flown-time', least: 200 }] }],
  [
    'first-freestyle',
    'turnstone',
    FIVE_INCH,
    {
      // A target rises and falls again: its bound must look inside the range.
      wants: [
        { measure: 'thrust-to-weight', weight: 2, scale: { kind: 'target', target: 7, tolerance: 3 } },
        { measure: 'all-up-mass', weight: 1, scale: { kind: 'target', target: 0.62, tolerance: 0.2 } },
      ],
      limits: [{ measure: 'all-up-mass', most: 0.7 }],
      riskCost: 0.01,
    },
  ],
] as const;

describe.each(cases)('%s from %s', (folder, name, space, more) => {
  const asked = question(demo(folder, name), space, more);
  const { brief } = demo(folder, name);
  const made = ready(asked, brief);
  const all = bruteForce(asked, made);

  it('gives the winners of assessing every combination, in the same order and with the same standing', async () => {
    const state = await made.search();
    const groups = new Set<string>();
    const best = all.filter((scored) => {
      const isFirst = !groups.has(groupOf(scored));
      groups.add(groupOf(scored));
      return isFirst;
    });
    expect(best.length).toBeGreaterThan(0);
    expect(state.top.map(({ key }) => key)).toEqual(best.slice(0, asked.top).map(({ key }) => key));
    for (const [index, scored] of state.top.entries()) {
      expect(scored.standing).toBeCloseTo(best[index]!.standing, 12);
      expect(scored.risks).toBe(best[index]!.risks);
    }
  });

  it('accounts for every combination once', async () => {
    const { counts } = await made.search();
    const excluded = Object.values(counts.excluded).reduce((a, b) => a + b, 0);
    const size =
      space.frames.length *
      space.motors.length *
      space.propellers.length *
      space.packs.length *
      space.electronics.length *
      space.cameras.length;
    expect(excluded + counts.bounded + counts.evaluated).toBe(size);
  });
});

it('gives the Pareto front of assessing every combination', async () => {
  const { brief, template } = demo('first-freestyle', 'turnstone');
  const front = ['first-flight-cost', 'flown-time', 'all-up-mass'];
  const fewer = {
    ...FIVE_INCH,
    frames: FIVE_INCH.frames.slice(0, 3),
    electronics: FIVE_INCH.electronics.slice(0, 2),
  };
  const asked = question({ brief, template }, fewer, { front });
  const made = ready(asked, brief);
  const all = bruteForce(asked, made);
  const points = all.map(({ values }) => front.map((id) => values[id]!));
  const wanted = paretoFront(points, ['less', 'more', 'less']).map((index) =>
    points[index]!.map(round).join(' '),
  );
  const found = (await made.search()).front.map(({ values }) =>
    front.map((id) => round(values[id]!)).join(' '),
  );
  expect(found.sort()).toEqual([...new Set(wanted)].sort());
});

/** Sums of masses in another order differ in the last bits. */
const round = (value: number) => value.toPrecision(10);

it('a checkpoint read back holds heat never reached as never', async () => {
  const made = ready(question(demo('micro', 'wheatear'), SMALL), demo('micro', 'wheatear').brief);
  const state = await made.search();
  const never = { ...state.top[0]!, values: { 'full-throttle-time-to-limit': Number.POSITIVE_INFINITY } };
  const kept = { ...state, top: [never, ...state.top] };
  expect(revived(JSON.parse(JSON.stringify(kept)) as SearchState)).toEqual(kept);
});

describe('however it is run', () => {
  const asked = question(demo('first-freestyle', 'turnstone'), FIVE_INCH);
  const made = ready(asked, demo('first-freestyle', 'turnstone').brief);
  const result = ({ top, front }: SearchState) => JSON.stringify({ top, front });

  it('the shortlist is the same with any number of workers, ending in any order', async () => {
    const alone = await made.search();
    for (const workers of [2, 5]) {
      let turn = 0;
      const crowd = await made.search({
        workers,
        run: async (task, bar, promised) => {
          await new Promise((resolve) => setTimeout(resolve, (turn++ * 7) % 5));
          return runTask(made.searcher, task, bar, promised);
        },
      });
      expect(result(crowd)).toBe(result(alone));
    }
  });

  it('stopped after any task and resumed from its checkpoint as text, the shortlist is the same', async () => {
    const whole = await made.search();
    for (const after of [0, 1, 3]) {
      let last: SearchState = startState(made.prepared, 'test');
      await made.search({
        onProgress: (state) => (last = state),
        isCancelled: () => last.done.length >= after,
      });
      expect(last.done.length).toBeLessThan(made.prepared.tasks.length);
      const resumed = await made.search({}, JSON.parse(JSON.stringify(last)) as SearchState);
      expect(result(resumed)).toBe(result(whole));
      expect(resumed.done.length).toBe(made.prepared.tasks.length);
    }
  });
});
