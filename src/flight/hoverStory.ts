import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { circuitOf } from './circuit.ts';
import { describe } from './describe.ts';
import { type Drain, drain, steadyDraw } from './drain.ts';
import { emptySupply, feed } from './feed.ts';
import { heatAt, type StationHeat } from './heat.ts';
import { type HoverTrim, hoverTrim } from './hoverTrim.ts';
import { emptyLoad, rehang } from './load.ts';
import { inWords, sourceAt } from './operatingPoint.ts';
import { hoverCurrent, type StyleFlight, styleFlight } from './styleFlight.ts';
import { loadForDuties } from './throttle.ts';
import type { FlightModel, Levers, OperatingPoint, Style } from './types.ts';

/** Everything about standing in the air and punching out of it, on one day, under one set of levers. */
export interface HoverStory {
  /** Of what and under which levers it is told. */
  readonly model: FlightModel;
  readonly levers: Levers;
  /** [N] */
  readonly weight: number;
  readonly trim: HoverTrim;
  /** Steady hover on a half-full pack. */
  readonly hover: OperatingPoint;
  /** Mean of the motors' throttle in it, 0 to 1. */
  readonly hoverThrottle: number;
  /** All motors at full throttle out of a hover, static, pack at 0.9 of its charge. */
  readonly punch: OperatingPoint;
  /** The same at the landing reserve. */
  readonly lastPunch: OperatingPoint;
  /** Net thrust of `punch` and `lastPunch` over weight. */
  readonly thrustToWeight: number;
  readonly lastThrustToWeight: number;
  readonly endurance: Drain;
  /** One for each style asked, in order. */
  readonly styles: readonly StyleFlight[];
  /** Motors settled in a hover, one a station. */
  readonly hoverHeat: readonly StationHeat[];
  /** Motors held at full throttle, starting from the hover. */
  readonly punchHeat: readonly StationHeat[];
}

/** A pack just under way [charge]: off its surface charge. */
export const UNDER_WAY = 0.9;
const HOVER_SLICES = 16;

/**
 * The whole hover story of a model under levers. Cheap enough to run once for each lever: it solves the trim once, as
 * motor speeds do not depend on the battery, and then only feeds it.
 *
 * No solution, with the reason in words, when it cannot be trimmed or cannot hover on a half-full pack.
 *
 * @param near a story of nearly the same, such as the one before a lever was moved: saves half of the work and changes
 *   nothing beyond rounding
 */
export function hoverStory(
  model: FlightModel,
  levers: Levers,
  styles: readonly Style[],
  near?: HoverStory,
): Outcome<HoverStory> {
  const circuit = circuitOf(model, levers);
  const sameAir = near !== undefined && near.model === model && turnsAlike(near.levers, levers);
  const trimmed = sameAir
    ? solved({ ...near.trim, load: rehang(circuit, near.trim.load) })
    : hoverTrim(model, circuit, near?.trim);
  if (!trimmed.ok) return trimmed;
  const trim = trimmed.value;
  const count = circuit.branches.length;
  const supply = emptySupply(count);

  const half = sourceAt(circuit, 0.5);
  const fed = feed(circuit, half, trim.load, supply);
  const hover = fed === 'fed' ? describe(circuit, half, trim.load, supply) : undefined;

  const settled = hover?.packCurrent ?? 0;
  const duties = new Float64Array(count).fill(1);
  const load = emptyLoad(count);
  load.angularSpeed.set(
    near?.punch.stations.map(({ angularSpeed }) => angularSpeed) ??
      trim.load.angularSpeed.map((speed) => 2.2 * speed),
  );
  const punchAt = (charge: number): Outcome<OperatingPoint> => {
    const source = sourceAt(circuit, charge, settled);
    const found = loadForDuties(circuit, source, duties, 0, load, supply);
    return found.ok ? solved(describe(circuit, source, load, supply)) : found;
  };
  const punch = punchAt(UNDER_WAY);
  if (!punch.ok) return punch;
  if (fed !== 'fed' || hover === undefined) {
    const reason = fed === 'fed' ? '' : inWords(fed);
    return noSolution(
      `it cannot hover on a half-full pack: ${reason}; it weighs ${circuit.weight.toFixed(2)} N and full throttle on a fresh pack lifts ${punch.value.netThrust.toFixed(2)} N`,
    );
  }
  const lastPunch = punchAt(Math.max(model.landingReserve, 0.02));
  if (!lastPunch.ok) return lastPunch;

  const endurance = drain(circuit, model.landingReserve, HOVER_SLICES, (charge) =>
    steadyDraw(hoverCurrent(circuit, trim, charge, supply)),
  );
  const hoverHeat = heatAt(model, levers, hover);
  return solved({
    model,
    levers,
    weight: circuit.weight,
    trim,
    hover,
    hoverThrottle: hover.stations.reduce((sum, station) => sum + station.throttle, 0) / count,
    punch: punch.value,
    lastPunch: lastPunch.value,
    thrustToWeight: punch.value.netThrust / circuit.weight,
    lastThrustToWeight: lastPunch.value.netThrust / circuit.weight,
    endurance,
    styles: styles.map((style, k) =>
      styleFlight(
        circuit,
        trim,
        style,
        model.landingReserve,
        levers.styleScale,
        endurance,
        lastPunch.value.busVoltage,
        near?.styles[k]?.style === style.name ? near.styles[k] : undefined,
        sameAir,
      ),
    ),
    hoverHeat,
    punchHeat: heatAt(model, levers, punch.value, hoverHeat),
  });
}

/** Whether rotors turn alike under two sets of levers in a hover. */
const turnsAlike = (a: Levers, b: Levers): boolean =>
  a.thrustScale === b.thrustScale &&
  a.torqueScale === b.torqueScale &&
  a.massScale === b.massScale &&
  a.downloadScale === b.downloadScale;
