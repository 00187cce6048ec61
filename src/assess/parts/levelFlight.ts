import type { Craft } from '../../build/craft.ts';
import { borne } from '../../flight/heat.ts';
import { neutralLevers } from '../../flight/types.ts';
import { isAtOnce } from '../../units/atOnce.ts';
import { fastTipFindings } from '../tipMach.ts';
import type { Measure } from '../types.ts';
import { bandedMeasures, type Numbers } from './banded.ts';
import type { MotorAtSpeed, MotorState } from './data.ts';
import { dragOf } from './dragOf.ts';
import { FLAT_HIGH, FLAT_LOW, levelFigures, raisedFigures } from './level/levelFigures.ts';
import { levelFindings, noLevelFlight } from './level/levelFindings.ts';
import { levelForms } from './level/levelForms.ts';
import { type LevelNominal, levelNominal } from './level/levelNominal.ts';
import { dayStates, forwardOf, onlyElectrical } from './speedStates.ts';
import { type AssessPart, NOTHING, type PartContext, type PartResult } from './types.ts';

/** Top speed and what limits it, endurance and range with and against the wind, camera speed, motors at speed. */
export const levelFlight: AssessPart = {
  id: 'level-flight',
  label: 'level flight and top speed',
  run: ({ craft, brief, flight }: PartContext): PartResult => {
    if (flight === undefined) return NOTHING;
    const drag = dragOf(craft);
    const wind = brief.site.wind.value;
    const made = forwardOf(flight, drag, { levers: neutralLevers, balanceShift: 0 });
    const found = made.ok ? levelNominal(made.value, cameraTiltOf(craft)) : made;
    if (!found.ok) return { measures: [], findings: [noLevelFlight(found.reason, flight.model)] };
    const nominal = found.value;
    const figures = levelFigures(nominal, wind);
    const stretches = [figures];
    const measures = bandedMeasures(
      levelForms(nominal.top.limit, wind, nominal.enduranceSpeed),
      figures,
      dayStates(craft, brief, flight),
      (state) => {
        const made = forwardOf(flight, drag, state, nominal.craft.wakes);
        if (!made.ok) return {};
        const raised = raisedFigures(nominal, made.value, state.levers, onlyElectrical(state), state.wind);
        stretches.push(raised);
        return raised;
      },
      flight.model.airTemperature,
    ).map((measure): Measure => {
      if (measure.id === 'best-endurance-speed') return overStretches(measure, stretches);
      const soon = measure.id === 'top-speed-time-to-limit' && isAtOnce(measure.value);
      return soon ? { ...measure, words: 'at once' } : measure;
    });
    return {
      measures,
      findings: [
        ...levelFindings(nominal, brief),
        ...fastTipFindings(flight, 'At top speed', nominal.top.at.load.angularSpeed).map((finding) => ({
          ...finding,
          id: 'top-speed-tip-mach-unknown',
          sheet: 'flight' as const,
        })),
      ],
      data: {
        powerCurve: nominal.points.map(({ speed, tilt, point, largestDuty }) => ({
          speed,
          tilt,
          power: point.packVoltage * point.packCurrent,
          packCurrent: point.packCurrent,
          largestDuty,
        })),
        motorsAtSpeed: motorsAtSpeed(nominal),
      },
    };
  },
};

/**
 * The speed that stays up longest, its band the flat bottom of the power curve: that of the likely case and of every one with an
 * input a step off together. The place of a bottom so flat leaps with a hair of any input; the law of propagation has nothing
 * to say of it.
 */
function overStretches(measure: Measure, stretches: readonly Numbers[]): Measure {
  const ends = (id: string): readonly number[] =>
    stretches.flatMap((each) => {
      const end = each[id];
      return end === undefined ? [] : [end];
    });
  return {
    ...measure,
    band: [Math.max(0, Math.min(...ends(FLAT_LOW))), Math.max(...ends(FLAT_HIGH))],
    leansOn: [],
  };
}

/** The flying camera's tilt above level [rad]; the only camera's when none is said to be for flying. */
function cameraTiltOf(craft: Craft): number | undefined {
  const flying = craft.cameras.find(({ role }) => role === 'flying') ?? craft.cameras[0];
  return flying?.camera.pitch;
}

function motorsAtSpeed({ craft, cruise, cruiseHeat, top, topHeat }: LevelNominal): readonly MotorAtSpeed[] {
  const state = (at: typeof cruise, heat: typeof cruiseHeat, i: number): MotorState => {
    const settled = borne(heat[i]);
    const limit = heat[i]?.timeToLimit ?? Number.POSITIVE_INFINITY;
    return {
      thrust: at.point.stations[i]?.netThrust ?? 0,
      motorCurrent: at.point.stations[i]?.motorCurrent ?? 0,
      ...(settled === undefined
        ? {}
        : { windingTemperature: settled.winding, caseTemperature: settled.case }),
      ...(Number.isFinite(limit) ? { timeToLimit: limit } : {}),
    };
  };
  return craft.model.stations.map(({ name }, i) => ({
    motor: name,
    cruise: state(cruise, cruiseHeat, i),
    top: state(top.at, topHeat, i),
  }));
}
