import type { Craft, Unknown } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import { forwardCraft } from '../../flight/forward/forwardPoint.ts';
import type { ForwardCraft } from '../../flight/forward/forwardTrim.ts';
import { isRinged } from '../../flight/forward/ringDrag.ts';
import { type Levers, neutralLevers } from '../../flight/types.ts';
import type { WakeTable } from '../../flight/wakes/wakeTable.ts';
import type { Outcome } from '../../numerics/outcome.ts';
import { shifted } from '../flownMeasures.ts';
import { type Doubted, leverStates } from '../levers.ts';
import { statesAs, type Uncertainty } from '../propagate.ts';
import type { CraftDrag } from './dragOf.ts';
import type { Flight } from './types.ts';

/** Blade elements under an inflow that grows in a straight line: no small propeller measured edgewise was at hand (ours, no source). */
export const IN_PLANE: Unknown = {
  lever: 'inPlaneScale',
  label: 'in-plane force of the propellers',
  deviation: 0.25,
  trust: 'inferred',
  source: 'docs/method/flight.md',
};

/** Rings of real depth and lip turn the air less or more than a thin ring wing: flow tears off the front lip, the rotor draws it in (ours, no source). */
const GUARD_TURNING: Unknown = {
  lever: 'guardTurningScale',
  label: 'air turned by the guards',
  deviation: 0.4,
  trust: 'inferred',
  source: 'docs/method/flight.md',
};

const asReckoned: Doubted = { levers: neutralLevers, balanceShift: 0 };

/** The craft's uncertain inputs with the body's drag among them; how hard it is flown is left out; `more` is added. */
export function speedStates(
  craft: Craft,
  flight: Flight,
  more: readonly Unknown[] = [],
): readonly Uncertainty<Doubted>[] {
  const told = craft.unknowns.filter(({ lever }) => lever !== 'styleScale');
  const unheard = told.some(({ lever }) => lever === IN_PLANE.lever) ? [] : [IN_PLANE];
  const rings = isRinged(flight.model) ? [GUARD_TURNING] : [];
  return leverStates([...told, ...unheard, ...rings, ...more], flight.doubt);
}

/** One way things and the day's wind may really be. */
export interface DayState extends Doubted {
  /** Mean, where the craft flies [m/s]. */
  readonly wind: number;
}

/** Spread of a forecast wind whose brief tells none, over its value (common practice, no source). */
const WIND_SPREAD = 0.25;

/** As `speedStates`, with the wind of the brief among what is not known. */
export function dayStates(craft: Craft, brief: Brief, flight: Flight): readonly Uncertainty<DayState>[] {
  const { value, deviation = WIND_SPREAD * value } = brief.site.wind;
  const states = statesAs(speedStates(craft, flight), (state) => ({ ...state, wind: value }));
  if (!(deviation > 0)) return states;
  return [
    ...states,
    {
      input: 'wind of the day',
      trust: 'inferred',
      raised: { ...asReckoned, wind: value + deviation },
      ...(deviation < value ? { lowered: () => ({ ...asReckoned, wind: value - deviation }) } : {}),
    },
  ];
}

/** Levers that change what the air asks of the motors; all others only how they are fed. */
const IN_THE_AIR: readonly (keyof Levers)[] = [
  'thrustScale',
  'torqueScale',
  'massScale',
  'downloadScale',
  'dragScale',
  'inPlaneScale',
  'guardTurningScale',
];

/** True when a state leaves speeds and torques of the rotors as they are. */
export function onlyElectrical({ levers, balanceShift }: Doubted): boolean {
  return balanceShift === 0 && IN_THE_AIR.every((name) => levers[name] === 1);
}

/**
 * The craft in forward flight under a state.
 *
 * @param wakes of the same layout, which no state moves
 */
export function forwardOf(
  flight: Flight,
  drag: CraftDrag,
  state: Doubted,
  wakes?: WakeTable,
): Outcome<ForwardCraft> {
  return forwardCraft(shifted(flight.model, state.balanceShift), state.levers, drag.bluff, {
    bars: drag.bars,
    dragCentre: drag.centre,
    ...(wakes === undefined ? {} : { wakes }),
  });
}
