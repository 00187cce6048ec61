import { forwardHeat } from '../../../flight/forward/forwardHeat.ts';
import { type ForwardCraft, type ForwardTrim, forwardTrim } from '../../../flight/forward/forwardTrim.ts';
import { type Fed, refeed } from '../../../flight/forward/refeed.ts';
import type { StationHeat } from '../../../flight/heat.ts';
import type { FlightModel, Levers } from '../../../flight/types.ts';
import type { Numbers } from '../banded.ts';
import { raisedTop } from './knownTop.ts';
import { CRUISE_CHARGE, heatExcess, type LevelNominal, TOP_CHARGE } from './levelNominal.ts';
import { bestSpeed, crossing, flatStretch, throughThree } from './onCurve.ts';

/** What a raised input does to the curve, as shares of the nominal one over speed. */
interface Change {
  readonly current: (speed: number) => number;
  readonly tilt: (speed: number) => number;
}

/** Of the least current: what no pilot's watch would show. */
export const FLAT = 0.01;
/** Ends of the stretch of speeds that stay up longest but for that. */
export const FLAT_LOW = 'best-endurance-slowest';
export const FLAT_HIGH = 'best-endurance-fastest';

const UNCHANGED: Change = { current: () => 1, tilt: () => 1 };

/** The figures at the most likely value of every input. */
export function levelFigures(nominal: LevelNominal, wind: number): Numbers {
  const { cruise, top, held } = nominal;
  return {
    ...curveFigures(nominal, UNCHANGED, 1, wind),
    ...heatFigures(nominal.craft.model, nominal.cruiseHeat, nominal.topHeat),
    'top-speed': top.at.speed,
    'cruise-power': cruise.point.packVoltage * cruise.point.packCurrent,
    'held-speed': held?.at.speed,
  };
}

/**
 * The figures with one input raised, from the hover, three speeds and a corrected top speed rather than from a whole curve
 * anew. Trims that the input does not touch are taken over and only fed anew.
 *
 * @param raised the craft with the input raised
 * @param sameTrims when only the electrical side differs
 */
export function raisedFigures(
  nominal: LevelNominal,
  raised: ForwardCraft,
  levers: Levers,
  sameTrims: boolean,
  wind: number,
): Numbers {
  const trimAt = (known: ForwardTrim): ForwardTrim | undefined => {
    if (sameTrims) return known;
    const found = forwardTrim(raised, known.speed);
    return found.ok ? found.value : undefined;
  };
  const fedAt = (known: ForwardTrim, charge: number): Flown | undefined => {
    const trim = trimAt(known);
    const fed = trim && refeed(trim, raised.circuit, charge);
    return trim && fed && { trim, ...fed };
  };
  const heatOf = (flown: Flown | undefined) =>
    flown && forwardHeat(raised.model, levers, flown.trim, flown.point);

  const [below, cruise, above] = nominal.samples;
  const [low, middle, high] = [
    fedAt(below, CRUISE_CHARGE),
    fedAt(cruise, CRUISE_CHARGE),
    fedAt(above, CRUISE_CHARGE),
  ];
  if (low === undefined || middle === undefined || high === undefined) return {};
  const hover = nominal.points[0] && fedAt(nominal.points[0], CRUISE_CHARGE);
  const places = [below.speed, cruise.speed, above.speed] as const;
  const top = fedAt(nominal.top.at, TOP_CHARGE);
  const held = nominal.held;
  const heldHeat = held && heatOf(fedAt(held.at, CRUISE_CHARGE));
  const currents = [
    low.point.packCurrent / below.point.packCurrent,
    middle.point.packCurrent / cruise.point.packCurrent,
    high.point.packCurrent / above.point.packCurrent,
  ] as const;
  const fast = throughThree(places, currents);
  const still = (hover?.point.packCurrent ?? 0) / (nominal.points[0]?.point.packCurrent ?? 1);
  const slow = throughThree([0, below.speed, cruise.speed], [still, currents[0], currents[1]]);
  const change: Change = {
    current: hover === undefined ? fast : (speed) => (speed < below.speed ? slow(speed) : fast(speed)),
    tilt: throughThree(places, [
      low.trim.tilt / below.tilt,
      middle.trim.tilt / cruise.tilt,
      high.trim.tilt / above.tilt,
    ]),
  };
  return {
    ...curveFigures(nominal, change, levers.packCapacityScale, wind),
    ...heatFigures(raised.model, heatOf(middle), heatOf(top)),
    'top-speed': raisedTop(nominal.top, nominal.craft, raised, sameTrims),
    'cruise-power': middle.point.packVoltage * middle.point.packCurrent,
    'held-speed':
      held &&
      heldHeat &&
      Math.max(0, held.at.speed - (heatExcess(raised, heldHeat) - held.excess) / held.slope),
  };
}

