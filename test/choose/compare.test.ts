import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/assessment.ts';
import { compare } from '../../src/choose/compare.ts';
import type { Scale, SoftWant } from '../../src/choose/shortlist/softWants.ts';
import { utility } from '../../src/choose/shortlist/softWants.ts';

const IDS = ['first-flight-cost', 'flown-time', 'thrust-to-weight', 'full-throttle-time-to-limit'];

interface Told {
  readonly values: readonly (number | undefined)[];
  readonly risks: number;
  readonly stops: number;
}

/** An assessment that holds what a comparison looks at. */
function assessment({ values, risks, stops }: Told, index: number): Assessment {
  const finding = { sheet: 'fit', says: '', remedy: '', source: '', parts: [] } as const;
  const risk = { ...finding, id: 'rule', title: '', passes: false, severity: 'risk' as const };
  return {
    build: `build ${index}`,
    brief: 'any',
    flies: true,
    measures: IDS.flatMap((id, at) => {
      const value = values[at];
      const form = {
        label: id,
        sheet: 'lift',
        quantity: 'ratio',
        better: 'more',
        how: '',
        source: '',
      } as const;
      return value === undefined ? [] : [{ ...form, id, value, band: [value, value] as const, leansOn: [] }];
    }),
    findings: [
      ...Array.from({ length: stops }, (_, at) => ({
        ...finding,
        id: `stop ${at}`,
        severity: 'stop' as const,
      })),
      ...Array.from({ length: risks }, () => risk),
      // Found elsewhere than by the fit rules: what is measured counts by its scale only.
      { ...finding, id: 'thrust-to-weight-window', severity: 'risk' as const },
    ],
    fit: Array.from({ length: risks }, () => risk),
    stations: [],
    money: { currency: 'GBP', lines: [], unpriced: [] },
    inferred: [],
  };
}

const number = fc.double({ min: -10, max: 10, noNaN: true });
const scale: fc.Arbitrary<Scale> = fc.oneof(
  fc.record({
    kind: fc.constant('ramp' as const),
    worst: number,
    best: fc.double({ min: 11, max: 20, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant('window' as const),
    low: number,
    high: fc.double({ min: 11, max: 20, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant('target' as const),
    target: number,
    tolerance: fc.double({ min: 0.1, max: 9, noNaN: true }),
  }),
);
const wants: fc.Arbitrary<readonly SoftWant[]> = fc.tuple(
  ...IDS.map((measure) =>
    fc.record({ measure: fc.constant(measure), weight: fc.double({ min: 0, max: 10, noNaN: true }), scale }),
  ),
);
const told = fc.record({
  values: fc.array(fc.option(number, { nil: undefined }), { minLength: IDS.length, maxLength: IDS.length }),
  risks: fc.integer({ min: 0, max: 4 }),
  stops: fc.integer({ min: 0, max: 1 }),
});

describe('an order of builds', () => {
  // Independence of irrelevant alternatives (Arrow 1951): the order of two hangs on these two alone.
  it('stays when any one of them is left out', () => {
    fc.assert(
      fc.property(fc.array(told, { minLength: 3, maxLength: 8 }), wants, fc.nat(), (builds, wanted, pick) => {
        const all = builds.map(assessment);
        const gone = pick % all.length;
        const rest = all.filter((_, index) => index !== gone);
        const names = (of: readonly Assessment[]) =>
          compare(of, wanted).order.map((index) => of[index]?.build);
        expect(names(rest)).toEqual(names(all).filter((name) => name !== all[gone]?.build));
      }),
    );
  });

  it('gives a build the same standing in whatever company', () => {
    fc.assert(
      fc.property(told, told, told, wants, (own, one, other, wanted) => {
        const beside = (company: Told) =>
          compare([own, company].map(assessment), wanted).columns[0]?.standing;
        expect(beside(one)).toBe(beside(other));
      }),
    );
  });
});

describe('a standing', () => {
  const ramp = (measure: string, worst: number, best: number, weight = 1): SoftWant => ({
    measure,
    weight,
    scale: { kind: 'ramp', worst, best },
  });

  it('is the weighted mean of the scales less 4 points a risk of fit', () => {
    const wanted = [ramp('first-flight-cost', 1000, 500, 3), ramp('flown-time', 100, 300)];
    const { columns } = compare(
      [
        { values: [750, 200, 0, 0], risks: 2, stops: 0 },
        { values: [2000, 400, 0, 0], risks: 0, stops: 0 },
      ].map(assessment),
      wanted,
    );
    // (3 x 1/2 + 1 x 1/2) / 4 - 2 x 0.04 and (3 x 0 + 1) / 4, by hand.
    expect(columns[0]?.standing).toBeCloseTo(0.42, 12);
    expect(columns[1]?.standing).toBeCloseTo(0.25, 12);
  });

  it('counts never too hot in full, and a value that is missing as nothing', () => {
    const builds = [
      { values: [1, undefined, 1, undefined], risks: 0, stops: 0 },
      { values: [1, 1, 1, 15], risks: 0, stops: 0 },
    ].map(assessment);
    const heat = ramp('full-throttle-time-to-limit', 0, 30);
    expect(compare(builds, [heat]).columns.map(({ standing }) => standing)).toEqual([1, 0.5]);
    expect(compare(builds, [ramp('flown-time', 0, 1)]).columns.map(({ standing }) => standing)).toEqual([
      0, 1,
    ]);
  });

  it('reasons and risks add up to the lead, and what flips it puts the two level', () => {
    const wanted = [ramp('first-flight-cost', 10, 0, 2), ramp('flown-time', 0, 10)];
    const builds = [
      { values: [2, 5, 0, 0], risks: 1, stops: 0 },
      { values: [5, 7, 0, 0], risks: 0, stops: 0 },
    ];
    const { columns, reasons, flips, order } = compare(builds.map(assessment), wanted);
    const [a, b] = columns.map(({ standing }) => standing ?? 0);
    expect(order).toEqual([0, 1]);
    const sum = reasons.reduce(
      (all, { weight, speaksFor }) => all + (speaksFor === 'leader' ? weight : -weight),
      0,
    );
    expect(sum - 0.04).toBeCloseTo((a ?? 0) - (b ?? 0), 12);
    expect(flips.length).toBeGreaterThan(0);
    for (const flip of flips) {
      const weights = wanted.map((want) =>
        flip.kind === 'weight' && want.measure === flip.measure ? { ...want, weight: flip.to } : want,
      );
      const moved = builds.map(({ values, ...rest }, index) => ({
        ...rest,
        values: values.map((value, at) =>
          flip.kind === 'value' && index === 0 && IDS[at] === flip.measure ? value + flip.by : value,
        ),
      }));
      const [one, other] = compare(moved.map(assessment), weights).columns;
      expect((one?.standing ?? 0) - (other?.standing ?? 1)).toBeCloseTo(0, 9);
    }
  });

  it('is worth nothing half a window outside', () => {
    expect(utility({ kind: 'window', low: 6, high: 10 }, 12)).toBe(0);
    expect(utility({ kind: 'window', low: 6, high: 10 }, 11)).toBe(0.5);
  });
});
