import { type Outcome, solved } from '../numerics/outcome.ts';
import { rotorBand } from './band.ts';
import type { SectionTables } from './sections.ts';
import { solveRotor } from './solveRotor.ts';
import type { Blade, RotorCondition, RotorState } from './types.ts';

/** Something a person can measure on a propeller. */
export type Measurement =
  | 'chord at 0.75 R'
  | 'chord and twist along the blade'
  | 'static thrust and power at the rpm asked';

/** How much a measurement would narrow the forecast. */
export interface MeasurementGain {
  readonly measurement: Measurement;
  /** Width of the 10-90 band after it, over the width now; below 1 narrows. */
  readonly thrustBand: number;
  readonly powerBand: number;
}

/** What narrows by less is not worth a stand's afternoon (ours, no source). */
const WORTH_IT = 0.97;

/**
 * Which measurement narrows a propeller's forecast at a condition most, best first: the bands it would have were the
 * measurement to find just what is forecast. Empty when nothing narrows it: a blade asked among its measured
 * points is as well known as this model can use.
 */
export function nextMeasurement(
  blade: Blade,
  sections: SectionTables,
  condition: RotorCondition,
): Outcome<readonly MeasurementGain[]> {
  const state = solveRotor(blade, sections, condition);
  const still = solveRotor(blade, sections, { ...condition, axialSpeed: 0 });
  if (!state.ok) return state;
  if (!still.ok) return still;
  const widths = (known: Blade) => {
    const band = rotorBand(known, sections, condition, state.value);
    if (!band.ok) return band;
    const { thrustCoefficient: thrust, powerCoefficient: power } = band.value;
    return solved({ thrust: thrust[1] - thrust[0], power: power[1] - power[0] });
  };
  const now = widths(blade);
  if (!now.ok) return now;
  const gains: MeasurementGain[] = [];
  for (const [measurement, known] of steps(blade, still.value)) {
    const after = widths(known);
    if (!after.ok) return after;
    gains.push({
      measurement,
      thrustBand: after.value.thrust / now.value.thrust,
      powerBand: after.value.power / now.value.power,
    });
  }
  return solved(
    gains
      .filter(({ thrustBand, powerBand }) => Math.min(thrustBand, powerBand) < WORTH_IT)
      .sort((a, b) => a.thrustBand + a.powerBand - b.thrustBand - b.powerBand),
  );
}

/** The blade as it would be known after each measurement. */
function steps(blade: Blade, still: RotorState): readonly (readonly [Measurement, Blade])[] {
  const point: Blade = {
    ...blade,
    anchored: true,
    anchorReynolds: spanWith(blade.anchorReynolds, still.reynolds75),
    anchorTipMach: spanWith(blade.anchorTipMach, still.tipMach),
  };
  const list: [Measurement, Blade][] = [['static thrust and power at the rpm asked', point]];
  if (blade.anchored) return list;
  if (blade.knownBy === 'nameplate') {
    list.push(['chord at 0.75 R', { ...blade, knownBy: 'nameplate and chord' }]);
  }
  if (blade.knownBy !== 'blade table') {
    list.push(['chord and twist along the blade', { ...blade, knownBy: 'blade table' }]);
  }
  return list;
}

const spanWith = (span: readonly [number, number] | undefined, value: number): readonly [number, number] => [
  Math.min(value, span?.[0] ?? value),
  Math.max(value, span?.[1] ?? value),
];
