import { WINDING_BEARS } from '../drive/insulation.ts';
import type { StationHeat } from '../flight/heat.ts';
import type { OperatingPoint } from '../flight/types.ts';
import { openEnd } from './openEnd.ts';
import { guessedBand, type Uncertainty } from './propagate.ts';
import { propagateHeat, type Told } from './propagateHeat.ts';
import type { Quantity } from './types.ts';

/** Numbers of one operating point that faces show, SI; what has no value is absent. */
export type PointFigures = Readonly<Record<string, number>>;

/** A number with its band, what lies beyond an end of that which is open, and words where the number says nothing. */
export type BandedFigure = Told;

/** The same, each with its band. */
export interface BandedFigures {
  /** Of the craft as a whole: pack, net thrust and what the asker adds. */
  readonly craft: Readonly<Record<string, BandedFigure>>;
  /** One a motor, in the model's order. */
  readonly motors: readonly Readonly<Record<string, BandedFigure>>[];
}

const nameOf = (motor: number, figure: string): string => `${motor}/${figure}`;

/** An operating point and its heat as flat figures, ready for `bandFigures`. */
export function figuresOf(
  point: OperatingPoint,
  heat: readonly StationHeat[],
  more: {
    readonly craft?: PointFigures;
    readonly motors?: readonly PointFigures[];
  } = {},
): PointFigures {
  const figures: Record<string, number> = {
    packVoltage: point.packVoltage,
    packCurrent: point.packCurrent,
    power: point.packVoltage * point.packCurrent,
    netThrust: point.netThrust,
    ...more.craft,
  };
  point.stations.forEach((station, i) => {
    const settled = heat[i]?.settled;
    const time = heat[i]?.timeToLimit;
    const own: Record<string, number> = {
      angularSpeed: station.angularSpeed,
      thrust: station.netThrust,
      motorCurrent: station.motorCurrent,
      motorVoltage: station.motorVoltage,
      throttle: station.throttle,
      shaftPower: station.shaftPower,
      copperLoss: station.copperLoss,
      ironLoss: station.ironLoss,
      controllerLoss: station.controllerLoss,
      leadLoss: station.leadLoss,
      ...(heat[i] === undefined ? {} : { winding: settled?.winding ?? NEVER, case: settled?.case ?? NEVER }),
      ...(time === undefined || !Number.isFinite(time) ? {} : { timeToLimit: time }),
      ...more.motors?.[i],
    };
    for (const [figure, value] of Object.entries(own)) figures[nameOf(i, figure)] = value;
  });
  return figures;
}

const quantityOf = (figure: string): Quantity | undefined =>
  TEMPERATURES.includes(figure) ? 'temperature' : figure === 'timeToLimit' ? 'time' : undefined;

/** Told from the air up: half of a winding's kelvins would be a band from -100 degC to 240. */
const TEMPERATURES = ['winding', 'case', 'hottestWinding'];

/** A temperature that never settles. */
const NEVER = Number.POSITIVE_INFINITY;

/**
 * Bands by `propagate`. A figure that a state of doubt leaves without a value tells its open end; one that every state
 * leaves without keeps a guess of half of it either way, and leans on nothing.
 *
 * @param air [K]
 */
export function bandFigures<State>(
  nominal: PointFigures,
  states: readonly Uncertainty<State>[],
  evaluate: (state: State) => PointFigures,
  air: number,
): BandedFigures {
  const { banded, unbanded, lost } = propagateHeat(nominal, states, evaluate, {
    air,
    bears: (name) => (TEMPERATURES.includes(name.split('/').at(-1) ?? '') ? WINDING_BEARS : undefined),
  });
  const craft: Record<string, BandedFigure> = {};
  const motors: Record<string, BandedFigure>[] = [];
  for (const [name, value] of Object.entries(nominal)) {
    const [first = '', figure] = name.split('/');
    const kind = figure ?? first;
    const zero = TEMPERATURES.includes(kind) ? air : 0;
    const known = banded[name];
    if (known === undefined && !unbanded.includes(name)) continue;
    const without = lost[name];
    const found: BandedFigure = {
      ...(known ?? { value, band: guessedBand(value, zero), leansOn: [] }),
      ...(without === undefined || known?.words !== undefined
        ? {}
        : { open: openEnd(quantityOf(kind), Object.keys(without.record).length > 0) }),
    };
    if (figure === undefined) {
      craft[name] = found;
      continue;
    }
    const motor = Number(first);
    while (motors.length <= motor) motors.push({});
    const row = motors[motor];
    if (row !== undefined) row[figure] = found;
  }
  return { craft, motors: motors.map(caseAsWinding) };
}

/** A case round a burnt winding has no temperature of its own. */
const caseAsWinding = (motor: Readonly<Record<string, BandedFigure>>): typeof motor =>
  motor.winding?.words === undefined ? motor : { ...motor, case: motor.winding };
