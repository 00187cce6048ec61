import type { DragAreas } from '../../airframe/types.ts';
import { packResistance, packSource, polarisationAfter, usableCapacity } from '../../drive/battery.ts';
import type { PackSource } from '../../drive/types.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { describe } from '../describe.ts';
import { emptySupply, feed, type Supply } from '../feed.ts';
import { bluffAreas, writeBodyForce } from '../forward/bodyDrag.ts';
import { type ForwardOptions, forwardCraft } from '../forward/forwardPoint.ts';
import { type ForwardCraft, forwardTrim } from '../forward/forwardTrim.ts';
import { emptyLoad, type Load, loadForThrusts } from '../load.ts';
import { inWords } from '../operatingPoint.ts';
import { loadForDuties } from '../throttle.ts';
import type { FlightModel, Levers } from '../types.ts';
import type { Leg, LegFlown, MissionFlown, PackCondition } from './types.ts';

/** Steps shorter than this follow sag and polarisation within 0.1 % of ten times finer ones [s]. */
const LONGEST_STEP = 4;
/** Heat a strapped pack sheds, over its heat capacity in kJ/K to 2/3 [W/K] (common practice, no source). */
const PACK_COOLING = 1.2;

/**
 * Flies legs one after another on a pack that remembers: its charge, the slow polarisation of its RC pair, and the
 * warmth of its own losses. Stops where the pack is empty or its terminals fall below the cut-off.
 *
 * No solution when a leg cannot be flown at all: a speed beyond the top speed, a climb beyond full throttle.
 *
 * @throws RangeError for a leg that goes nowhere, such as a cruise against a stronger wind
 */
export function flyMission(
  model: FlightModel,
  levers: Levers,
  drag: DragAreas,
  legs: readonly Leg[],
  options: ForwardOptions = {},
): Outcome<MissionFlown> {
  const crafted = forwardCraft(model, levers, drag, options);
  if (!crafted.ok) return crafted;
  const craft = crafted.value;
  let condition: PackCondition = { charge: 1, polarisation: 0, temperature: model.packTemperature };
  const flown: LegFlown[] = [];
  let end: MissionFlown['end'] = 'landed';
  for (const [index, leg] of legs.entries()) {
    const result = flyLeg(craft, model.airTemperature, leg, index, condition);
    if (!result.ok) return result;
    flown.push(result.value.flown);
    condition = result.value.flown.after;
    end = result.value.end;
    if (end !== 'landed') break;
  }
  return solved({
    legs: flown,
    duration: flown.reduce((sum, leg) => sum + leg.duration, 0),
    chargeLeft: condition.charge,
    end,
    intoReserve: condition.charge < model.landingReserve,
  });
}

/** Duration [s] and ground speed [m/s] of a leg. */
function timing(leg: Leg): { duration: number; groundSpeed: number } {
  switch (leg.kind) {
    case 'hover':
    case 'pull':
    case 'idle':
    case 'full throttle':
      return { duration: positive('duration', leg.duration), groundSpeed: 0 };
    case 'climb':
      return { duration: positive('height', leg.height) / positive('speed', leg.speed), groundSpeed: 0 };
    case 'cruise': {
      const groundSpeed = leg.airspeed - (leg.headwind ?? 0);
      if (!(groundSpeed > 0)) {
        throw new RangeError(
          `a cruise needs an airspeed above its headwind; found ${leg.airspeed} m/s against ${leg.headwind} m/s`,
        );
      }
      return { duration: positive('distance', leg.distance) / groundSpeed, groundSpeed };
    }
  }
}

