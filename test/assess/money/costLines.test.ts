import { describe, expect, it } from 'vitest';
import { type CostList, costLines } from '../../../src/assess/money/costLines.ts';
import { moneyMeasures, moneyReport } from '../../../src/assess/money/moneyMeasures.ts';
import type { Brief } from '../../../src/build/schema/brief.ts';
import type { Build } from '../../../src/build/schema/build.ts';
import { firstFlightCost } from '../../../src/knocks/firstFlightCost.ts';
import { craftFrom, demoBrief, demoBuild, shelfWith, TURNSTONE, type Variation } from '../fit/variations.ts';

interface Asked {
  readonly demo?: string;
  readonly build?: (build: Build) => void;
  readonly brief?: (brief: Brief) => void;
  readonly parts?: NonNullable<Variation['parts']>;
}

function listOf({ demo = TURNSTONE, build, brief, parts = {} }: Asked = {}): CostList {
  const ownBuild = demoBuild(demo);
  build?.(ownBuild);
  const ownBrief = demoBrief(demo);
  brief?.(ownBrief);
  const shelf = shelfWith(parts);
  return costLines(craftFrom(ownBuild, shelf, Object.keys(parts)), ownBrief, shelf);
}

const costOf = (list: CostList) => firstFlightCost(list.lines, [...list.owned]);
const toPay = (list: CostList, group: string) =>
  costOf(list).byGroup.find((each) => each.group === group)?.toPay ?? 0;
const line = (list: CostList, id: string) => list.lines.find((each) => each.id === id);

/**
 * Added up by hand from shelf/*.yaml and the builds, in pounds. Propellers, screws come in bags. Motors,
 * boards, pack, cameras, video link, receiver, plug, antenna, then extras.
 */
