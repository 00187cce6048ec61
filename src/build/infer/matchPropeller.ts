import { type Outcome, solved } from '../../numerics/outcome.ts';
import { rotorBand } from '../../rotor/band.ts';
import { fitBlade } from '../../rotor/fitBlade.ts';
import { howOdd, type Oddness } from '../../rotor/howOdd.ts';
import { sectionTables } from '../../rotor/sections.ts';
import { solveRotor } from '../../rotor/solveRotor.ts';
import { STAND_SPREAD } from '../../rotor/spreads.ts';
import type { Blade, MeasuredPoint } from '../../rotor/types.ts';
import type { Trust } from '../../units/trusted.ts';
import type { PartOf } from '../schema/part.ts';
import { rotorFacts, staticPoints } from './rotorFacts.ts';

/** Which points a propeller is matched to: where there are older ones, both, or one of the two. */
export type Choice = 'both' | 'old' | 'new';

/** A measured point and whose it is. */
export interface SourcedPoint extends MeasuredPoint {
  readonly source: string;
  readonly trust: Trust;
}

/** A new point against what the older ones lead to. */
export interface Apart {
  readonly angularSpeed: number;
  /** New over forecast, less one. */
  readonly thrust: number;
  readonly power: number;
  /** One standard deviation that the two may differ by, relative. */
  readonly thrustMay: number;
  readonly powerMay: number;
}

export interface PropellerMatch {
  readonly verdict: 'none before' | 'agree' | 'contradict';
  readonly apart: readonly Apart[];
  /** Root mean square distance of the older and of the new points from the shape's own forecast, both coefficients. */
  readonly offShape: { readonly old: number; readonly new: number };
  readonly kept: readonly SourcedPoint[];
  readonly blade: Blade;
  readonly oddness: Oddness;
  /** Half widths of the bands at the fastest new point, relative: as the propeller was, and as it is. */
  readonly before: HalfWidths;
  readonly after: HalfWidths;
}

export interface HalfWidths {
  readonly thrust: number;
  readonly power: number;
}

/** Further apart than this many of what they may differ by, root mean square over the points: they contradict. */
const CONTRADICT = 2;

const sections = sectionTables();

/**
 * A propeller matched to new static points beside those it has. Where the two contradict each other, and both are to be kept,
 * each point's spread grows by how far they are apart, so that the shape has its say and the band is wide.
 *
 * @returns words when no propeller near this one gives the points
 */
export function matchPropeller(
  part: PartOf<'propeller'>,
  added: readonly SourcedPoint[],
  choice: Choice,
): Outcome<PropellerMatch> {
  const shape = rotorFacts({ ...part, measured: [] }).blade;
  const was = rotorFacts(part).blade;
  const older = staticPoints(part).map((point, i): SourcedPoint => {
    const told = part.measured[i];
    return { ...point, source: told?.source ?? part.source, trust: told?.thrust.trust ?? 'measured' };
  });
  const apart = older.length === 0 ? [] : added.map((point) => apartOf(was, point));
  const typical = (of: (each: Apart) => number) =>
    Math.sqrt(apart.reduce((sum, each) => sum + of(each) ** 2, 0) / Math.max(apart.length, 1));
  const contradict =
    typical(({ thrust, thrustMay }) => thrust / thrustMay) > CONTRADICT ||
    typical(({ power, powerMay }) => power / powerMay) > CONTRADICT;
  const torn = {
    thrust: contradict ? typical(({ thrust }) => thrust) : 0,
    power: contradict ? typical(({ power }) => power) : 0,
  };
  const both = [...older, ...added].map((point): SourcedPoint => {
    const { thrustSpread = STAND_SPREAD, powerSpread = STAND_SPREAD } = point;
    return {
      ...point,
      thrustSpread: Math.hypot(thrustSpread, torn.thrust),
      powerSpread: Math.hypot(powerSpread, torn.power),
    };
  });
  const kept = choice === 'both' ? both : choice === 'old' ? older : added;
  const fitted = fitBlade(shape, sections, kept);
  if (!fitted.ok) return fitted;
  const fastest = Math.max(...added.map(({ angularSpeed }) => angularSpeed));
  const air = added.find(({ angularSpeed }) => angularSpeed === fastest)?.air ?? kept[0]?.air;
  const widths = (blade: Blade): HalfWidths =>
    air === undefined
      ? { thrust: Number.NaN, power: Number.NaN }
      : halfWidths(blade, { angularSpeed: fastest, air });
  return solved({
    verdict: older.length === 0 ? 'none before' : contradict ? 'contradict' : 'agree',
    apart,
    offShape: { old: offShape(shape, older), new: offShape(shape, added) },
    kept,
    blade: fitted.value,
    oddness: howOdd(shape, fitted.value),
    before: widths(was),
    after: widths(fitted.value),
  });
}

type At = Pick<MeasuredPoint, 'angularSpeed' | 'air'>;

function forecast(blade: Blade, { angularSpeed, air }: At) {
  const state = solveRotor(blade, sections, { angularSpeed, axialSpeed: 0, air });
  if (!state.ok) throw new RangeError(`a still propeller without solution: ${state.reason}`);
  return state.value;
}

function halfWidths(blade: Blade, at: At): HalfWidths {
  const state = forecast(blade, at);
  const band = rotorBand(blade, sections, { ...at, axialSpeed: 0 }, state);
  if (!band.ok) throw new RangeError(`a still propeller without band: ${band.reason}`);
  const { thrustCoefficient: thrust, powerCoefficient: power } = band.value;
  return {
    thrust: (thrust[1] - thrust[0]) / 2 / state.thrustCoefficient,
    power: (power[1] - power[0]) / 2 / state.powerCoefficient,
  };
}

function apartOf(was: Blade, point: MeasuredPoint): Apart {
  const { thrustSpread = STAND_SPREAD, powerSpread = STAND_SPREAD } = point;
  const { thrust, power } = forecast(was, point);
  const open = halfWidths(was, point);
  return {
    angularSpeed: point.angularSpeed,
    thrust: point.thrust / thrust - 1,
    power: point.power / power - 1,
    thrustMay: Math.hypot(open.thrust / 1.2816, thrustSpread),
    powerMay: Math.hypot(open.power / 1.2816, powerSpread),
  };
}

function offShape(shape: Blade, points: readonly MeasuredPoint[]): number {
  const squares = points.map((point) => {
    const { thrust, power } = forecast(shape, point);
    return ((point.thrust / thrust - 1) ** 2 + (point.power / power - 1) ** 2) / 2;
  });
  return Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / Math.max(squares.length, 1));
}
