import type { PackSource } from '../../drive/types.ts';
import { bracketedRoot } from '../../numerics/bracketedRoot.ts';
import { type Circuit, circuitOf } from '../circuit.ts';
import { describe } from '../describe.ts';
import { emptySupply, feed } from '../feed.ts';
import { heatAt } from '../heat.ts';
import { emptyLoad, loadForThrusts } from '../load.ts';
import type { Moment } from '../operatingPoint.ts';
import type { FlightModel, Levers } from '../types.ts';
import { type Impaired, withMotorLimited } from './motorOut.ts';
import type { BusReserve } from './onBus.ts';

/** The craft with one motor throttled to what it bears for good. */
export interface HotMotor extends Impaired {
  /** Net thrust at which its winding or its case settles at the limit, standing still [N]; full throttle where that is borne. */
  readonly bears: number;
  /** The same over its thrust at full throttle, 0 to 1; 1 when heat is no limit. */
  readonly bearsShare: number;
}

/** Thrusts closer than this share of full throttle are one. */
const CLOSE = 1e-4;
/** A winding that never settles counts as this much too hot [K]. */
const RUNAWAY = 1000;

/**
 * What is left when each motor in turn runs hot and is held to what it bears for good, the others at their limits on the bus:
 * its neighbour `motorOut` takes all of its thrust. A motor that settles too hot in the hover itself bears less than its share of it.
 *
 * @param inPlaneDragPerThrust as of `motorOut` [s/m]
 */
export function motorHot(
  flight: FlightModel,
  levers: Levers,
  moment: Moment,
  { model, hover }: BusReserve,
  inPlaneDragPerThrust?: number,
): readonly HotMotor[] {
  // Heat asks for current and speed, which thrust alone sets: the bus that feeds them does not matter, so it is stiff and ample.
  const circuit = {
    ...circuitOf(flight, levers, moment.windingTemperature),
    mainResistance: 0,
    avionicsPower: 0,
  };
  const over = (i: number, thrust: number): number | undefined => {
    const thrusts = hover.thrusts.map((each, k) => (k === i ? thrust : each));
    return overLimits(flight, levers, circuit, [...thrusts], i);
  };
  return model.effectors.map(({ maximumThrust }, i) => {
    const bears = borneThrust((thrust) => over(i, thrust), maximumThrust);
    return {
      ...withMotorLimited(model, i, bears, inPlaneDragPerThrust),
      bears,
      bearsShare: maximumThrust > 0 ? bears / maximumThrust : 1,
    };
  });
}

const AMPLE = 1000; // [V]
const STIFF: PackSource = { openCircuit: AMPLE, emf: AMPLE, resistance: 0 };

/** How far motor `i` settles over its limits at given net thrusts of all [K]; undefined where the rotor knows no such thrust. */
function overLimits(
  flight: FlightModel,
  levers: Levers,
  circuit: Circuit,
  thrusts: readonly number[],
  i: number,
): number | undefined {
  const [load, supply] = [emptyLoad(thrusts.length), emptySupply(thrusts.length)];
  if (!loadForThrusts(circuit, thrusts, 0, load).ok) return undefined;
  if (feed(circuit, STIFF, load, supply) !== 'fed') return undefined;
  const settled = heatAt(flight, levers, describe(circuit, STIFF, load, supply))[i]?.settled;
  const limits = flight.stations[i]?.motor.limits;
  if (settled === undefined || limits === undefined) return RUNAWAY;
  return Math.max(settled.winding - limits.windingTemperature, settled.case - limits.caseTemperature);
}

/**
 * @param over what a thrust settles at over the limits [K], rising
 * @param full thrust at full throttle [N]
 */
function borneThrust(over: (thrust: number) => number | undefined, full: number): number {
  const [low, high] = [2 * CLOSE * full, (1 - CLOSE) * full];
  if ((over(high) ?? 0) <= 0) return full;
  if ((over(low) ?? 0) >= 0) return 0;
  const found = bracketedRoot((thrust) => over(thrust) ?? RUNAWAY, low, high, CLOSE * full);
  return found.ok ? found.value : full;
}
