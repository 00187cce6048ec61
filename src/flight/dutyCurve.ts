import type { PackSource } from '../drive/types.ts';
import type { Circuit } from './circuit.ts';
import { emptySupply } from './feed.ts';
import { emptyLoad } from './load.ts';
import { currentOnBus } from './throttle.ts';

/**
 * What all controllers together draw at fixed duties over bus voltage, for asking at many charges of one flight: the
 * motors do not know the pack, only the bus.
 */
export interface DutyCurve {
  /** Between which it holds [V]. */
  readonly lowest: number;
  readonly highest: number;
  /** Newton's divided differences of the logarithm of current over `nodes`, logarithms of bus voltage. */
  readonly nodes: Float64Array;
  readonly differences: Float64Array;
}

const NODES = 5;
/** Speed goes about as this power of voltage: a first guess for the next node. */
const SPEED_POWER = 0.85;

/**
 * Solves the motors at five voltages (Chebyshev nodes) and lays a polynomial through, logarithm over logarithm, where
 * the curve is nearly straight: within 1e-5 of the motors solved anew while none stalls (tested).
 *
 * @param duties of each controller, 0 to 1
 * @param lowest, highest voltage of the bus [V], > 0
 * @returns undefined when some voltage draws no current, such as with every motor at rest
 */
export function dutyCurve(
  circuit: Circuit,
  duties: ArrayLike<number>,
  lowest: number,
  highest: number,
): DutyCurve | undefined {
  const count = circuit.branches.length;
  const load = emptyLoad(count);
  const supply = emptySupply(count);
  const nodes = new Float64Array(NODES);
  const differences = new Float64Array(NODES);
  const [low, high] = [Math.log(lowest), Math.log(highest)];
  for (let k = 0; k < NODES; k++) {
    const place = Math.cos((Math.PI * (k + 0.5)) / NODES);
    nodes[k] = 0.5 * (low + high) + 0.5 * (high - low) * place;
    if (k > 0) {
      const slower = Math.exp(SPEED_POWER * ((nodes[k] as number) - (nodes[k - 1] as number)));
      for (let i = 0; i < count; i++) load.angularSpeed[i] = (load.angularSpeed[i] as number) * slower;
    }
    const current = currentOnBus(circuit, duties, Math.exp(nodes[k] as number), 0, load, supply);
    if (!(current > 0)) return undefined;
    differences[k] = Math.log(current);
  }
  for (let order = 1; order < NODES; order++) {
    for (let k = NODES - 1; k >= order; k--) {
      const rise = (differences[k] as number) - (differences[k - 1] as number);
      differences[k] = rise / ((nodes[k] as number) - (nodes[k - order] as number));
    }
  }
  return { lowest, highest, nodes, differences };
}

/**
 * Pack current at which a curve hangs on a pack [A]: Newton's method from the electromotive force down, on the
 * concave h(V) = emf - R (I(V) + P/V) - V as in `feed`.
 *
 * @returns undefined where there is none, or where the bus would leave the curve: ask `loadForDuties` there
 */
export function currentOfCurve(curve: DutyCurve, circuit: Circuit, source: PackSource): number | undefined {
  const resistance = source.resistance + circuit.mainResistance;
  const { nodes, differences } = curve;
  let bus = source.emf;
  for (let iteration = 0; iteration < 50; iteration++) {
    const x = Math.log(bus);
    let value = differences[NODES - 1] as number;
    let slope = 0;
    for (let k = NODES - 2; k >= 0; k--) {
      const from = x - (nodes[k] as number);
      slope = slope * from + value;
      value = value * from + (differences[k] as number);
    }
    const motors = Math.exp(value);
    const electronics = circuit.avionicsPower / bus;
    const excess = bus + resistance * (motors + electronics) - source.emf;
    const steepness = 1 + (resistance * (motors * slope - electronics)) / bus;
    if (!(steepness > 0)) return undefined;
    const step = excess / steepness;
    bus -= step;
    if (!(bus >= curve.lowest && bus <= curve.highest)) return undefined;
    if (Math.abs(step) <= 1e-9 * source.emf) return (source.emf - bus) / resistance;
  }
  return undefined;
}
