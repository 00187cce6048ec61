import { forwardHeat } from '../flight/forward/forwardHeat.ts';
import { type ForwardPoint, forwardPoint } from '../flight/forward/forwardPoint.ts';
import type { ForwardCraft } from '../flight/forward/forwardTrim.ts';
import type { StationHeat } from '../flight/heat.ts';
import { type Levers, neutralLevers } from '../flight/types.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { type BandedFigures, bandFigures, figuresOf } from './bandedFigures.ts';
import { dragOf } from './parts/dragOf.ts';
import { forwardOf, speedStates } from './parts/speedStates.ts';
import type { Flight, PartContext } from './parts/types.ts';

/** How a craft flies when it is asked for its trim. */
export interface Flown {
  /** Through the air, level [m/s], >= 0: holding station in a wind is flying at its speed. */
  readonly speed: number;
  /** [m/s], >= 0 */
  readonly climb: number;
  /** 0 to 1 */
  readonly charge: number;
}

/** Every motor in steady flight. */
export interface TrimPoint {
  readonly trim: ForwardPoint;
  /** From the air's temperature. */
  readonly heat: readonly StationHeat[];
  readonly figures: BandedFigures;
}

/** A craft asked for its trims, one after another. */
export function trimmer(
  context: PartContext & { readonly flight: Flight },
): Outcome<(flown: Flown) => Outcome<TrimPoint>> {
  const { craft, flight } = context;
  const drag = dragOf(craft);
  const nominal = forwardOf(flight, drag, { levers: neutralLevers, balanceShift: 0 });
  if (!nominal.ok) return nominal;
  const states = speedStates(craft, flight).map((state) => ({
    ...state,
    raised: { state: state.raised, made: forwardOf(flight, drag, state.raised, nominal.value.wakes) },
  }));
  return solved((flown) => {
    const found = at(nominal.value, neutralLevers, flown);
    if (!found.ok) return found;
    if (found.value.trim.largestDuty > 1) {
      return noSolution('a motor would need more than full throttle at the loaded voltage');
    }
    const figures = bandFigures(
      found.value.figures,
      states,
      ({ state, made }) => {
        const raised = made.ok ? at(made.value, state.levers, flown) : made;
        return raised.ok ? raised.value.figures : {};
      },
      flight.model.airTemperature,
    );
    return solved({ trim: found.value.trim, heat: found.value.heat, figures: withWakeDoubt(figures) });
  });
}

/** Below it a wash is what rounding left [m/s]. */
const LEAST_WASH = 1e-3;
/** What wakes are told without contraction, roll-up and decay may be off by, one standard deviation (ours, no source). */
const WASH_SPREAD = 0.3;

/** The wash with what is open about the wakes themselves, which no lever moves. */
function withWakeDoubt(figures: BandedFigures): BandedFigures {
  const motors = figures.motors.map((motor) => {
    const { wash } = motor;
    if (wash === undefined || wash.value === 0) return motor;
    const [low, high] = wash.band;
    const doubt = 1.2816 * WASH_SPREAD * Math.abs(wash.value);
    const half = Math.hypot(0.5 * (high - low), doubt);
    const band = [wash.value - half, wash.value + half] as const;
    const leansOn = [
      { input: 'how wakes contract and decay', trust: 'inferred', share: (doubt / half) ** 2 },
    ] as const;
    return { ...motor, wash: { value: wash.value, band, leansOn } };
  });
  return { ...figures, motors };
}

function at(made: ForwardCraft, levers: Levers, { speed, climb, charge }: Flown) {
  const found = forwardPoint(made, speed, charge, climb);
  if (!found.ok) return found;
  const trim = found.value;
  const heat = forwardHeat(made.model, levers, trim, trim.point);
  const through = trim.speed * Math.sin(trim.tilt) + trim.climb * Math.cos(trim.tilt);
  const motors = made.model.stations.map((_, i) => {
    const rotor = trim.rotors[i];
    const washed = (trim.load.axialSpeed[i] as number) - through;
    return {
      wash: Math.abs(washed) < LEAST_WASH ? 0 : washed,
      ...(rotor === undefined ? {} : { inPlaneForce: rotor.inPlaneForce, hubMoment: rotor.momentAftUp }),
    };
  });
  const more = { craft: { tilt: trim.tilt, bodyDrag: trim.bodyDrag, rotorDrag: trim.rotorDrag }, motors };
  return solved({ trim, heat, figures: figuresOf(trim.point, heat, more) });
}
