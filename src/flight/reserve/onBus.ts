import type { PackSource } from '../../drive/types.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import type { Matrix3 } from '../../numerics/vector3.ts';
import { type Circuit, circuitOf } from '../circuit.ts';
import { emptySupply, feed } from '../feed.ts';
import { type HoverTrim, hoverTrim } from '../hoverTrim.ts';
import { emptyLoad, loadForThrusts } from '../load.ts';
import { type Moment, sourceAt } from '../operatingPoint.ts';
import { loadForDuties } from '../throttle.ts';
import type { FlightModel, Levers } from '../types.ts';
import { controlReserve, type Reserve } from './momentReach.ts';
import type { Effector, ReserveModel } from './types.ts';

/** The reserve with the motors' limits that the battery really leaves them. */
export interface BusReserve {
  readonly reserve: Reserve;
  /** The craft as the reserve saw it, for `motorOut` and `momentOutline`. */
  readonly model: ReserveModel;
  readonly hover: HoverTrim;
  /** Bus voltage at the thirstiest of the six largest moments [V], at which the limits were taken. */
  readonly busVoltage: number;
}

const ROUNDS = 12;
/** Bus voltages closer than this are one [V]. */
const SETTLED = 1e-3;

/**
 * Control reserve at hover on the sagging battery. All motors share one bus, and what a large moment draws
 * lowers every limit: the bus voltage is iterated from that of full throttle on all motors upwards, each
 * round taking the lowest voltage that any of the six extremes leaves, until limits and sag agree. The rest of
 * the moments use less, so the limits are on the safe side for them.
 *
 * Torque over thrust is taken at hover; a lower coaxial rotor's limits with the upper one at the same throttle.
 *
 * @param inertia about the centre of gravity [kg m2]
 */
export function reserveOnBus(
  flight: FlightModel,
  inertia: Matrix3,
  levers: Levers,
  moment: Moment,
): Outcome<BusReserve> {
  const circuit = circuitOf(flight, levers, moment.windingTemperature);
  const source = sourceAt(circuit, moment.charge, moment.settledCurrent);
  const hover = hoverTrim(flight, circuit);
  if (!hover.ok) return hover;
  const full = emptySupply(circuit.branches.length);
  const ones = circuit.branches.map(() => 1);
  const turning = loadForDuties(circuit, source, ones, 0, emptyLoad(ones.length), full);
  if (!turning.ok) return turning;
  let busVoltage = full.busVoltage;
  let last: BusReserve | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    const model = modelAt(flight, inertia, circuit, hover.value, busVoltage);
    if (!model.ok) return model;
    const reserve = controlReserve(model.value);
    if (!reserve.ok) return reserve;
    last = { reserve: reserve.value, model: model.value, hover: hover.value, busVoltage };
    const sagged = lowestBus(circuit, source, reserve.value.extremes);
    if (sagged === undefined || Math.abs(sagged - busVoltage) < SETTLED) break;
    busVoltage = sagged;
  }
  return last === undefined ? noSolution('the bus voltage does not settle') : solved(last);
}

function modelAt(
  flight: FlightModel,
  inertia: Matrix3,
  circuit: Circuit,
  hover: HoverTrim,
  busVoltage: number,
): Outcome<ReserveModel> {
  // A stiff bus at this voltage: what is left between bus and motor is each one's own.
  const stiff: Circuit = { ...circuit, mainResistance: 0, avionicsPower: 0 };
  const bus: PackSource = { openCircuit: busVoltage, emf: busVoltage, resistance: 0 };
  const netAt = (duties: readonly number[]): Outcome<readonly number[]> => {
    const load = emptyLoad(duties.length);
    const found = loadForDuties(stiff, bus, duties, 0, load, emptySupply(duties.length));
    if (!found.ok) return found;
    return solved(circuit.branches.map((branch, i) => Math.max(0, (load.thrust[i] ?? 0) * branch.netShare)));
  };
  const low = netAt(circuit.branches.map((branch) => branch.idleDuty));
  if (!low.ok) return low;
  const high = netAt(circuit.branches.map(() => 1));
  if (!high.ok) return high;
  return solved({
    effectors: flight.stations.map((station, i): Effector => {
      const net = hover.thrusts[i] ?? 0;
      return {
        name: station.name,
        position: station.position,
        spin: station.spin,
        torquePerThrust: net > 0 ? (hover.load.torque[i] ?? 0) / net : 0,
        minimumThrust: Math.min(low.value[i] ?? 0, high.value[i] ?? 0),
        maximumThrust: high.value[i] ?? 0,
        ...(station.thrustAxis === undefined ? {} : { thrustAxis: station.thrustAxis }),
        ...(station.servoTilt === undefined ? {} : { servoTilt: station.servoTilt }),
      };
    }),
    centreOfGravity: flight.centreOfGravity,
    mass: circuit.weight / flight.gravity,
    gravity: flight.gravity,
    inertia,
  });
}

/** Undefined when an extreme cannot be fed at all, which limits taken at a lower voltage rule out but for rounding. */
function lowestBus(
  circuit: Circuit,
  source: PackSource,
  extremes: readonly (readonly number[])[],
): number | undefined {
  let lowest: number | undefined;
  for (const thrusts of extremes) {
    const load = emptyLoad(thrusts.length);
    const supply = emptySupply(thrusts.length);
    const turning = loadForThrusts(circuit, thrusts, 0, load);
    if (!turning.ok || feed(circuit, source, load, supply) === 'pack gives out') continue;
    lowest = Math.min(lowest ?? Number.POSITIVE_INFINITY, supply.busVoltage);
  }
  return lowest;
}
