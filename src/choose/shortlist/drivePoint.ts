import type { Air } from '../../air/standardAtmosphere.ts';
import { usableCapacity } from '../../drive/battery.ts';
import { type HeatLoad, settledTemperatures, timeToLimit } from '../../drive/motorHeat.ts';
import type { ControllerModel, WireModel } from '../../drive/types.ts';
import { type Circuit, circuitOf } from '../../flight/circuit.ts';
import { currentAtCutOff } from '../../flight/cutOff.ts';
import { currentOfCurve, dutyCurve } from '../../flight/dutyCurve.ts';
import { emptySupply, feed, type Supply } from '../../flight/feed.ts';
import { emptyLoad, type Load, loadForThrusts } from '../../flight/load.ts';
import { sourceAt } from '../../flight/operatingPoint.ts';
import { loadForDuties } from '../../flight/throttle.ts';
import { type FlightModel, neutralLevers, type Station, type Style } from '../../flight/types.ts';
import { inducedSpeed } from '../../flight/wake.ts';
import type { WakeRelief } from './wakeRelief.ts';

/** What is still open, each at one end: all stations alike, as the best or the worst of them. */
export interface Ends {
  readonly controller: ControllerModel;
  readonly mainWire: WireModel;
  readonly connectorResistance: number;
  readonly supplyLead: WireModel;
  readonly motorLead: WireModel;
  /** Share of the thrust lost on the arm. */
  readonly downloadShare: number;
  /** [W] */
  readonly avionicsPower: number;
  /** [kg] */
  readonly mass: number;
}

/**
 * A model of what is fixed once frame, motor, propeller and pack are, made by `flightModelOf` itself so that whatever
 * it knows of rotors and rings is in the bounds too. What is still open is laid over it by `Ends`.
 */
export interface Drivetrain {
  readonly model: FlightModel;
  readonly air: Air;
  /** Of the rotor, by `wakeReliefOf`; looked at only where some rotor works in another's wake. */
  readonly wakeRelief: WakeRelief;
}

/** Ranges that every completion's measures lie in; SI. */
export interface DriveBounds {
  readonly flownTime: number;
  readonly thrustToWeight: readonly [low: number, high: number];
  /** Held at full throttle out of a hover until the first motor is too hot [s], at most. */
  readonly timeToLimit: number;
  /** Of one motor and of the pack at full throttle [A], at least. */
  readonly motorCurrent: number;
  readonly packCurrent: number;
  /** Of a cell at full throttle on a pack down to the reserve [V], at most. */
  readonly cellVoltage: number;
}

/**
 * Slack for what the proofs below take as exact: a rotor map's thrust and torque rise and its power is
 * convex but for wiggles of interpolation and of the solvers, under 1e-4 (tested); a tenth of a per cent is held.
 */
const SLACK = 1e-3;
const HEAT_SLACK = 1e-2;
const SLICES = 8;
const UNDER_WAY = 0.9;
const HALF = 0.5;

/**
 * Bounds on flown time, thrust to weight and full-throttle current over all completions of a drivetrain: any
 * mass in [light.mass, heavy.mass], any balance, any resistances and electronics' power between the two ends.
 *
 * 1. Any trim's thrusts sum to the weight or more. Electrical power of a motor is rising and convex in
 *    its thrust, so for given weight equal thrusts draw least (Jensen), and less weight draws less still.
 *    `feed`'s current rises with every motor's power, with resistances and with the electronics' power. So a
 *    demand of thrust flown by equal motors at `light` draws no more than any completion does: I_light.
 * 2. At full duty speed, torque and current rise with bus voltage and fall with resistance. What
 *    controllers and electronics take for themselves adds to the pack's current, though it lowers the bus. So
 *    the pack's current at full throttle is least with the resistances of `heavy`, the own draw of `light`,
 *    and the largest polarisation, that of the full throttle of `light` on a full pack: I_full.
 * 3. A demand is flown by thrust where it can be fed, else at full duty: it draws at least
 *    min(I_light, I_full). A pilot's throttle below full is bounded by nothing but 0. What would pull the pack below its
 *    cut-off is eased to I_cut = (emf - cut-off) / fast resistance, never below the hover of `light`; least under the
 *    largest polarisation, that of a mean current no slice before could exceed without easing: (open circuit - cut-off) / fast resistance.
 * 4. Flown time is a sum over slices of charge over mean current, and ends no later than the reserve: each
 *    slice with the least current bounds it from above.
 * 5. Thrust to weight: full-duty thrust rises with bus voltage and falls with resistance, so it lies between
 *    `heavy`'s over the largest weight and `light`'s, with the least settled current, over the smallest.
 *
 * 6. Time to the motor's limit falls with current and iron loss, grows with the wash, and is longest from the
 *    coolest start: the least current and speed of 5, the most wash, and a start settled in `light`'s hover in
 *    the wash of the heaviest. The hottest motor carries an equal share or more, and a motor settles hotter
 *    the more it carries: losses grow with the square of thrust, cooling slower than its root.
 *
 * 7. A rotor in another's wake turns faster for its thrust and at no less torque than the rotor of
 *    `wakeRelief` in still air: so 1 holds with every rotor such a one. At full duty wakes are reckoned as they are. Heat in a wake is left unbounded.
 *
 * @returns undefined when even `light` cannot hover on a half-full pack with every motor alike (then none can)
 */
