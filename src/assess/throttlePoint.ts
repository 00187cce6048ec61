import type { Craft } from '../build/craft.ts';
import { cellState, cellWords } from '../drive/cellState.ts';
import { heatAt, type StationHeat } from '../flight/heat.ts';
import { pointForThrottles } from '../flight/operatingPoint.ts';
import { type FlightModel, type Levers, neutralLevers, type OperatingPoint } from '../flight/types.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { type BandedFigures, bandFigures, figuresOf } from './bandedFigures.ts';
import { CONTROLLER_IDLE, IDLE_DUTY } from './controllerDoubts.ts';
import { leverStates, type RotorDoubt } from './levers.ts';

/** All motors at one throttle, standing still. */
export interface ThrottlePoint {
  readonly point: OperatingPoint;
  /** From the air's temperature. */
  readonly heat: readonly StationHeat[];
  readonly figures: BandedFigures;
  /** Where the cells are under their cut-off, in words. */
  readonly cells?: string;
}

/**
 * Every motor of a craft at one throttle on its sagging pack, with bands.
 *
 * @param doubtAt what is not known of the propellers at a speed [rad/s]
 * @param throttle 0 to 1
 * @param charge 0 to 1
 */
export function throttlePoint(
  craft: Craft,
  model: FlightModel,
  doubtAt: (angularSpeed: number) => RotorDoubt,
  throttle: number,
  charge: number,
): Outcome<ThrottlePoint> {
  const throttles = model.stations.map(() => throttle);
  const at = (levers: Levers) => {
    const point = pointForThrottles(model, levers, throttles, { charge });
    return point.ok ? solved({ point: point.value, heat: heatAt(model, levers, point.value) }) : point;
  };
  const nominal = at(neutralLevers);
  if (!nominal.ok) return nominal;
  const { point, heat } = nominal.value;
  const { pack } = model;
  const cell = point.packVoltage / pack.series;
  const cells = cellWords(pack, cell);
  if (cells !== undefined && cellState(pack, cell) === 'gives out') return noSolution(cells);
  const fastest = point.stations.reduce((most, { angularSpeed }) => Math.max(most, angularSpeed), 1);
  // At given throttles neither the balance, the mass, the body's drag nor the style has a say.
  const states = leverStates(
    [
      ...craft.unknowns.filter(({ lever }) => !['massScale', 'dragScale', 'styleScale'].includes(lever)),
      CONTROLLER_IDLE,
      IDLE_DUTY,
    ],
    doubtAt(fastest),
  ).filter(({ raised }) => raised.balanceShift === 0);
  const figures = bandFigures(
    figuresOf(point, heat),
    states,
    ({ levers }) => {
      const raised = at(levers);
      return raised.ok ? figuresOf(raised.value.point, raised.value.heat) : {};
    },
    model.airTemperature,
  );
  return solved({ point, heat, figures, ...(cells === undefined ? {} : { cells }) });
}
