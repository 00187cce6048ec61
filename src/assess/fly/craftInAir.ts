import type { PackSource } from '../../drive/types.ts';
import { type Circuit, circuitOf } from '../../flight/circuit.ts';
import { bluffAreas } from '../../flight/forward/bodyDrag.ts';
import { forwardCraft } from '../../flight/forward/forwardPoint.ts';
import type { ForwardCraft } from '../../flight/forward/forwardTrim.ts';
import { type GustCraft, gustCraft } from '../../flight/gustCraft.ts';
import { sourceAt } from '../../flight/operatingPoint.ts';
import { type Agility, agility } from '../../flight/reserve/agility.ts';
import { simulationModel } from '../../flight/simulation/fromFlight.ts';
import { makeMixer } from '../../flight/simulation/mixer.ts';
import { prepareCraft } from '../../flight/simulation/prepare.ts';
import { hoverState } from '../../flight/simulation/simulate.ts';
import type { SimulationModel, SimulationState } from '../../flight/simulation/types.ts';
import { neutralLevers } from '../../flight/types.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { scale3 } from '../../numerics/vector3.ts';
import { shifted } from '../flownMeasures.ts';
import type { Doubted } from '../levers.ts';
import { dragOf } from '../parts/dragOf.ts';
import { scaled, turningAs } from '../parts/reserve/inertiaDoubt.ts';
import type { Flight, PartContext } from '../parts/types.ts';

/** A craft ready for the simulation, with the closed forms' view of it beside. */
export interface CraftInAir {
  readonly flight: Flight;
  /** Its rotors answer axial flow, in-plane drag in proportion to thrust. */
  readonly model: SimulationModel;
  /** The same with rotors that answer in oblique flow, for a dash: many times the work. */
  readonly oblique: SimulationModel;
  readonly circuit: Circuit;
  readonly source: PackSource;
  readonly start: SimulationState;
  /** Rotors apart from each other's wakes, as the simulation has them. */
  readonly forward: ForwardCraft;
  readonly gust: GustCraft;
  readonly agility: Agility;
}

/** Of the pack, everywhere: what closed forms of hover and control take [share]. */
export const CHARGE = 0.5;

/**
 * One way things may really be: levers and balance, and scales on the moments of inertia and on what turns. Told where the
 * simulation is flown to learn how far its figures are open.
 */
export interface AirState extends Doubted {
  readonly inertia: number;
  readonly turning: number;
}

export const asReckoned: AirState = { levers: neutralLevers, balanceShift: 0, inertia: 1, turning: 1 };

/** @returns words for craft that the plain mixer cannot fly, such as one that tilts a servo */
export function craftInAir(
  context: Pick<PartContext, 'craft'> & { readonly flight: Flight },
  state: AirState = asReckoned,
): Outcome<CraftInAir> {
  const { craft } = context;
  const { levers } = state;
  const flight = {
    ...context.flight,
    model: turningAs(shifted(context.flight.model, state.balanceShift), state.turning),
  };
  if (flight.model.stations.some(({ servoTilt = 0 }) => servoTilt > 0)) {
    return noSolution('the simulation does not tilt a tail servo; `ask reserve`, `trim` and `wind` do');
  }
  const inertia = scaled(craft.massProperties.inertia, state.inertia);
  const drag = dragOf(craft);
  const forward = forwardCraft(flight.model, levers, drag.bluff, {
    bars: drag.bars,
    dragCentre: drag.centre,
    wakes: 'left out',
  });
  if (!forward.ok) return forward;
  const gust = gustCraft(forward.value, flight.model.gravity);
  if (!gust.ok) return gust;
  const lively = agility(flight.model, inertia, levers, { charge: CHARGE });
  if (!lively.ok) return lively;
  const { hover, busVoltage } = lively.value.onBus;
  const body = {
    inertia,
    dragArea: scale3(bluffAreas(drag.bluff), levers.dragScale),
    bars: drag.bars.map(({ axes, areas }) => ({ axes, areas: scale3(areas, levers.dragScale) })),
    dragCentre: drag.centre,
    inPlaneDragPerThrust: gust.value.rotorDragSlope / (gust.value.mass * flight.model.gravity),
  };
  const model = simulationModel(flight.model, levers, hover, body, busVoltage);
  const prepared = prepareCraft(model);
  if (!prepared.ok) return prepared;
  const mixer = makeMixer(prepared.value);
  if (!mixer.ok) return mixer;
  const circuit = circuitOf(flight.model, levers);
  return solved({
    flight,
    model,
    oblique: simulationModel(flight.model, levers, hover, body, busVoltage, forward.value.oblique),
    circuit,
    source: sourceAt(circuit, CHARGE),
    start: hoverState(mixer.value),
    forward: forward.value,
    gust: gust.value,
    agility: lively.value,
  });
}
