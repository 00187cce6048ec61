import type { DragAreas } from '../../airframe/types.ts';
import { noSolution, type Outcome, solved } from '../../numerics/outcome.ts';
import type { Vector3 } from '../../numerics/vector3.ts';
import { circuitOf } from '../circuit.ts';
import { describe } from '../describe.ts';
import { emptySupply, type Fed, feed } from '../feed.ts';
import { hoverTrim } from '../hoverTrim.ts';
import { inWords, sourceAt } from '../operatingPoint.ts';
import type { FlightModel, Levers, OperatingPoint } from '../types.ts';
import { type WakeTable, wakeTable } from '../wakes/wakeTable.ts';
import type { BarDrag } from './bodyDrag.ts';
import { glauertRotor, type ObliqueRotor } from './edgewise.ts';
import { type ForwardCraft, type ForwardTrim, forwardTrim } from './forwardTrim.ts';

/** What may be told beyond the defaults. */
export interface ForwardOptions {
  /** Where the body's drag acts [m]; the centre of gravity when absent. */
  readonly dragCentre?: Vector3;
  /** Arms and other slender bars, whose drag is not in `drag`; none when absent. See `bodyDragOf`. */
  readonly bars?: readonly BarDrag[];
  /** For stations without an oblique reader of their own; the closed-form Glauert rotor when absent. */
  readonly oblique?: ObliqueRotor;
  /** Of the model's stations, made before by `wakeTable`; made anew when absent. */
  readonly wakes?: WakeTable | 'left out';
}

/**
 * Trims the hover and lays everything by that questions about speed share.
 *
 * @param drag of the bluff parts, or of all where bars are not told apart
 */
export function forwardCraft(
  model: FlightModel,
  levers: Levers,
  drag: DragAreas,
  options: ForwardOptions = {},
): Outcome<ForwardCraft> {
  const circuit = circuitOf(model, levers);
  const trim = hoverTrim(model, circuit);
  if (!trim.ok) return trim;
  const wakes = options.wakes ?? wakeTable(model.stations);
  return solved({
    ...(wakes === 'left out' ? {} : { wakes }),
    model,
    circuit,
    trim: trim.value,
    drag,
    bars: options.bars ?? [],
    dragCentre: options.dragCentre ?? model.centreOfGravity,
    dragScale: levers.dragScale,
    oblique: options.oblique ?? glauertRotor,
  });
}

/** Level or climbing flight on a pack at a charge. */
export interface ForwardPoint extends ForwardTrim {
  readonly point: OperatingPoint;
  /** Largest duty of any motor, 0 to 1. */
  readonly largestDuty: number;
}

/**
 * @param speed through the air, level [m/s]
 * @param charge of the pack, 0 to 1
 * @param climb [m/s], >= 0
 */
export function forwardPoint(
  craft: ForwardCraft,
  speed: number,
  charge: number,
  climb = 0,
): Outcome<ForwardPoint> {
  const trimmed = forwardTrim(craft, speed, climb);
  if (!trimmed.ok) return trimmed;
  const count = craft.circuit.branches.length;
  const supply = emptySupply(count);
  const source = sourceAt(craft.circuit, charge);
  const fed: Fed = feed(craft.circuit, source, trimmed.value.load, supply);
  if (fed !== 'fed') return noSolution(inWords(fed));
  const point = describe(craft.circuit, source, trimmed.value.load, supply);
  return solved({
    ...trimmed.value,
    point,
    largestDuty: point.stations.reduce((most, station) => Math.max(most, station.duty), 0),
  });
}