interface Flown extends Fed {
  readonly trim: ForwardTrim;
}

/** Times are the nominal ones over the change of current at speeds found anew on the changed curve. */
function curveFigures(nominal: LevelNominal, change: Change, capacity: number, wind: number): Numbers {
  const speeds = nominal.points.map(({ speed }) => speed);
  const currents = nominal.points.map(({ speed, point }) => point.packCurrent * change.current(speed));
  const tilts = nominal.points.map(({ speed, tilt }) => tilt * change.tilt(speed));
  const { cruise, cruiseTime, enduranceSpeed, enduranceTime, cameraTilt } = nominal;
  const nearCruise = (speed: number): number =>
    (cruiseTime * cruise.point.packCurrent * capacity) / (currentAt(nominal, speed) * change.current(speed));
  const longest = bestSpeed(speeds, currents, 'longest') ?? enduranceSpeed;
  const endurance =
    (enduranceTime * currentAt(nominal, enduranceSpeed) * capacity) /
    (currentAt(nominal, longest) * change.current(longest));
  const furthest = bestSpeed(speeds, currents, 0) ?? cruise.speed;
  // In no wind there is no against and with.
  const [against, along] = wind > 0 ? [wind, -wind].map((each) => bestSpeed(speeds, currents, each)) : [];
  const [slowest, fastest] = flatStretch(speeds, currents, longest, FLAT);
  return {
    'best-endurance-speed': longest,
    [FLAT_LOW]: slowest,
    [FLAT_HIGH]: fastest,
    'best-endurance-time': endurance,
    'best-range-speed': furthest,
    'best-range': furthest * nearCruise(furthest),
    'best-range-speed-against': against,
    'range-against-wind': against && (against - wind) * nearCruise(against),
    'best-range-speed-with': along,
    'range-with-wind': along && (along + wind) * nearCruise(along),
    'camera-level-speed': cameraTilt && crossing(speeds, tilts, cameraTilt),
  };
}

/** Nominal pack current at a speed [A], through the three points of the curve about it. */
function currentAt(nominal: LevelNominal, speed: number): number {
  const { points } = nominal;
  const after = points.findIndex((point) => point.speed >= speed);
  const first = Math.max(0, Math.min(after < 0 ? points.length : after - 1, points.length - 3));
  const [a, b, c] = points.slice(first, first + 3);
  if (a === undefined || b === undefined || c === undefined) return nominal.cruise.point.packCurrent;
  const currents = [a.point.packCurrent, b.point.packCurrent, c.point.packCurrent] as const;
  return throughThree([a.speed, b.speed, c.speed], currents)(speed);
}

function heatFigures(
  model: FlightModel,
  cruise: readonly StationHeat[] | undefined,
  top: readonly StationHeat[] | undefined,
): Numbers {
  const soonest = top && Math.min(...top.map((heat) => heat.timeToLimit));
  return {
    'cruise-front-winding': hottest(model, cruise, 'front'),
    'cruise-rear-winding': hottest(model, cruise, 'rear'),
    'top-speed-front-winding': hottest(model, top, 'front'),
    'top-speed-rear-winding': hottest(model, top, 'rear'),
    'top-speed-time-to-limit': soonest,
  };
}

/** The hottest winding before or behind the motors' centre [K]; Infinity when one never settles. */
function hottest(
  model: FlightModel,
  heat: readonly StationHeat[] | undefined,
  end: 'front' | 'rear',
): number | undefined {
  if (heat === undefined) return undefined;
  const reach = model.stations.reduce((most, { position }) => Math.max(most, Math.abs(position[0])), 0);
  const temperatures = model.stations.flatMap(({ position }, i) => {
    const along = end === 'front' ? position[0] : -position[0];
    return along > 0.2 * reach ? [heat[i]?.settled?.winding ?? Number.POSITIVE_INFINITY] : [];
  });
  return temperatures.length > 0 ? Math.max(...temperatures) : undefined;
}
