import type { Craft } from '../../build/craft.ts';
import { neutralLevers } from '../../flight/types.ts';
import { bandedMeasures } from './banded.ts';
import type { MotorAtSpeed, MotorState } from './data.ts';
import { dragOf } from './dragOf.ts';
import { levelFigures, raisedFigures } from './level/levelFigures.ts';
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
    const found = made.ok ? levelNominal(made.value, wind, cameraTiltOf(craft)) : made;
    if (!found.ok) return { measures: [], findings: [noLevelFlight(found.reason, flight.model)] };
    const nominal = found.value;
    const measures = bandedMeasures(
      levelForms(nominal.top.limit, wind),
      levelFigures(nominal, wind),
      dayStates(craft, brief, flight),
      (state) => {
        const raised = forwardOf(flight, drag, state, nominal.craft.wakes);
        return raised.ok
          ? raisedFigures(nominal, raised.value, state.levers, onlyElectrical(state), state.wind)
          : {};
      },
      flight.model.airTemperature,
    );
    return {
      measures,
      findings: levelFindings(nominal, brief),
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

/** The flying camera's tilt above level [rad]; the only camera's when none is said to be for flying. */
function cameraTiltOf(craft: Craft): number | undefined {
  const flying = craft.cameras.find(({ role }) => role === 'flying') ?? craft.cameras[0];
  return flying?.camera.pitch;
}

function motorsAtSpeed({ craft, cruise, cruiseHeat, top, topHeat }: LevelNominal): readonly MotorAtSpeed[] {
  const state = (at: typeof cruise, heat: typeof cruiseHeat, i: number): MotorState => {
    const settled = heat[i]?.settled;
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
