import type { DragAreas } from '../../airframe/types.ts';
import { packResistance, packSource, polarisationAfter, usableCapacity } from '../../drive/battery.ts';
import type { PackSource } from '../../drive/types.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { cutOffVoltage } from '../cutOff.ts';
import { describe } from '../describe.ts';
import { emptySupply, feed, type Supply } from '../feed.ts';
import { type ForwardOptions, forwardCraft } from '../forward/forwardPoint.ts';
import type { ForwardCraft } from '../forward/forwardTrim.ts';
import { emptyLoad, type Load } from '../load.ts';
import { inWords } from '../operatingPoint.ts';
import { loadForDuties } from '../throttle.ts';
import type { FlightModel, Levers } from '../types.ts';
import { easedBurst } from './easedBurst.ts';
import { loadOfLeg, timing } from './legLoad.ts';
import type { Condition, Leg, LegFlown, MissionEnd, MissionFlown } from './types.ts';
import { warmed } from './warmed.ts';

/** Steps shorter than this follow sag and polarisation within 0.1 % of ten times finer ones [s]. */
const LONGEST_STEP = 4;
/** Heat a strapped pack sheds, over its heat capacity in kJ/K to 2/3 [W/K] (common practice, no source). */
const PACK_COOLING = 1.2;

/**
 * Flies legs one after another on a pack that remembers: its charge, the slow polarisation of its RC pair, and the
 * warmth of its own losses. A burst that would pull the terminals below the cut-off is eased (`easedBurst`); the flight ends
 * in the air where the pack is empty, or where a steady leg, or a hover in place of a burst, cannot be held above it.
 *
 * No solution when a leg cannot be flown at all, on a full pack: a speed beyond the top speed, a climb beyond full throttle.
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
  const asTheAir = { winding: model.airTemperature, case: model.airTemperature };
  let condition: Condition = {
    charge: 1,
    polarisation: 0,
    temperature: model.packTemperature,
    motors: model.stations.map(() => asTheAir),
  };
  const flown: LegFlown[] = [];
  let end: MissionEnd = 'landed';
  for (const [index, leg] of legs.entries()) {
    const result = flyLeg(craft, levers, leg, index, condition);
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

interface LegResult {
  readonly flown: LegFlown;
  readonly end: MissionEnd;
}

function flyLeg(
  craft: ForwardCraft,
  levers: Levers,
  leg: Leg,
  index: number,
  before: Condition,
): Outcome<LegResult> {
  const { circuit, model } = craft;
  const { pack } = circuit;
  const count = circuit.branches.length;
  const { duration, groundSpeed } = timing(leg);
  const wanted = loadOfLeg(craft, leg);
  if (!wanted.ok) return noSolution(`leg ${index + 1} (${leg.kind}): ${wanted.reason}`);
  const asked = wanted.value.load;
  const load = asked ?? emptyLoad(count);
  const duties = circuit.branches.map((branch) => (leg.kind === 'idle' ? branch.idleDuty : 1));
  const punch = emptyLoad(count);
  const burst = leg.kind === 'full throttle' || (leg.kind === 'pull' && leg.thrustToWeight > 1);
  let eased: number | undefined;
  const supply = emptySupply(count);
  const cutOff = cutOffVoltage(pack);
  const cooling = PACK_COOLING * (pack.heatCapacity / 1000) ** (2 / 3);
  const steps = Math.ceil(duration / LONGEST_STEP);
  const step = duration / steps;
  let { charge, polarisation, temperature, motors } = before;
  let hottestWinding = hottestOf(motors);
  let elapsed = 0;
  let drawn = 0;
  let lowestVoltage = Number.POSITIVE_INFINITY;
  let end: MissionEnd = 'landed';
  for (let k = 0; k < steps && end === 'landed'; k++) {
    const source = sourceOf(craft, { charge, polarisation, temperature });
    const first = carry(craft, source, asked === undefined ? duties : undefined, load, supply);
    const fed = !first.ok && leg.kind === 'pull' ? carry(craft, source, duties, punch, supply) : first;
    if (!fed.ok) {
      const fresh = sourceOf(craft, { charge: 1, polarisation: 0, temperature });
      if (asked === undefined || feed(circuit, fresh, load, supply) !== 'fed') {
        return noSolution(`leg ${index + 1} (${leg.kind}): ${fed.reason}`);
      }
      end = 'thrust runs short';
      lowestVoltage = Math.min(lowestVoltage, source.emf);
      break;
    }
    let carried = fed.value;
    if (supply.packVoltage < cutOff) {
      const throttle = burst ? easedBurst(circuit, source, craft.trim.load, punch, supply) : undefined;
      if (throttle === undefined) {
        end = 'cut-off voltage';
        lowestVoltage = Math.min(lowestVoltage, cutOff);
        break;
      }
      carried = punch;
      eased = Math.min(eased ?? 1, throttle);
    }
    lowestVoltage = Math.min(lowestVoltage, supply.packVoltage);
    const current = supply.packCurrent;
    const capacity = usableCapacity(pack, temperature);
    const room = charge * capacity;
    const time = Math.min(step, room / current);
    if (time < step) end = 'empty';
    polarisation = polarisationAfter(pack, { charge, temperature }, polarisation, current, time);
    charge = Math.max(charge - (current * time) / capacity, 0);
    const heat =
      (source.openCircuit - supply.packVoltage) * current - cooling * (temperature - model.airTemperature);
    temperature += (heat * time) / pack.heatCapacity;
    const point = describe(circuit, source, carried, supply);
    motors = warmed(model, levers, wanted.value, point, motors, time);
    hottestWinding = Math.max(hottestWinding, hottestOf(motors));
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
      ...(eased === undefined ? {} : { eased }),
      hottestWinding,
      after: { charge, polarisation, temperature, motors },
    },
  });
}

const hottestOf = (motors: Condition['motors']): number =>
  motors.reduce((most, { winding }) => Math.max(most, winding), Number.NEGATIVE_INFINITY);

/** The pack as its condition leaves it: polarisation already built up, only the fast part answers at once. */
function sourceOf(craft: ForwardCraft, condition: Omit<Condition, 'motors'>): PackSource {
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