export function driveBounds(
  train: Drivetrain,
  light: Ends,
  heavy: Ends,
  style: Style,
): DriveBounds | undefined {
  const blown = circuitOf(modelOf(train, light), neutralLevers);
  const wakes = blown.branches.some((branch) => branch.inWakeOf >= 0);
  const easy = wakes ? outOfWake(train, light) : blown;
  const hard = circuitOf(modelOf(train, heavy), neutralLevers);
  const frugal = circuitOf(
    modelOf(train, { ...heavy, controller: frugalOf(light, heavy), avionicsPower: light.avionicsPower }),
    neutralLevers,
  );
  const count = easy.branches.length;
  const supply = emptySupply(count);
  const hover = emptyLoad(count);
  if (!turned(easy, 1, hover)) return undefined;
  if (feed(easy, sourceAt(easy, HALF, 0), hover, supply) !== 'fed') return undefined;
  const settled = supply.packCurrent;

  const most = fullDuty(blown, sourceAt(blown, UNDER_WAY, settled), hover);
  const least = fullDuty(hard, sourceAt(hard, UNDER_WAY), hover);
  const drawn = fullDuty(frugal, sourceAt(frugal, UNDER_WAY), hover);
  return {
    flownTime: (1 + SLACK) * longest(train, easy, blown, frugal, hover, style),
    thrustToWeight: [((1 - SLACK) * least.thrust) / hard.weight, ((1 + SLACK) * most.thrust) / easy.weight],
    timeToLimit: wakes
      ? Number.POSITIVE_INFINITY
      : (1 + HEAT_SLACK) * longestHeld(train, easy, hard, hover, least, most),
    motorCurrent: (1 - SLACK) * least.current,
    packCurrent: (1 - SLACK) * drawn.packCurrent,
    cellVoltage: (1 + SLACK) * highestCell(train, frugal, hover, settled),
  };
}

/** Worst resistance, but the least that the controllers take for themselves. */
const frugalOf = (light: Ends, heavy: Ends): ControllerModel => ({
  ...light.controller,
  resistance: heavy.controller.resistance,
});

/** Every rotor in still air, relieved of what a wake could save. */
function outOfWake({ model, air, wakeRelief }: Drivetrain, ends: Ends): Circuit {
  const stations = model.stations.map(({ inWakeOf: _, ...station }): Station => station);
  const circuit = circuitOf(modelOf({ model: { ...model, stations }, air, wakeRelief }, ends), neutralLevers);
  const branches = circuit.branches.map((branch) => ({
    ...branch,
    thrustScale: branch.thrustScale * wakeRelief.thrust,
    torqueScale: branch.torqueScale * wakeRelief.torque,
  }));
  return { ...circuit, branches };
}

function longest(
  train: Drivetrain,
  easy: Circuit,
  blown: Circuit,
  frugal: Circuit,
  hover: Load,
  style: Style,
): number {
  const count = easy.branches.length;
  const supply = emptySupply(count);
  const loads = style.bins.map((bin) => {
    if ('throttle' in bin) return undefined;
    const load = emptyLoad(count);
    const faster = Math.sqrt(bin.thrustToWeight);
    load.angularSpeed.set(hover.angularSpeed.map((speed) => speed * faster));
    return turned(easy, bin.thrustToWeight, load) ? load : undefined;
  });
  const duties = new Float64Array(count).fill(1);
  const highest = sourceAt(frugal, 1).emf;
  const curve = dutyCurve(frugal, duties, 0.4 * highest, highest);
  const settled = fullDuty(blown, sourceAt(blown, 1, 0), hover).packCurrent;
  const capacity = usableCapacity(train.model.pack, train.model.packTemperature);
  const slice = (1 - train.model.landingReserve) / SLICES;
  let duration = 0;
  let settledMost = settled;
  for (let k = 0; k < SLICES; k++) {
    const charge = 1 - (k + 0.5) * slice;
    const worn = sourceAt(frugal, charge, settled);
    const eased = currentAtCutOff(frugal.pack, sourceAt(frugal, charge, settledMost));
    const full = (curve && currentOfCurve(curve, frugal, worn)) ?? fullDuty(frugal, worn, hover).packCurrent;
    const source = sourceAt(easy, charge, 0);
    settledMost = Math.min(settled, currentAtCutOff(easy.pack, source));
    const hovering = feed(easy, source, hover, supply) === 'fed' ? supply.packCurrent : 0;
    const most = Math.max(eased, hovering);
    let mean = 0;
    for (const [index, bin] of style.bins.entries()) {
      const load = loads[index];
      if (load !== undefined) {
        const fed = feed(easy, source, load, supply) === 'fed';
        mean += bin.share * Math.min(fed ? supply.packCurrent : full, full, most);
      } else if ('thrustToWeight' in bin || bin.throttle === 1) mean += bin.share * Math.min(full, most);
    }
    duration += mean > 0 ? (slice * capacity) / mean : Number.POSITIVE_INFINITY;
  }
  return duration;
}

