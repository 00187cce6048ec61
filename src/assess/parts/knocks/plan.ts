import type { Craft } from '../../../build/craft.ts';
import type { Brief, Purpose } from '../../../build/schema/brief.ts';
import type { BreakablePart, KnockPlan } from '../../../knocks/types.ts';
import { type KnockPurpose, usualLearning } from '../../../knocks/usualPilots.ts';
import type { Money } from '../../../units/parseMoney.ts';
import { inBriefCurrency } from '../../money/price.ts';
import type { HitsReport } from '../airframeData.ts';
import { armBreaks, hitKinds, motorBreaks, propellerBreaks, tradeBreaks } from './breaking.ts';

/** All of these: common practice, no source. */
const SPARE_PROPELLER_SETS = 5;
const MINUTE = 60;
const BENCH = { arm: 25, pair: 40, plate: 150, propeller: 2, motor: 45, camera: 20, antenna: 15, pack: 2 };
/** Share of the frame's price where no spare's is told. */
const SHARE_OF_FRAME = { 'separate arms': 0.17, 'arm pairs': 0.28, 'one-piece plate': 0.65 } as const;
const USUAL_DAYS = 7;
const SESSIONS_A_WEEK = 2;
/** Flights that an hour of simulator stands for. */
const FLIGHTS_AN_HOUR = 1.5;
const TOP_SPEED: Readonly<Record<Purpose, number>> = {
  race: 42,
  freestyle: 33,
  'guarded filming': 14,
  cruising: 30,
  micro: 16,
};

export type Cut = 'separate arms' | 'arm pairs' | 'one-piece plate';

export interface PlanOfCraft {
  readonly plan: KnockPlan;
  /** Price of what is changed when an arm breaks, and whether we had to guess it. */
  readonly structure: { readonly id: string; readonly price: number; readonly inferred: boolean };
  /** What has no price and counts as free. */
  readonly unpriced: readonly string[];
}

const knockPurpose = (purpose: Purpose): KnockPurpose => (purpose === 'cruising' ? 'cruising far' : purpose);

/**
 * Everything the forecast needs, for a craft as it is or with its arms cut another way at like strength.
 */
export function knockPlan(
  craft: Craft,
  brief: Brief,
  hits: HitsReport,
  cut: Cut = craft.frame.construction,
): PlanOfCraft {
  const unpriced: string[] = [];
  const priced = (what: string, price: Money, soldIn = 1): number => {
    const found = inBriefCurrency(price, brief);
    if (found === undefined) unpriced.push(what);
    return (found ?? 0) / soldIn;
  };
  const { parts } = craft;
  const structure = structureOf(craft, brief, cut);
  const list: BreakablePart[] = [
    {
      id: structure.id,
      price: structure.price,
      spares: structure.spares,
      benchTime: structure.benchTime,
      breaks: armBreaks(hits),
    },
  ];
  const add = (
    id: string,
    price: number,
    spares: number,
    minutes: number,
    breaks: BreakablePart['breaks'],
  ) => {
    if (breaks.length > 0) list.push({ id, price, spares, benchTime: minutes * MINUTE, breaks });
  };
  const [propeller, motor] = [parts.propellers[0], parts.motors[0]];
  if (propeller !== undefined) {
    const price = priced(propeller.name, propeller.price, propeller.soldIn);
    const spares = SPARE_PROPELLER_SETS * craft.motors.length;
    add('propeller', price, spares, BENCH.propeller, propellerBreaks(craft));
  }
  if (motor !== undefined) {
    add('motor', priced(motor.name, motor.price, motor.soldIn), 0, BENCH.motor, motorBreaks(craft, hits));
  }
  for (const [index, camera] of parts.cameras.entries()) {
    const role = craft.cameras[index]?.role ?? 'flying';
    const leads = hits.leadsNose.what === `${role} camera` ? 0.7 : 1;
    // Between the cheeks it is sheltered; on top it is not.
    const speeds =
      role === 'flying'
        ? ([['end-on', 14 * leads]] as const)
        : ([
            ['end-on', 13 * leads],
            ['flat', 16],
          ] as const);
    add(`${role} camera`, priced(camera.name, camera.price), 0, BENCH.camera, tradeBreaks(speeds));
  }
  const antenna = parts.antennas.find((each) => each.for === 'video');
  if (antenna !== undefined) {
    add(
      'video antenna',
      priced(antenna.name, antenna.price),
      0,
      BENCH.antenna,
      tradeBreaks([
        ['flat', 11],
        ['end-on', 14],
      ]),
    );
  }
  const under = hits.landsFirst.what === 'pack';
  add(
    'pack',
    priced(parts.pack.name, parts.pack.price),
    brief.packsWanted - 1,
    BENCH.pack,
    tradeBreaks([
      ['flat', under ? 9 : 22],
      ['end-on', 18],
    ]),
  );
  const { flightsFlown, simulatorHours } = brief.pilot;
  const shipping = brief.shippingPerOrder === undefined ? 0 : priced('shipping', brief.shippingPerOrder);
  return {
    plan: {
      flights: brief.flightsPlanned,
      flightsPerDay: (SESSIONS_A_WEEK * brief.packsWanted) / 7,
      learning: {
        ...usualLearning(knockPurpose(brief.purpose), 'new'),
        flightsBefore: flightsFlown + FLIGHTS_AN_HOUR * Math.min(simulatorHours, 100),
      },
      hits: hitKinds(knockPurpose(brief.purpose)),
      topSpeed: TOP_SPEED[brief.purpose],
      parts: list,
      order: { days: parts.frame.shippingDays ?? USUAL_DAYS, shipping },
    },
    structure,
    unpriced,
  };
}

function structureOf({ parts, frame }: Craft, brief: Brief, cut: Cut) {
  const part = parts.frame;
  const { sparePrice } = part.arms;
  const told =
    cut === frame.construction && sparePrice !== undefined ? inBriefCurrency(sparePrice, brief) : undefined;
  const whole = inBriefCurrency(part.price, brief) ?? 0;
  const boxed = part.inTheBox.some(({ item }) => item === 'spare arm');
  const [id, minutes] = (
    {
      'separate arms': ['arm', BENCH.arm],
      'arm pairs': ['pair of arms', BENCH.pair],
      'one-piece plate': ['whole plate', BENCH.plate],
    } as const
  )[cut];
  return {
    id,
    price: told ?? SHARE_OF_FRAME[cut] * whole,
    inferred: told === undefined,
    // The buying list has one, if no box has; the other cut is compared alike.
    spares: boxed || sparePrice !== undefined ? 1 : 0,
    benchTime: minutes * MINUTE,
  };
}
