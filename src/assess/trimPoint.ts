import { cellState, cellWords } from '../drive/cellState.ts';
import { forwardHeat } from '../flight/forward/forwardHeat.ts';
import { type ForwardPoint, forwardPoint } from '../flight/forward/forwardPoint.ts';
import type { ForwardCraft, ForwardTrim } from '../flight/forward/forwardTrim.ts';
import { servoLean } from '../flight/forward/servoLean.ts';
import type { StationHeat } from '../flight/heat.ts';
import { type Levers, neutralLevers } from '../flight/types.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { formatQuantity } from '../units/formatQuantity.ts';
import { type BandedFigure, type BandedFigures, bandFigures, figuresOf } from './bandedFigures.ts';
import { CONTROLLER_IDLE } from './controllerDoubts.ts';
import { withHubMoments } from './hubMoments.ts';
import { dragOf } from './parts/dragOf.ts';
import { forwardOf, speedStates } from './parts/speedStates.ts';
import type { Flight, PartContext } from './parts/types.ts';
import { statesAs } from './propagate.ts';

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
  /** How far a tail servo goes, either way [rad]; the tail's figure `servoLean` is positive to the right. */
  readonly servoLimit?: number;
  /** Where the cells are under their cut-off, in words. */
  readonly cells?: string;
}

/**
 * A craft asked for its trims, one after another.
 *
 * @param hubMoments adds every propeller's, some fifty solved discs a trim
 */
export function trimmer(
  context: PartContext & { readonly flight: Flight },
  hubMoments = false,
): Outcome<(flown: Flown) => Outcome<TrimPoint>> {
  const { craft, flight } = context;
  const drag = dragOf(craft);
  const nominal = forwardOf(flight, drag, { levers: neutralLevers, balanceShift: 0 });
  if (!nominal.ok) return nominal;
  const states = statesAs(speedStates(craft, flight, [CONTROLLER_IDLE]), (state) => ({
    state,
    made: forwardOf(flight, drag, state, nominal.value.wakes),
  }));
  return solved((flown) => {
    const found = at(nominal.value, neutralLevers, flown, hubMoments);
    if (!found.ok) return found;
    const servo = servoLean(nominal.value, found.value.trim);
    if (servo !== undefined && !(Math.abs(servo.sine) <= Math.sin(servo.limit))) {
      return noSolution(
        `the tail servo would have to lean ${leanText(servo.sine)} to hold the yaw; it goes to ${formatQuantity(servo.limit, 'angle')}`,
      );
    }
    if (found.value.trim.largestDuty > FULL) {
      return noSolution('a motor would need more than full throttle at the loaded voltage');
    }
    const { pack } = flight.model;
    const cell = found.value.trim.point.packVoltage / pack.series;
    const cells = cellWords(pack, cell);
    if (cells !== undefined && cellState(pack, cell) === 'gives out') return noSolution(cells);
    const figures = bandFigures(
      found.value.figures,
      states,
      ({ state, made }) => {
        const raised = made.ok ? at(made.value, state.levers, flown, hubMoments) : made;
        return raised.ok ? raised.value.figures : {};
      },
      flight.model.airTemperature,
    );
    const told = withinServo(belowFull(withWakeDoubt(figures)), servo?.limit);
    return solved({
      trim: found.value.trim,
      heat: found.value.heat,
      figures: hubMoments ? withHubMoments(context, found.value.trim, told) : told,
      ...(cells === undefined ? {} : { cells }),
      ...(servo === undefined ? {} : { servoLimit: servo.limit }),
    });
  });
}

const leanText = (sine: number): string =>
  Math.abs(sine) < 1 ? formatQuantity(Math.asin(Math.abs(sine)), 'angle') : 'more than 90 deg';

/** A tail servo's lean ends, open, where the servo does. */
function withinServo({ craft, motors }: BandedFigures, limit: number | undefined): BandedFigures {
  if (limit === undefined) return { craft, motors };
  const ended = (figure: BandedFigure): BandedFigure => {
    const [low, high] = figure.band;
    if (low >= -limit && high <= limit) return figure;
    return { ...figure, band: [Math.max(low, -limit), Math.min(high, limit)], open: 'cannot be flown' };
  };
  return {
    craft,
    motors: motors.map(({ servoLean: lean, ...motor }) =>
      lean === undefined ? motor : { ...motor, servoLean: ended(lean) },
    ),
  };
}

/** Full throttle, found to this. */
const FULL = 1 + 1e-4;

/** Over full throttle there is no trim: a band that would reach there ends, open. */
function belowFull({ craft, motors }: BandedFigures): BandedFigures {
  const ended = (figure: BandedFigure): BandedFigure =>
    figure.band[1] <= 1
      ? figure
      : {
          ...figure,
          value: Math.min(1, figure.value),
          band: [Math.min(1, figure.band[0]), 1],
          open: 'cannot be flown',
        };
  const { hardestThrottle } = craft;
  return {
    craft: {
      ...craft,
      ...(hardestThrottle === undefined ? {} : { hardestThrottle: ended(hardestThrottle) }),
    },
    motors: motors.map(({ throttle, ...motor }) =>
      throttle === undefined ? motor : { ...motor, throttle: ended(throttle) },
    ),
  };
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

/** Drag of body and bars against the way of flight, level and climb together [N]; nothing at a standstill. */
function dragAlongWay({ speed, climb, tilt, bodyDrag, download }: ForwardTrim): number {
  const way = Math.hypot(speed, climb);
  if (way === 0) return 0;
  const along = speed * Math.cos(tilt) - climb * Math.sin(tilt);
  const through = speed * Math.sin(tilt) + climb * Math.cos(tilt);
  return (bodyDrag * along + download * through) / way;
}

function at(made: ForwardCraft, levers: Levers, { speed, climb, charge }: Flown, hubMoments: boolean) {
  const found = forwardPoint(made, speed, charge, climb);
  if (!found.ok) return found;
  const trim = found.value;
  const heat = forwardHeat(made.model, levers, trim, trim.point);
  const through = trim.speed * Math.sin(trim.tilt) + trim.climb * Math.cos(trim.tilt);
  const servo = servoLean(made, trim);
  const motors = made.model.stations.map((_, i) => {
    const rotor = trim.rotors[i];
    const washed = (trim.load.axialSpeed[i] as number) - through;
    return {
      wash: Math.abs(washed) < LEAST_WASH ? 0 : washed,
      ...(rotor === undefined ? {} : { inPlaneForce: rotor.inPlaneForce }),
      ...(servo?.station === i && Math.abs(servo.sine) <= 1 ? { servoLean: Math.asin(servo.sine) } : {}),
      ...(rotor === undefined || !hubMoments ? {} : { hubMoment: rotor.momentAftUp }),
    };
  });
  const windings = heat.map(({ settled }) => settled?.winding ?? Number.POSITIVE_INFINITY);
  const hottest = Math.max(...windings);
  const craft = {
    tilt: trim.tilt,
    bodyDrag: dragAlongWay(trim),
    rotorDrag: trim.rotorDrag,
    hardestThrottle: Math.max(...trim.point.stations.map(({ throttle }) => throttle)),
    hottestWinding: hottest,
  };
  const more = { craft, motors };
  return solved({ trim, heat, figures: figuresOf(trim.point, heat, more) });
}