function positive(name: string, value: number): number {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} must be above 0; found ${value}`);
  return value;
}

/** Motor loads of a leg; undefined where the throttle is what is given. */
function loadOfLeg(craft: ForwardCraft, leg: Leg): Outcome<Load | undefined> {
  const { circuit, trim } = craft;
  switch (leg.kind) {
    case 'hover':
      return solved(trim.load);
    case 'cruise': {
      const trimmed = forwardTrim(craft, leg.airspeed);
      return trimmed.ok ? solved(trimmed.value.load) : trimmed;
    }
    case 'climb': {
      const force = new Float64Array(3);
      const density = circuit.airDensity * craft.dragScale;
      writeBodyForce(bluffAreas(craft.drag), craft.bars, 0, 0, -leg.speed, density, force);
      const share = 1 + (force[2] as number) / circuit.weight;
      const load = emptyLoad(circuit.branches.length);
      load.angularSpeed.set(trim.load.angularSpeed);
      return loadForThrusts(
        circuit,
        trim.thrusts.map((thrust) => thrust * share),
        leg.speed,
        load,
      );
    }
    case 'pull': {
      const share = positive('thrustToWeight', leg.thrustToWeight);
      const load = emptyLoad(circuit.branches.length);
      load.angularSpeed.set(trim.load.angularSpeed);
      const pulled = loadForThrusts(
        circuit,
        trim.thrusts.map((thrust) => thrust * share),
        0,
        load,
      );
      // Beyond the propellers is beyond the pack: flown at full throttle.
      return pulled.ok ? pulled : solved(undefined);
    }
    case 'full throttle':
    case 'idle':
      return solved(undefined);
  }
}

interface LegResult {
  readonly flown: LegFlown;
  readonly end: MissionFlown['end'];
}

function flyLeg(
  craft: ForwardCraft,
  airTemperature: number,
  leg: Leg,
  index: number,
  before: PackCondition,
): Outcome<LegResult> {
  const { circuit } = craft;
  const { pack } = circuit;
  const count = circuit.branches.length;
  const { duration, groundSpeed } = timing(leg);
  const wanted = loadOfLeg(craft, leg);
  if (!wanted.ok) return noSolution(`leg ${index + 1} (${leg.kind}): ${wanted.reason}`);
  const load = wanted.value ?? emptyLoad(count);
  const duties = circuit.branches.map((branch) => (leg.kind === 'idle' ? branch.idleDuty : 1));
  const punch = emptyLoad(count);
  let carried = load;
  const supply = emptySupply(count);
  const cutOff = pack.series * pack.cutOffCellVoltage;
  const cooling = PACK_COOLING * (pack.heatCapacity / 1000) ** (2 / 3);
  const steps = Math.ceil(duration / LONGEST_STEP);
  const step = duration / steps;
  let { charge, polarisation, temperature } = before;
  let elapsed = 0;
  let drawn = 0;
  let lowestVoltage = Number.POSITIVE_INFINITY;
  let end: MissionFlown['end'] = 'landed';
  let source = sourceOf(craft, { charge, polarisation, temperature });
  for (let k = 0; k < steps && end === 'landed'; k++) {
    source = sourceOf(craft, { charge, polarisation, temperature });
    const asked = carry(craft, source, wanted.value === undefined ? duties : undefined, load, supply);
    const fed = !asked.ok && leg.kind === 'pull' ? carry(craft, source, duties, punch, supply) : asked;
    if (!fed.ok) return noSolution(`leg ${index + 1} (${leg.kind}): ${fed.reason}`);
    carried = fed.value;
    const current = supply.packCurrent;
    lowestVoltage = Math.min(lowestVoltage, supply.packVoltage);
    if (supply.packVoltage < cutOff) {
      end = 'cut-off voltage';
      break;
    }
    const capacity = usableCapacity(pack, temperature);
    const room = charge * capacity;
    const time = Math.min(step, room / current);
    if (time < step) end = 'empty';
    polarisation = polarisationAfter(pack, { charge, temperature }, polarisation, current, time);
    charge = Math.max(charge - (current * time) / capacity, 0);
    const heat =
      (source.openCircuit - supply.packVoltage) * current - cooling * (temperature - airTemperature);
    temperature += (heat * time) / pack.heatCapacity;
    elapsed += time;
    drawn += current * time;
  }
  return solved({
    end,
    flown: {
      leg,
      duration: elapsed,
      distance: groundSpeed * elapsed,
      meanCurrent: elapsed > 0 ? drawn / elapsed : supply.packCurrent,
      lowestVoltage,
      after: { charge, polarisation, temperature },
      last: describe(circuit, source, carried, supply),
    },
  });
}

/** The pack as its condition leaves it: polarisation already built up, only the fast part answers at once. */
function sourceOf(craft: ForwardCraft, condition: PackCondition): PackSource {
  const { pack } = craft.circuit;
  const { charge, polarisation, temperature } = condition;
  const slow = packResistance(pack, charge, temperature) * pack.slowShare;
  return packSource(pack, { charge, temperature, settledCurrent: slow > 0 ? polarisation / slow : 0 });
}

function carry(
  craft: ForwardCraft,
  source: PackSource,
  duties: readonly number[] | undefined,
  load: Load,
  supply: Supply,
): Outcome<Load> {
  if (duties !== undefined) return loadForDuties(craft.circuit, source, duties, 0, load, supply);
  const fed = feed(craft.circuit, source, load, supply);
  return fed === 'fed' ? solved(load) : noSolution(inWords(fed));
}
