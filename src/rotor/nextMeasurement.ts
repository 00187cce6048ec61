import { type Outcome, solved } from '../numerics/outcome.ts';
import { bandOf } from './band.ts';
import type { SectionTables } from './sections.ts';
import { solveRotor } from './solveRotor.ts';
import { spreadsOf } from './spreads.ts';
import type { Blade, RotorCondition } from './types.ts';

/** Something a person can measure on a propeller. */
export type Measurement =
  | 'chord at 0.75 R'
  | 'chord and twist along the blade'
  | 'thrust and power at one rpm';

/** How much a measurement would narrow the forecast. */
export interface MeasurementGain {
  readonly measurement: Measurement;
  /** Width of the 10-90 band after it, over the width now; below 1 narrows. */
  readonly thrustBand: number;
  readonly powerBand: number;
}

/**
 * Which measurement narrows a propeller's forecast at a condition most, best first. Empty when there
 * is nothing left to measure: an anchored blade is as well known as this model can use.
 */
export function nextMeasurement(
  blade: Blade,
  sections: SectionTables,
  condition: RotorCondition,
): Outcome<readonly MeasurementGain[]> {
  if (blade.anchored) return solved([]);
  const state = solveRotor(blade, sections, condition);
  if (!state.ok) return state;
  const { advanceRatio } = state.value;
  const widths = (knowledge: Pick<Blade, 'knownBy' | 'anchored'>) => {
    const band = bandOf(blade, sections, condition, state.value, spreadsOf(knowledge, advanceRatio));
    if (!band.ok) return band;
    const { thrustCoefficient: thrust, powerCoefficient: power } = band.value;
    return solved({ thrust: thrust[1] - thrust[0], power: power[1] - power[0] });
  };
  const now = widths(blade);
  if (!now.ok) return now;
  const gains: MeasurementGain[] = [];
  for (const [measurement, knowledge] of open(blade)) {
    const after = widths(knowledge);
    if (!after.ok) return after;
    gains.push({
      measurement,
      thrustBand: after.value.thrust / now.value.thrust,
      powerBand: after.value.power / now.value.power,
    });
  }
  return solved(gains.sort((a, b) => a.thrustBand + a.powerBand - b.thrustBand - b.powerBand));
}

type Step = [Measurement, Pick<Blade, 'knownBy' | 'anchored'>];

function open(blade: Blade): Step[] {
  const { knownBy } = blade;
  const steps: Step[] = [['thrust and power at one rpm', { knownBy, anchored: true }]];
  if (knownBy === 'nameplate') {
    steps.push(['chord at 0.75 R', { knownBy: 'nameplate and chord', anchored: false }]);
  }
  if (knownBy !== 'blade table') {
    steps.push(['chord and twist along the blade', { knownBy: 'blade table', anchored: false }]);
  }
  return steps;
}