/** Terminal voltage at the least current and the least polarisation that a hover leaves. */
function highestCell(train: Drivetrain, frugal: Circuit, hover: Load, settled: number): number {
  const charge = Math.max(train.model.landingReserve, 0.02);
  const { packCurrent } = fullDuty(frugal, sourceAt(frugal, charge), hover);
  const { emf, resistance } = sourceAt(frugal, charge, settled);
  return (emf - resistance * packCurrent) / train.model.pack.series;
}

function longestHeld(
  train: Drivetrain,
  easy: Circuit,
  hard: Circuit,
  hover: Load,
  least: FullDuty,
  most: FullDuty,
): number {
  const [branch] = easy.branches;
  if (branch === undefined || least.current === 0) return Number.POSITIVE_INFINITY;
  const { air } = train;
  const motor = train.model.stations[0]?.motor;
  if (motor === undefined) return Number.POSITIVE_INFINITY;
  const loadAt = (current: number, speed: number, thrust: number): HeatLoad => ({
    current,
    resistanceScale: 1,
    ironLoss:
      ((branch.idleConstant + branch.idleSlope * speed) * speed) / branch.speedConstant +
      current * current * branch.resistanceSlope * speed,
    washSpeed: inducedSpeed(thrust, 0, air.density, branch.discArea),
    airTemperature: air.temperature,
    coolingScale: 1,
  });
  const heaviest = ((hover.thrust[0] as number) * hard.weight) / easy.weight;
  const hovering = loadAt(hover.current[0] as number, hover.angularSpeed[0] as number, heaviest);
  const settled = settledTemperatures(motor, hovering);
  const start = settled.ok ? settled.value : { winding: air.temperature, case: air.temperature };
  return timeToLimit(motor, loadAt(least.current, least.speed, most.largest), start);
}

/** Every motor at an equal share of so many weights; false when the propellers cannot. */
function turned(circuit: Circuit, weights: number, load: Load): boolean {
  const count = circuit.branches.length;
  const thrusts = new Float64Array(count).fill((weights * circuit.weight) / count);
  return loadForThrusts(circuit, thrusts, 0, load).ok;
}

/** Net thrust of all motors, the largest motor current and the pack's at full duty; nothing where the pack gives out. */
function fullDuty(circuit: Circuit, source: ReturnType<typeof sourceAt>, hover: Load): FullDuty {
  const count = circuit.branches.length;
  const load = emptyLoad(count);
  load.angularSpeed.set(hover.angularSpeed.map((speed) => 2.2 * speed));
  const supply: Supply = emptySupply(count);
  const found = loadForDuties(circuit, source, new Float64Array(count).fill(1), 0, load, supply);
  const first = circuit.branches[0];
  if (!found.ok || first === undefined)
    return { thrust: 0, largest: 0, current: 0, speed: 0, packCurrent: 0 };
  let thrust = 0;
  for (const [i, branch] of circuit.branches.entries())
    thrust += (load.thrust[i] as number) * branch.netShare;
  return {
    thrust,
    largest: Math.max(...load.thrust),
    current: Math.max(...load.current),
    speed: Math.min(...load.angularSpeed),
    packCurrent: supply.packCurrent,
  };
}

/** Every motor at full duty. */
interface FullDuty {
  /** Net, of all [N]. */
  readonly thrust: number;
  /** Of one rotor, before download [N]. */
  readonly largest: number;
  /** Of one motor [A]. */
  readonly current: number;
  /** [rad/s] */
  readonly speed: number;
  /** [A] */
  readonly packCurrent: number;
}

function modelOf({ model }: Drivetrain, ends: Ends): FlightModel {
  const { mass, mainWire, connectorResistance, avionicsPower, ...each } = ends;
  const stations = model.stations.map((station): Station => ({ ...station, ...each }));
  return { ...model, stations, mass, mainWire, connectorResistance, avionicsPower };
}
