import type { PackSource } from '../drive/types.ts';
import type { Branch, Circuit } from './circuit.ts';
import type { Load } from './load.ts';

/** How a load hangs on the battery; written by the solvers. */
export interface Supply {
  /** Controller input voltage of each station [V]. */
  readonly voltage: Float64Array;
  /** Drawn by each controller from the bus [A]. */
  readonly current: Float64Array;
  busVoltage: number;
  packVoltage: number;
  packCurrent: number;
}

export function emptySupply(count: number): Supply {
  return {
    voltage: new Float64Array(count),
    current: new Float64Array(count),
    busVoltage: 0,
    packVoltage: 0,
    packCurrent: 0,
  };
}

/**
 * `fed`: every motor gets its voltage; `pack gives out`: no voltage at which the pack could carry the power;
 * `short of voltage`: it carries the power, but some motor would need a duty above 1.
 */
export type Fed = 'fed' | 'pack gives out' | 'short of voltage';

/**
 * Finds the voltages and currents at which a pack carries a load whose motors' speeds are already known.
 *
 * For given motor powers P the controllers are loads of constant power, so the total current is a falling convex
 * function of bus voltage and
 *
 *   h(V) = emf - R I(V) - V
 *
 * is concave. Newton's method from V = emf, where h <= 0, then walks down to the upper (stable) root
 * without ever passing it; a slope that turns positive on the way proves that there is no root.
 * A warm start from the supply's last voltage saves steps: a tangent of a concave function, taken below the root,
 * crosses nothing above it. (Guaranteed while every motor draws power; a windmilling motor's small feedback keeps the test honest, not the proof.)
 */
export function feed(circuit: Circuit, source: PackSource, load: Load, supply: Supply): Fed {
  // Once, a step below the root throws the next above it; if that fails nothing is proved yet.
  const near = supply.busVoltage;
  const warm = near > 0.5 * source.emf && near < source.emf;
  const found = warm ? feedFrom(near, circuit, source, load, supply) : 'pack gives out';
  return found === 'pack gives out' ? feedFrom(source.emf, circuit, source, load, supply) : found;
}

function feedFrom(start: number, circuit: Circuit, source: PackSource, load: Load, supply: Supply): Fed {
  const resistance = source.resistance + circuit.mainResistance;
  let bus = start;
  let converged = false;
  for (let iteration = 0; iteration < 100 && !converged; iteration++) {
    let current = circuit.avionicsPower / bus;
    let slope = -current / bus;
    for (let i = 0; i < circuit.branches.length; i++) {
      const branch = circuit.branches[i] as Branch;
      if (branch.sameAs < i && load.angularSpeed[i] === load.angularSpeed[branch.sameAs]) {
        supply.voltage[i] = supply.voltage[branch.sameAs] as number;
        supply.current[i] = supply.current[branch.sameAs] as number;
        current += supply.current[i] as number;
        slope += currentSlope(branch, load, supply, i);
        continue;
      }
      if (!feedBranch(branch, load, supply, i, bus)) return 'pack gives out';
      current += supply.current[i] as number;
      slope += currentSlope(branch, load, supply, i);
    }
    const h = source.emf - resistance * current - bus;
    const steepness = -1 - resistance * slope;
    supply.busVoltage = bus;
    supply.packCurrent = current;
    supply.packVoltage = source.emf - source.resistance * current;
    if (Math.abs(h) <= 1e-14 * source.emf) break;
    if (!(steepness < 0)) return 'pack gives out';
    const step = -h / steepness;
    bus += step;
    if (!(bus > 0)) return 'pack gives out';
    converged = Math.abs(step) <= 1e-13 * source.emf;
  }
  for (let i = 0; i < circuit.branches.length; i++) {
    if ((load.voltage[i] as number) > (supply.voltage[i] as number)) return 'short of voltage';
  }
  return 'fed';
}

/**
 * Input voltage and current of one controller on a bus: V_c = V_bus - R_s I, V_c I = P + V_c (s i + idle),
 * a quadratic in V_c whose upper root is the stable one. False when it has none.
 */
function feedBranch(branch: Branch, load: Load, supply: Supply, i: number, bus: number): boolean {
  const motorCurrent = load.current[i] as number;
  const power = (load.voltage[i] as number) * motorCurrent;
  const fixed = branch.switchingShare * Math.abs(motorCurrent) + branch.idleCurrent;
  const open = bus - branch.supplyResistance * fixed;
  const inside = open * open - 4 * branch.supplyResistance * power;
  if (!(open > 0 && inside >= 0)) return false;
  const voltage = 0.5 * (open + Math.sqrt(inside));
  supply.voltage[i] = voltage;
  supply.current[i] = power / voltage + fixed;
  return true;
}

/** dI/dV_bus of one controller [A/V], from the same quadratic. */
function currentSlope(branch: Branch, load: Load, supply: Supply, i: number): number {
  const voltage = supply.voltage[i] as number;
  const power = (load.voltage[i] as number) * (load.current[i] as number);
  return -power / (voltage * voltage - branch.supplyResistance * power);
}
