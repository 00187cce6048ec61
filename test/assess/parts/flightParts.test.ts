import { describe, expect, it } from 'vitest';
import { dragOf } from '../../../src/assess/parts/dragOf.ts';
import { wiringHeat } from '../../../src/assess/parts/heat.ts';
import { levelFlight } from '../../../src/assess/parts/levelFlight.ts';
import { styleLegs, usualLegs } from '../../../src/assess/parts/mission/usualLegs.ts';
import { usualMission } from '../../../src/assess/parts/mission.ts';
import { controlInReserve } from '../../../src/assess/parts/reserve.ts';
import type { PartResult } from '../../../src/assess/parts/types.ts';
import { windHolding } from '../../../src/assess/parts/wind.ts';
import { PURPOSES } from '../../../src/build/schema/brief.ts';
import { styles } from '../../../src/flight/styles.ts';
import { contextOf, DEMOS, everyNumber } from './crafts.ts';

const parts = [levelFlight, windHolding, controlInReserve, wiringHeat, usualMission];
const numberOf = ({ measures }: PartResult, id: string): number => {
  const found = measures.find((measure) => measure.id === id);
  if (found === undefined) throw new Error(`no measure ${id}`);
  return found.value;
};

describe.each(DEMOS)('flight parts of %s', (demo) => {
  const context = contextOf(demo);
  const results = parts.map((part) => part.run(context));

  it('give finite numbers only, bands round their values, words that stand alone', () => {
    const ids = new Set<string>();
    for (const { measures, findings, data } of results) {
      everyNumber({ measures, findings, data }, (number, path) =>
        expect(Number.isFinite(number), path).toBe(true),
      );
      for (const { id, value, band, how, source, label } of measures) {
        expect(ids.has(id), id).toBe(false);
        ids.add(id);
        expect(band[0], id).toBeLessThanOrEqual(value);
        expect(band[1], id).toBeGreaterThanOrEqual(value);
        for (const text of [how, source, label]) expect(text.length, id).toBeGreaterThan(3);
      }
      for (const { says, remedy } of findings)
        expect(`${says} ${remedy}`).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it('agree with one another', () => {
    const [level, wind, reserve, , mission] = results as [
      PartResult,
      PartResult,
      PartResult,
      PartResult,
      PartResult,
    ];
    // Steering in hand and a pack further down both cost speed.
    expect(numberOf(wind, 'wind-held')).toBeLessThan(numberOf(level, 'top-speed'));
    expect(numberOf(level, 'best-endurance-speed')).toBeLessThan(numberOf(level, 'best-range-speed'));
    expect(numberOf(reserve, 'roll-stop-time')).toBeGreaterThan(numberOf(reserve, 'roll-bank-time'));
    expect(numberOf(reserve, 'last-roll-moment')).toBeLessThanOrEqual(
      1.001 * numberOf(reserve, 'roll-moment'),
    );
    // Four tenths of the charge, against the wind: under half the range down to the reserve.
    expect(numberOf(mission, 'turn-back-distance')).toBeLessThan(0.6 * numberOf(level, 'range-against-wind'));
  });
});

describe('control left', () => {
  it('tells what one motor bears for good, and what is left of the craft then', () => {
    for (const demo of ['first-freestyle/turnstone', 'guarded/dotterel', 'cruiser/curlew'] as const) {
      const context = contextOf(demo);
      const { measures, data } = controlInReserve.run(context);
      const told = (id: string) => measures.find((measure) => measure.id === id)!;
      const [borne, left] = [told('borne-thrust'), told('left-after-motor-hot')];
      const hover = (9.80665 * context.craft.massProperties.mass) / context.craft.motors.length;
      expect(borne.value).toBeGreaterThan(1.1 * hover);
      expect(borne.value).toBeCloseTo(Math.min(...data!.motorHot!.map(({ bears }) => bears)), 9);
      expect(borne.leansOn[0]!.input).toBe('motor cooling');
      expect(borne.band[1] / borne.band[0]).toBeGreaterThan(1.3);
      // A share: the guarded one's band once reached 130 %.
      expect(left.band[1]).toBeLessThanOrEqual(1);
      expect(left.band[0]).toBeLessThanOrEqual(left.value);
      expect(left.value).toBeGreaterThan(told('left-after-motor-out').value);
    }
  });

  it('gives a four no credit after a lost motor', () => {
    const result = controlInReserve.run(contextOf('first-freestyle/turnstone'));
    expect(numberOf(result, 'left-after-motor-out')).toBe(0);
    expect(result.findings.find(({ id }) => id === 'motor-out')!.says).toContain(
      'nothing can be held standing',
    );
    expect(new Set(result.data!.motorOut!.map(({ held }) => held))).toEqual(new Set(['only spinning fast']));
    expect(numberOf(result, 'failures-without-control')).toBe(numberOf(result, 'motor-failures'));
  });
});

describe("a craft's drag", () => {
  it('counts no propellers, and less than its parts one by one', () => {
    const { craft } = contextOf('first-freestyle/turnstone');
    const { areas, bars } = dragOf(craft);
    const frontArea = areas.front.area;
    // A five-inch craft shows about a hundred square centimetres from ahead.
    expect(frontArea).toBeGreaterThan(0.006);
    expect(frontArea).toBeLessThan(0.014);
    expect(bars.length).toBeGreaterThanOrEqual(4);
  });
});

describe('usual flights', () => {
  it('go out and come home by the same way, whatever the purpose', () => {
    const { brief } = contextOf('first-freestyle/turnstone', {}, false);
    for (const purpose of PURPOSES) {
      const legs = usualLegs({ ...brief, purpose }, styles.freestyle, { out: 15, home: 12, wind: 5 }, 1);
      const ways = legs.flatMap(({ leg }) => (leg.kind === 'cruise' ? [leg] : []));
      expect(ways).toHaveLength(2);
      expect(ways[0]!.distance).toBe(ways[1]!.distance);
      expect(ways[0]!.headwind).toBe(5);
      expect(ways[1]!.headwind).toBe(-5);
    }
  });

  it('a style in rounds keeps its time and its shares', () => {
    const legs = styleLegs(styles.race, 120, 4, 1);
    const time = (pull?: number) =>
      legs.reduce((sum, { leg }) => {
        if (leg.kind === 'pull' && (pull === undefined || leg.thrustToWeight === pull))
          return sum + leg.duration;
        return leg.kind === 'full throttle' && pull === undefined ? sum + leg.duration : sum;
      }, 0);
    expect(time()).toBeCloseTo(120, 9);
    expect(time(2.5)).toBeCloseTo(30, 9);
  });
});