const BY_HAND = {
  'first-freestyle/turnstone': {
    aircraft: 36 + 4 * 13.5 + 3.4 + 38.9 + 36.9 + 35.9 + 64.9 + 149 + 119 + 13.9 + 1.4 + 9.9 + 1.5,
    // Three mounts, two straps, a bag of M3 x 8, a pad; rubbers come with the controller.
    missing: 9.5 + 4.5 + 3.5 + 2 * 2.9 + 2.6 + 2,
    spares: 5 * 3.4 + 6.5,
    // Goggles, transmitter and its two cells, charger, three more packs, key, bag, reader, fuse.
    kit: 329 + 74.9 + 2 * 5.5 + 39.9 + 3 * 35.9 + 5.9 + 12.9 + 8.9 + 9.9,
  },
  'first-freestyle/whimbrel': {
    aircraft: 92 + 4 * 23.5 + 3.4 + 58.9 + 36.9 + 35.9 + 64.9 + 149 + 119 + 13.9 + 1.4 + 9.9 + 1.5,
    missing: 0,
    spares: 5 * 3.4,
    kit: 329 + 74.9 + 2 * 5.5 + 39.9 + 3 * 35.9 + 5.9 + 12.9 + 8.9 + 9.9,
  },
  'first-freestyle/kittiwake': {
    aircraft: 66 + 4 * 13.5 + 3.4 + 58.9 + 36.9 + 41.9 + 64.9 + 149 + 119 + 13.9 + 1.4 + 9.9 + 1.5,
    missing: 9.5 + 2 * 2.9 + 2.6,
    spares: 5 * 3.4 + 8.9,
    kit: 329 + 74.9 + 2 * 5.5 + 39.9 + 3 * 41.9 + 5.9 + 12.9 + 8.9 + 9.9,
  },
  'first-freestyle/redshank': {
    aircraft: 54 + 4 * 13.5 + 3.4 + 38.9 + 36.9 + 31.9 + 64.9 + 149 + 119 + 13.9 + 1.4 + 9.9 + 1.1,
    // One strap is in the box, one more is not.
    missing: 9.5 + 3.5 + 2.9 + 2.6 + 2,
    spares: 5 * 3.4 + 7.5,
    kit: 329 + 74.9 + 2 * 5.5 + 39.9 + 3 * 31.9 + 5.9 + 12.9 + 8.9 + 9.9,
  },
  'first-freestyle/tystie': {
    aircraft: 34 + 4 * 13.9 + 3.4 + 38.9 + 36.9 + 27.5 + 64.9 + 149 + 119 + 13.9 + 1.4 + 9.9 + 1.2,
    missing: 9.5 + 4.5 + 3.5 + 2 * 2.9 + 2.6 + 2,
    // Any broken arm takes the whole plate.
    spares: 5 * 3.4 + 21,
    kit: 329 + 74.9 + 2 * 5.5 + 39.9 + 3 * 27.5 + 5.9 + 12.9 + 8.9 + 9.9,
  },
  'first-freestyle/bonxie': {
    aircraft: 59 + 4 * 13.9 + 3.4 + 58.9 + 57.9 + 41.9 + 64.9 + 149 + 119 + 13.9 + 1.4 + 9.9 + 1.5,
    missing: 9.5 + 3.5 + 2.8,
    spares: 5 * 3.4,
    kit: 329 + 74.9 + 2 * 5.5 + 39.9 + 3 * 41.9 + 5.9 + 12.9 + 8.9 + 9.9,
  },
  'micro/wheatear': {
    aircraft: 39 + 4 * 13.5 + 2.9 + 58.9 + 15.9 + 49.9 + 94.9 + 9.9 + 1.1 + 6.9 + 2.4 + 0.9,
    missing: 0,
    spares: 5 * 2.9 + 4.5,
    // Goggles, transmitter, charger and bench are at hand.
    kit: 3 * 15.9,
  },
  'guarded/dotterel': {
    aircraft: 58 + 4 * 14.5 + 3.1 + 79.9 + 18.9 + 64.9 + 149 + 94.9 + 9.9 + 1.1 + 6.9 + 0.9,
    missing: 9.5 + 2.4 + 2.5,
    spares: 5 * 3.1 + 18,
    kit: 5 * 18.9,
  },
  'cruiser/curlew': {
    aircraft:
      88 + 4 * 28.9 + 5.2 + 58.9 + 57.9 + 74.9 + 64.9 + 149 + 119 + 21.9 + 1.4 + 11.9 +
      (9.5 + 4.5 + 3.5 + 4.5 + 24.9 + 11.9 + 2 * 3.4 + 1.5), // biome-ignore format: two thoughts
    missing: 0,
    spares: 5 * 5.2 + 11.5,
    kit: 74.9,
  },
  'cruiser/curlew-li-ion': {
    aircraft:
      88 + 4 * 28.9 + 5.2 + 58.9 + 57.9 + 74.9 + 64.9 + 149 + 119 + 21.9 + 1.4 + 11.9 +
      (9.5 + 4.5 + 3.5 + 4.5 + 24.9 + 11.9 + 2 * 3.4 + 1.5), // biome-ignore format: two thoughts
    missing: 0,
    spares: 5 * 5.2 + 11.5,
    kit: 74.9,
  },
} as const;

describe.each(Object.entries(BY_HAND))('%s', (demo, byHand) => {
  const list = listOf({ demo });

  it('costs what is added up by hand', () => {
    expect(toPay(list, 'aircraft')).toBeCloseTo(byHand.aircraft, 6);
    expect(toPay(list, 'missing from the box')).toBeCloseTo(byHand.missing, 6);
    expect(toPay(list, 'spares')).toBeCloseTo(byHand.spares, 6);
    expect(toPay(list, 'kit')).toBeCloseTo(byHand.kit, 6);
    const { aircraft, missing, spares, kit } = byHand;
    expect(costOf(list).toPay).toBeCloseTo(aircraft + missing + spares + kit, 6);
  });

  it('leaves nothing without a price', () => {
    expect(list.unpriced).toEqual([]);
  });
});

