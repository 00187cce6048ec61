import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import { formatQuantity, withUnit } from '../../units/formatQuantity.ts';
import type { Flight, PartContext } from '../parts/types.ts';
import { dayGust } from '../parts/wind/windFigures.ts';
import { type AirState, asReckoned, type CraftInAir, craftInAir } from './craftInAir.ts';
import { flyAlong, type Plan } from './flyAlong.ts';
import { bankFigures, dashFigures, gustFigures, hoverFigures, roughFigures } from './sceneFigures.ts';
import { bankPlan, dashPlan, gustPlan, hoverPlan, roughPlan } from './scenes.ts';
import type { FlightTrace, Flown, FlownFigure, FlyRequest } from './types.ts';

/**
 * Flies one scene with the six-degree-of-freedom simulation at the most likely value of every input, on a pack at half
 * charge, and holds what comes out against the closed forms of the assessment. Yields the share that is done, so that
 * whoever waits can show it or leave.
 *
 * @param state one way things may really be; as reckoned when absent
 * @param coarser steps of time over the usual ones, for flights that are only compared with others
 * @returns words for craft that the plain mixer cannot fly, or a scene that has no wind
 */
export function* fly(
  context: Pick<PartContext, 'craft'> & { readonly flight: Flight },
  request: FlyRequest,
  state: AirState = asReckoned,
  coarser = 1,
): Generator<number, Outcome<Flown>> {
  const windless = !(request.wind > 0) && (request.scene === 'gust' || request.scene === 'rough air');
  if (windless) return noSolution('there is no wind to fly in');
  const found = craftInAir(context, state);
  if (!found.ok) return found;
  const craft = found.value;
  const set = sceneOf(craft, request);
  if (!set.ok) return set;
  // A dash is flown in as coarse steps as it bears.
  const inSteps = (plan: Plan): Plan =>
    request.scene === 'dash' ? plan : { ...plan, timeStep: coarser * plan.timeStep };
  const flown = yield* flyAlong(craft, inSteps(set.value.plan));
  if (!flown.ok) return flown;
  const { trace } = flown.value;
  const beside =
    set.value.beside === undefined ? undefined : yield* flyAlong(craft, inSteps(set.value.beside));
  if (beside?.ok === false) return beside;
  return solved({
    scene: request.scene,
    says: set.value.says,
    figures: set.value.figures(trace, beside?.value.trace),
    motors: context.flight.model.stations.map(({ name }) => name),
    trace,
  });
}

/** A gust of a wind that is forecast [m/s]. */
const tenths = (speed: number): string => withUnit(speed.toFixed(1), 'm/s');

interface Set {
  readonly plan: Plan;
  readonly says: string;
  /** The same another way, short, for a figure beside the others. */
  readonly beside?: Plan;
  readonly figures: (trace: FlightTrace, beside?: FlightTrace) => readonly FlownFigure[];
}

function sceneOf(craft: CraftInAir, request: FlyRequest): Outcome<Set> {
  const wind = formatQuantity(request.wind, 'speed');
  switch (request.scene) {
    case 'hover':
      return solved({
        plan: hoverPlan(craft, request.duration),
        says: 'Holding its place in still air.',
        figures: (trace) => hoverFigures(craft, trace),
      });
    case 'gust': {
      const { along, upward } = dayGust(request.wind);
      return solved({
        plan: gustPlan(craft, request.wind),
        says: `Holding its place in ${wind} from ahead; at 0 s a sharp gust of ${tenths(along)} along and ${tenths(upward)} up, which stays.`,
        figures: (trace) => gustFigures(craft, request.wind, trace),
      });
    }
    case 'bank': {
      const plan = bankPlan(craft, 'all the motors have');
      if (!plan.ok) return plan;
      const beside = bankPlan(craft, 'plain mixer');
      if (!beside.ok) return beside;
      return solved({
        plan: plan.value,
        // Four motors leave a mixer no choice.
        ...(craft.model.rotors.length > 4 ? { beside: beside.value } : {}),
        says: 'Out of a hover, at 0 s all the roll to the right that the motors have.',
        figures: (trace, mixed) => bankFigures(craft, trace, mixed),
      });
    }
    case 'dash': {
      const dash = dashPlan(craft, request.duration);
      if (!dash.ok) return dash;
      const { speed, tilt, aim, plan } = dash.value;
      return solved({
        plan,
        says: `Out of a hover nose down to ${formatQuantity(tilt, 'angle')}, ${aim}, height held.`,
        figures: (trace) => dashFigures(craft, speed, tilt, trace),
      });
    }
    case 'rough air':
      return solved({
        plan: roughPlan(craft, request),
        says: `Holding its place in ${wind} from ahead with Dryden gusts (MIL-F-8785C) of seed ${request.seed}.`,
        figures: (trace) => roughFigures(craft, request.wind, trace),
      });
  }
}
