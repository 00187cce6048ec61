import { forwardHeat } from '../../../flight/forward/forwardHeat.ts';
import { type ForwardPoint, forwardPoint } from '../../../flight/forward/forwardPoint.ts';
import type { ForwardCraft } from '../../../flight/forward/forwardTrim.ts';
import { rangeAt } from '../../../flight/forward/rangeAt.ts';
import { powerCurve } from '../../../flight/forward/speeds.ts';
import type { StationHeat } from '../../../flight/heat.ts';
import { neutralLevers } from '../../../flight/types.ts';
import { noSolution, type Outcome, solved } from '../../../numerics/outcome.ts';
import { type KnownTop, knownTop } from './knownTop.ts';
import { bestSpeed, crossing } from './onCurve.ts';

/** Level flight at the most likely value of every input. */
export interface LevelNominal {
  readonly craft: ForwardCraft;
  readonly top: KnownTop;
  /** Rising speed, half charge. */
  readonly points: readonly ForwardPoint[];
  readonly enduranceSpeed: number;
  /** [s] */
  readonly enduranceTime: number;
  /** At the best range speed in still air, half charge. */
  readonly cruise: ForwardPoint;
  /** [s] at that speed. */
  readonly cruiseTime: number;
  /** Of the flying camera, above level [rad]; absent with none. */
  readonly cameraTilt?: number;
  readonly cruiseHeat: readonly StationHeat[];
  readonly topHeat: readonly StationHeat[];
  /** Fastest that can be held without a motor too hot; absent when heat is no limit. */
  readonly held?: HeldSpeed;
  /** Below, at and above the cruise speed: where raised inputs are compared. */
  readonly samples: Samples;
}

export type Samples = readonly [below: ForwardPoint, cruise: ForwardPoint, above: ForwardPoint];

export interface HeldSpeed {
  readonly at: ForwardPoint;
  /** How far the hottest is above its limit there [K], about nothing, and how that grows with speed [K s/m]. */
  readonly excess: number;
  readonly slope: number;
}

/** A pack just under way, and one half flown. */
export const TOP_CHARGE = 0.9;
export const CRUISE_CHARGE = 0.5;
const STEPS = 20;

/** @param cameraTilt of the flying camera [rad] */
export function levelNominal(craft: ForwardCraft, cameraTilt: number | undefined): Outcome<LevelNominal> {
  const { model } = craft;
  const top = knownTop(craft, TOP_CHARGE, 1);
  if (!top.ok) return top;
  const curve = powerCurve(craft, CRUISE_CHARGE, top.value.at.speed, 0, STEPS);
  if (!curve.ok) return curve;
  const { points } = curve.value;
  const currents = points.map(({ point }) => point.packCurrent);
  const speeds = points.map(({ speed }) => speed);
  const enduranceSpeed = bestSpeed(speeds, currents, 'longest') ?? 0;
  const rangeSpeed = bestSpeed(speeds, currents, 0);
  if (rangeSpeed === undefined) return noSolution('it makes no way in level flight');
  const cruise = forwardPoint(craft, rangeSpeed, CRUISE_CHARGE);
  if (!cruise.ok) return cruise;
  const longest = rangeAt(craft, enduranceSpeed, 0, model.landingReserve);
  const furthest = rangeAt(craft, rangeSpeed, 0, model.landingReserve);
  if (!longest.ok) return longest;
  if (!furthest.ok) return furthest;
  const held = heldSpeed(craft, points);
  const samples = samplesAround(craft, cruise.value, top.value.at.speed);
  if (!samples.ok) return samples;
  return solved({
    craft,
    top: top.value,
    points,
    enduranceSpeed,
    enduranceTime: longest.value.duration,
    cruise: cruise.value,
    cruiseTime: furthest.value.duration,
    ...(cameraTilt !== undefined && cameraTilt > 0 ? { cameraTilt } : {}),
    cruiseHeat: heatOf(craft, cruise.value),
    topHeat: heatOf(craft, top.value.at),
    ...(held === undefined ? {} : { held }),
    samples: samples.value,
  });
}

const heatOf = (craft: ForwardCraft, at: ForwardPoint): readonly StationHeat[] =>
  forwardHeat(craft.model, neutralLevers, at, at.point);

/** Two more speeds beside the cruise, well apart, inside what it flies. */
function samplesAround(craft: ForwardCraft, cruise: ForwardPoint, top: number): Outcome<Samples> {
  const below = forwardPoint(craft, 0.55 * cruise.speed, CRUISE_CHARGE);
  const above = forwardPoint(craft, cruise.speed + 0.5 * (top - cruise.speed), CRUISE_CHARGE);
  if (!below.ok) return below;
  return above.ok ? solved([below.value, cruise, above.value]) : above;
}

function heldSpeed(craft: ForwardCraft, points: readonly ForwardPoint[]): HeldSpeed | undefined {
  const speeds = points.map(({ speed }) => speed);
  const excesses = points.map((each) => heatExcess(craft, heatOf(craft, each)));
  const speed = crossing(speeds, excesses, 0);
  if (speed === undefined) return undefined;
  const at = forwardPoint(craft, speed, CRUISE_CHARGE);
  const after = speeds.findIndex((each) => each >= speed);
  const step = (speeds[after] ?? 0) - (speeds[after - 1] ?? 0);
  const slope = ((excesses[after] ?? 0) - (excesses[after - 1] ?? 0)) / step;
  if (!at.ok || !(slope > 0)) return undefined;
  return { at: at.value, excess: heatExcess(craft, heatOf(craft, at.value)), slope };
}

/** How far the hottest winding or case settles above its limit [K]; a runaway counts as far above. */
export function heatExcess(craft: ForwardCraft, heat: readonly StationHeat[]): number {
  return craft.model.stations.reduce((most, { motor }, i) => {
    const settled = heat[i]?.settled;
    if (settled === undefined) return Math.max(most, RUNAWAY);
    return Math.max(
      most,
      settled.winding - motor.limits.windingTemperature,
      settled.case - motor.limits.caseTemperature,
    );
  }, Number.NEGATIVE_INFINITY);
}

const RUNAWAY = 1000; // [K]
