import { describe, expect, it } from 'vitest';
import { framePrimitives } from '../../../src/airframe/framePrimitives.ts';
import { itemMass } from '../../../src/airframe/massProperties.ts';
import { costLines } from '../../../src/assess/money/costLines.ts';
import { knocksPart } from '../../../src/assess/parts/knocks/knocksPart.ts';
import { shakePart } from '../../../src/assess/parts/shake/shakePart.ts';
import { contextOf, type Demo } from '../parts/crafts.ts';
import { like, ownFrame, sized, TRUE_X } from './layouts.ts';

/** What the trade says of plates, boxes and sizes (common practice, no source). */
describe('a one-piece plate', () => {
  const { clampedLength: _, ...arms } = ownFrame.arms;
  const solids = (construction: 'separate arms' | 'one-piece plate', thickness: number) => {
    const { craft } = like({
      layout: TRUE_X,
      arms: {
        ...(construction === 'separate arms' ? ownFrame.arms : arms),
        construction,
        thickness: { ...arms.thickness, value: thickness },
      },
    });
    return framePrimitives({ ...craft.frame, hardwareMass: 0 }, craft.layout).reduce(
      (sum, item) => sum + itemMass(item),
      0,
    );
  };
  const bottom = ownFrame.bottomThickness ?? 0.0025;

  it('is lighter where it is cut thinner, as it usually is: 4 mm in one piece against 5 mm arms on a plate', () => {
    expect(bottom).toBeCloseTo(0.0025, 9);
    expect(solids('one-piece plate', 0.004)).toBeLessThan(0.9 * solids('separate arms', 0.005));
  });

  it('is not at equal thickness, but for the clamp’s screws', () => {
    const more = solids('one-piece plate', 0.005) - solids('separate arms', 0.005);
    expect(more).toBeGreaterThan(0);
    // Eight M3 screws of steel, 12 mm long, about 0.9 g each with their nuts (handbook mass, from memory).
    expect(more).toBeLessThan(8 * 0.9e-3);
  });

  it.each(['first-freestyle/tystie', 'guarded/dotterel'] as const)(
    '%s: the same crashes cost more than with separate arms',
    (name) => {
      const { data } = knocksPart.run(contextOf(name, {}, false));
      const { otherCut } = data!.knocks!;
      expect(otherCut.construction).toBe('separate arms');
      expect(otherCut.money).toBeLessThan(otherCut.moneyAsIs);
    },
  );

  it.each(['first-freestyle/turnstone', 'first-freestyle/whimbrel', 'cruiser/curlew'] as const)(
    '%s: cut in one piece it would cost more, and more of an evening',
    (name) => {
      const { data, measures } = knocksPart.run(contextOf(name, {}, false));
      const { otherCut, benchTime, parts } = data!.knocks!;
      expect(otherCut.construction).toBe('one-piece plate');
      // One sum on every face: `as it is` once was the mean of other, fewer histories. None of these pays shipping.
      expect(otherCut.moneyAsIs).toBe(measures.find(({ id }) => id === 'knocks-money')!.value);
      expect(parts.reduce((sum, { money }) => sum + money, 0)).toBeCloseTo(otherCut.moneyAsIs, 6);
      expect(otherCut.money).toBeGreaterThan(otherCut.moneyAsIs);
      expect(otherCut.benchTime).toBeGreaterThan(1.5 * benchTime);
    },
  );
});

describe('what is not in the box', () => {
  const frameWithAll = (name: Demo) => {
    const { craft, brief, shelf } = contextOf(name, {}, false);
    const lines = costLines(craft, brief, shelf).lines.filter(
      ({ group, id }) => group === 'missing from the box' || id.startsWith('spare arm'),
    );
    const missing = lines.reduce((sum, { count, unitPrice }) => sum + count * unitPrice, 0);
    const listed = craft.parts.frame.price.amount;
    return { listed, whole: listed + missing };
  };

  it('a cheaper frame with the missing mounts, straps and spare arm costs what a complete one does', () => {
    const complete = frameWithAll('first-freestyle/whimbrel');
    const cheaper = frameWithAll('first-freestyle/kittiwake');
    expect(complete.whole).toBe(complete.listed);
    expect(cheaper.listed).toBeLessThan(0.75 * complete.listed);
    expect(cheaper.whole).toBeGreaterThanOrEqual(complete.whole);
  });

  it('the cheapest of all costs nearly double its tag, and is still the cheapest', () => {
    const cheapest = frameWithAll('first-freestyle/turnstone');
    expect(cheapest.whole).toBeGreaterThan(1.8 * cheapest.listed);
    for (const other of ['bonxie', 'kittiwake', 'redshank', 'whimbrel'] as const) {
      expect(cheapest.whole).toBeLessThan(frameWithAll(`first-freestyle/${other}`).whole);
    }
  });
});

describe('6 and 7 inch on the arms of a 5 inch frame', () => {
  const five = sized(5);
  const six = sized(6);
  const seven = sized(7);
  const [small, middle, large] = [five, six, seven].map((context) => shakePart.run(context));
  const value = (result: typeof small, id: string) =>
    result!.measures.find((measure) => measure.id === id)!.value;
  const lowestFelt = (result: typeof small) =>
    result!.data!.shake!.modes.find(({ felt }) => felt > 1.5)!.frequency;

  it('is more prone to it by its modes: they sink, and the first that is felt sinks into the controller’s band', () => {
    expect(value(large, 'first-upright-mode')).toBeLessThan(0.6 * value(small, 'first-upright-mode'));
    expect(value(large, 'first-sideways-mode')).toBeLessThan(0.6 * value(small, 'first-sideways-mode'));
    expect(lowestFelt(small)).toBeGreaterThan(100);
    expect(lowestFelt(large)).toBeLessThan(100);
    expect(large!.findings.some(({ id }) => id === 'mode-in-controller-band')).toBe(true);
    expect(small!.findings.some(({ id }) => id === 'mode-in-controller-band')).toBe(false);
  });

  it('and by what one nick does to the gyro in hover: a larger blade loses more, further out', () => {
    expect(value(large, 'nicked-gyro-rate')).toBeGreaterThan(1.5 * value(small, 'nicked-gyro-rate'));
  });

  it('by the same measures a 6 inch lies between them, and just misses that band', () => {
    for (const id of ['first-upright-mode', 'first-sideways-mode']) {
      expect(value(middle, id), id).toBeLessThan(0.85 * value(small, id));
      expect(value(middle, id), id).toBeGreaterThan(1.2 * value(large, id));
    }
    for (const id of ['nicked-gyro-rate', 'hover-gyro-rate']) {
      expect(value(middle, id), id).toBeGreaterThan(1.2 * value(small, id));
      expect(value(middle, id), id).toBeLessThan(value(large, id));
    }
    expect(lowestFelt(middle)).toBeGreaterThan(100);
    expect(lowestFelt(middle)).toBeLessThan(0.8 * lowestFelt(small));
  });

  it('but not by the distance of hover from the first mode: both turn well above it, the larger further', () => {
    const over = (context: typeof five, result: typeof small) =>
      context.flight!.told.figures['hover-speed']! / (2 * Math.PI) / value(result, 'first-upright-mode');
    expect(over(five, small)).toBeGreaterThan(1.3);
    expect(over(six, middle)).toBeGreaterThan(over(five, small));
    expect(over(seven, large)).toBeGreaterThan(over(six, middle));
  });

  it('nor by the board’s g in hover from well balanced propellers, which is as it falls on a mode', () => {
    expect(value(large, 'hover-shake') / value(small, 'hover-shake')).toBeLessThan(1.4);
  });
});
