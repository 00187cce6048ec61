import { describe, expect, it } from 'vitest';
import { armDirection, armLength } from '../../../src/airframe/armOutline.ts';
import { frameArms } from '../../../src/airframe/askFrame.ts';
import { framePrimitives } from '../../../src/airframe/framePrimitives.ts';
import { type HitDirection, hit, hitHeading, SURFACES, type Surface } from '../../../src/airframe/hits.ts';
import { itemMass } from '../../../src/airframe/massProperties.ts';
import { looseParts } from '../../../src/assess/parts/hits/looseParts.ts';
import { armsMass, craftFrame } from '../../../src/assess/parts/shake/craftFrame.ts';
import { firstModesOf } from '../../../src/assess/parts/shake/structure.ts';
import type { PartContext } from '../../../src/assess/parts/types.ts';
import { barArms, breaksAt, DEAD_CAT, like, SQUASHED_X, TRUE_X, weakest } from './layouts.ts';

/**
 * What the trade says of arms (common practice, no source), for whole aircraft alike in all that is not
 * compared, struck at the middle of the motor's bell. docs/method/airframe-facts.md has the numbers.
 */
const trueX = like({ layout: TRUE_X });
const squashed = like({ layout: SQUASHED_X });
const deadCat = like({ layout: DEAD_CAT });
const ways = ['flat', 'end-on', 'side-on', 'from ahead'] as const;

describe('a true X', () => {
  it('has its arms at 90 degrees', () => {
    const yaws = trueX.craft.frame.arms.map(armDirection).sort((a, b) => a - b);
    for (let i = 1; i < 4; i++) expect(yaws[i]! - yaws[i - 1]!).toBeCloseTo(Math.PI / 2, 9);
  });

  /** The same arms struck in their own plane, as when the end of an arm meets something before the motor does. */
  const inPlane = (direction: HitDirection, surface: Surface) => {
    const { craft } = trueX;
    const loose = looseParts(craft);
    const reserves = frameArms(craftFrame(craft).arms).map((arm) => {
      const answer = hit({
        arm,
        material: craft.frame.material,
        craft: craft.massProperties,
        heading: hitHeading(arm, direction),
        contactHeight: 0,
        rootHole: 0.0032,
        speed: 5,
        surface,
        ...(loose === undefined ? {} : { loose }),
      });
      if (!answer.ok) throw new Error(answer.reason);
      return answer.value.reserve;
    });
    return Math.min(...reserves);
  };

  it.each(SURFACES)(
    'bears more along its arms than from below when the end of the arm itself is struck, on hard ground most of all: $name',
    (surface) => {
      const along = inPlane('end-on', surface);
      expect(along).toBeGreaterThan(1.05 * inPlane('flat', surface));
      // On grass the push lasts long enough to buckle the arm; across it, force alone counts.
      if (surface.name !== 'grass') expect(along).toBeGreaterThan(1.05 * inPlane('side-on', surface));
    },
  );

  it('bears least along its arms when the bell above the arm is struck: the push bends it and throws the motor aside', () => {
    for (const surface of ['grass', 'wood', 'concrete'])
      expect(breaksAt(trueX, 'end-on', surface)).toBeLessThan(breaksAt(trueX, 'flat', surface));
  });
});

describe('a dead cat', () => {
  const front = (context: PartContext) =>
    context.craft.frame.arms.find(({ tip }) => tip[0] > 0 && tip[1] > 0)!;

  it('takes less of a hit from ahead along its sideways front arm than a true X does, at equal reach', () => {
    expect(armLength(front(deadCat))).toBeCloseTo(armLength(front(trueX)), 2);
    const along = (context: PartContext) => Math.cos(armDirection(front(context)));
    expect(along(deadCat)).toBeLessThan(0.5 * along(trueX));
  });

  it('so has less reserve from ahead on grass; on concrete, where energy counts, no less', () => {
    expect(weakest(deadCat, 'from ahead', 'grass').reserve).toBeLessThan(
      0.95 * weakest(trueX, 'from ahead', 'grass').reserve,
    );
    const [cat, x] = [deadCat, trueX].map((context) => weakest(context, 'from ahead', 'concrete').reserve);
    expect(cat! / x!).toBeGreaterThan(0.95);
    expect(cat! / x!).toBeLessThan(1.25);
  });

  it('has heavier rear arms where they come out longer: the geometry decides', () => {
    const items = framePrimitives(deadCat.craft.frame, deadCat.craft.layout);
    const massOf = (name: string) => itemMass(items.find((item) => item.name === name)!);
    const [ahead, behind] = [
      front(deadCat),
      deadCat.craft.frame.arms.find(({ tip }) => tip[0] < 0 && tip[1] > 0)!,
    ];
    expect(armLength(behind)).toBeGreaterThan(armLength(ahead));
    expect(massOf(behind.name)).toBeGreaterThan(massOf(ahead.name));
    // Swept further aside the front arms are the long and heavy ones.
    const wide = like({ layout: { ...DEAD_CAT, frontWidth: 0.25 } }).craft.frame.arms;
    expect(armLength(wide.find(({ tip }) => tip[0] > 0)!)).toBeGreaterThan(
      armLength(wide.find(({ tip }) => tip[0] < 0)!),
    );
  });
});

it('a squashed X keeps most of the strength of a true X, whichever way it is struck', () => {
  for (const surface of ['grass', 'wood', 'concrete']) {
    for (const way of ways) {
      expect(breaksAt(squashed, way, surface), `${way} ${surface}`).toBeGreaterThan(
        0.95 * breaksAt(trueX, way, surface),
      );
    }
  }
});

describe('thick and narrow against thin and wide, of equal mass', () => {
  // The pad under the motor is as wide on both, so the thin one gets a little more width.
  const thick = barArms(0.006, 0.01);
  const thin = barArms(0.004, 0.0163);
  const modes = (context: PartContext) => {
    const found = firstModesOf(craftFrame(context.craft));
    if (!found.ok) throw new Error(found.reason);
    return found.value;
  };

  it('weighs the same', () => {
    const [a, b] = [thick, thin].map((context) => armsMass(craftFrame(context.craft)));
    expect(Math.abs(a! / b! - 1)).toBeLessThan(0.03);
  });

  it('is stiffer up and down, and bears more from below on grass', () => {
    expect(modes(thick).upright).toBeGreaterThan(1.3 * modes(thin).upright);
    expect(breaksAt(thick, 'flat', 'grass')).toBeGreaterThan(1.15 * breaksAt(thin, 'flat', 'grass'));
  });

  it('is weaker side-on on grass, where force counts; on wood and concrete the thin one is twisted to breaking first', () => {
    const loss = (surface: string) =>
      breaksAt(thick, 'side-on', surface) / breaksAt(thin, 'side-on', surface);
    expect(loss('grass')).toBeLessThan(0.88);
    for (const surface of ['wood', 'concrete']) expect(loss(surface)).toBeGreaterThan(1);
  });
});

describe('an arm in the wash', () => {
  it('takes thrust in proportion to its width', () => {
    const share = (width: number) => barArms(0.005, width).craft.motors[0]!.downloadShare;
    expect(share(0.024) / share(0.012)).toBeCloseTo(2, 6);
    // A 12 mm arm under a 5 inch propeller takes a few per cent (common practice, no source).
    expect(share(0.012)).toBeGreaterThan(0.02);
    expect(share(0.012)).toBeLessThan(0.08);
  });
});