describe('a cheap frame with what it lacks against a dear one with all in the box', () => {
  /** The frame, its missing mounts, straps, screws and pad, and an arm to break. */
  const whole = (demo: string, frame: string) => {
    const list = listOf({ demo });
    const arm = line(list, `spare arm: ${frame}`);
    return (
      (line(list, `aircraft: ${frame}`)?.unitPrice ?? Number.NaN) +
      toPay(list, 'missing from the box') +
      (arm?.unitPrice ?? 0)
    );
  };

  it('nearly doubles the cheapest: 36 becomes 70.40', () => {
    expect(whole(TURNSTONE, 'turnstone-5')).toBeCloseTo(36 + 27.9 + 6.5, 6);
  });

  it('makes the one of 66 dearer than the one of 92', () => {
    const kittiwake = whole('first-freestyle/kittiwake', 'kittiwake-5');
    const whimbrel = whole('first-freestyle/whimbrel', 'whimbrel-5');
    expect(kittiwake).toBeCloseTo(66 + 17.9 + 8.9, 6);
    expect(whimbrel).toBeCloseTo(92, 6);
    expect(kittiwake).toBeGreaterThan(whimbrel);
  });
});

describe('bags', () => {
  const bags = (demo: string, frame?: string) => {
    const list = listOf({ demo, ...(frame === undefined ? {} : { build: (b) => (b.frame.part = frame) }) });
    const count = (group: string) => line(list, `${group}: spume-5130-3`)?.count ?? 0;
    return [count('aircraft'), count('spares')];
  };

  it('are bought whole: four propellers in a bag', () => {
    expect(bags(TURNSTONE)).toEqual([1, 5]);
  });

  // Three on board leave one over: 15 spares less one are 14, four bags and not five less a quarter.
  it('let what is over serve as a spare', () => {
    expect(bags(TURNSTONE, 'avocet-tri')).toEqual([1, 4]);
  });

  // Six on board take two bags and leave two: 30 less two are 28, seven bags. 36 in all are nine.
  it('never make more than the whole number needs', () => {
    expect(bags(TURNSTONE, 'eider-hexa')).toEqual([2, 7]);
  });

  it('merge an extra that is named twice', () => {
    const list = listOf({ build: (b) => b.extras.push({ part: 'cap-1000-35', count: 1 }) });
    expect(line(list, 'aircraft: cap-1000-35')?.count).toBe(2);
  });
});

describe('what is at hand', () => {
  it('is ticked by id: three tools of the club', () => {
    const { worth, toPay: left } = costOf(listOf());
    expect(worth - left).toBeCloseTo(39.9 + 9.5 + 14.5, 6);
  });

  it('is ticked by kind, with what comes with it', () => {
    const list = listOf({ brief: (brief) => (brief.alreadyOwns = ['transmitter']) });
    expect(list.owned.has('kit: tiller-24')).toBe(true);
    expect(line(list, 'kit: batteries for tiller-24')).toBeUndefined();
  });

  it('does not serve when it does not fit', () => {
    const list = listOf({ brief: (brief) => (brief.alreadyOwns = ['binnacle-analogue']) });
    expect(line(list, 'kit: binnacle-fairway')?.unitPrice).toBe(329);
    expect(list.owned.has('kit: binnacle-fairway')).toBe(false);
  });
});

describe('the kit', () => {
  it('takes the cheapest charger that fits: not the one for single cells', () => {
    expect(line(listOf(), 'kit: bollard-100')?.unitPrice).toBe(39.9);
    const small = listOf({
      build: (b) => (b.pack.part = 'glasswort-300-1s'),
      brief: (brief) => (brief.alreadyOwns = []),
    });
    expect(line(small, 'kit: bollard-6-cells-1s')?.unitPrice).toBe(24.9);
  });

  it('has a simulator for who never flew one', () => {
    expect(line(listOf(), 'kit: slipway-simulator')).toBeUndefined();
    const never = listOf({ brief: (brief) => (brief.pilot = { flightsFlown: 0, simulatorHours: 0 }) });
    expect(line(never, 'kit: slipway-simulator')?.unitPrice).toBe(18.9);
  });

  it('says aloud what the shelf has nothing for', () => {
    const list = listOf({ parts: { 'maroon-fairway': { system: 'Semaphore' } } });
    expect(list.unpriced).toContain('goggles for Semaphore (none on the shelf fits)');
  });
});

describe('missing items', () => {
  it('are counted once when two boxes lack them', () => {
    const lacking = {
      notInTheBox: [{ item: 'camera cable', count: 1, price: { amount: 4, currency: 'GBP' } }],
    };
    const list = listOf({
      parts: {
        'daymark-30': { inTheBox: [], ...lacking },
        'periwinkle-19': { inTheBox: [], ...lacking },
      },
    });
    expect(line(list, 'missing: camera cable')).toMatchObject({ count: 1, unitPrice: 4 });
  });

  it('count what a box brings too few of', () => {
    const list = listOf({
      demo: 'first-freestyle/redshank',
      build: (b) => {
        b.extras = b.extras.filter(({ part }) => part !== 'strap-20x220');
      },
    });
    expect(line(list, 'missing from the box: strap-20x220')?.count).toBe(1);
  });

  it('are not bought when another box brings them', () => {
    // The Turnstone lacks rubbers, the controller brings them; with bare boards they are to be bought.
    expect(line(listOf(), 'missing: stack rubbers')).toBeUndefined();
    const bare = listOf({ parts: { 'groyne-45': { inTheBox: [] }, 'daymark-30': { inTheBox: [] } } });
    expect(line(bare, 'missing: stack rubbers')).toMatchObject({ count: 1, unitPrice: 2.5 });
  });

  it('are told when nobody knows their price', () => {
    const list = listOf({ parts: { 'daymark-30': { notInTheBox: [{ item: 'charge lead', count: 1 }] } } });
    expect(list.unpriced).toEqual(['charge lead (no price)']);
  });
});

describe('four-in-one boards', () => {
  it('are two for six motors, and singles six', () => {
    const six = (controller: string) =>
      listOf({
        build: (b) => {
          b.frame.part = 'eider-hexa';
          b.controllers = { part: controller };
        },
      });
    expect(line(six('groyne-45'), 'aircraft: groyne-45')?.count).toBe(2);
    expect(line(six('riprap-50'), 'aircraft: riprap-50')?.count).toBe(6);
  });
});

describe('money of another country', () => {
  const inEuro = (exchange: Brief['exchange']) =>
    listOf({
      brief: (brief) => {
        brief.currency = 'EUR';
        brief.exchange = exchange;
      },
    });

  it('is changed at the rate of the brief', () => {
    const list = inEuro({ GBP: { amount: 1.16, currency: 'EUR' } });
    expect(costOf(list).toPay).toBeCloseTo(1.16 * costOf(listOf()).toPay, 6);
    expect(list.unpriced).toEqual([]);
  });

  it('tells the rates and their day in every sum', () => {
    const exchange = { GBP: { amount: 1.16, currency: 'EUR' } };
    const euro = { ...demoBrief(TURNSTONE), currency: 'EUR', exchange };
    const hows = (list: CostList, brief: Brief) =>
      moneyMeasures(moneyReport(list, brief)).map(({ how }) => how);
    const words = (brief: Brief) => hows(inEuro(exchange), brief);
    for (const how of words({ ...euro, exchangeAsOf: '2026-11-20' }))
      expect(how).toContain('GBP at 1.16 EUR, as of 2026-11-20');
    for (const how of words(euro)) expect(how).toContain('a day that the brief does not tell');
    for (const how of hows(listOf(), demoBrief(TURNSTONE))) expect(how).not.toContain('changed');
  });

  it('is never left out in silence', () => {
    const list = inEuro({});
    expect(list.lines).toEqual([]);
    expect(list.unpriced).toContain('Turnstone 5 (no rate from GBP to EUR)');
  });

  it('takes no rate that leads elsewhere', () => {
    expect(inEuro({ GBP: { amount: 1.3, currency: 'USD' } }).lines).toEqual([]);
  });
});

describe('shipping', () => {
  const sent = (brief: (brief: Brief) => void = () => {}) =>
    line(
      listOf({
        brief: (b) => {
          b.shippingPerOrder = { amount: 4.5, currency: 'GBP' };
          brief(b);
        },
      }),
      'shipping',
    );

  it('is left out where the brief tells no price', () => {
    expect(line(listOf(), 'shipping')).toBeUndefined();
  });

  // Frame 12 days, motors 9, controller 14, flight controller 5, packs 6, camera and video link 4.
  it('is one order for each time to arrive: six', () => {
    expect(sent()).toMatchObject({ count: 6, unitPrice: 4.5 });
  });

  it('is not paid for what is at hand', () => {
    expect(sent((brief) => (brief.alreadyOwns = ['motor', 'frame']))).toMatchObject({ count: 4 });
  });
});
