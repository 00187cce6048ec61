import type { Unknown } from '../../build/craft.ts';
import { WINDING_BEARS } from '../../drive/insulation.ts';
import type { MissionFlown } from '../../flight/mission/types.ts';
import { neutralLevers } from '../../flight/types.ts';
import { type Outcome, solved } from '../../numerics/outcome.ts';
import { shifted } from '../flownMeasures.ts';
import { statesAs } from '../propagate.ts';
import { bandedMeasures } from './banded.ts';
import type { MissionReport } from './data.ts';
import { dragOf } from './dragOf.ts';
import {
  type MissionAnswers,
  missionAnswers,
  turnBackDistance,
  usedDownwind,
} from './mission/missionFigures.ts';
import { downwindFinding, flownFindings, missionFindings, noMission } from './mission/missionFindings.ts';
import { missionForms } from './mission/missionForms.ts';
import { missionSpeeds } from './mission/missionSpeeds.ts';
import { type NamedLeg, usualLegs } from './mission/usualLegs.ts';
import { dayStates, forwardOf, speedStates } from './speedStates.ts';
import { type AssessPart, type Flight, NOTHING, type PartContext, type PartResult } from './types.ts';

/** Levers that move a mission by more than a hundredth. */
const MATTERS = new Set<Unknown['lever']>([
  'packCapacityScale',
  'packResistanceScale',
  'noLoadCurrentScale',
  'avionicsPowerScale',
  'massScale',
  'dragScale',
  'inPlaneScale',
  'guardTurningScale',
  'coolingScale',
  'heatCapacityScale',
  'windingResistanceScale',
  'windingContactScale',
]);

const USUAL = 'Up, out against the wind, two minutes of what it is for, home with the wind, landing.';

/** No two flights of a plan are as long: one standard deviation (common practice, no source). */
const LENGTH_SPREAD = 0.15;

/** The flight that the purpose usually is, leg by leg: time, energy, what is left, and where to turn back. */
export const usualMission: AssessPart = {
  id: 'mission',
  label: 'a usual flight',
  run: ({ craft, brief, flight }: PartContext): PartResult => {
    if (flight === undefined) return NOTHING;
    const drag = dragOf(craft);
    const wind = brief.site.wind.value;
    const made = forwardOf(flight, drag, { levers: neutralLevers, balanceShift: 0 });
    if (!made.ok) return NOTHING; // level flight says why
    const speeds = missionSpeeds(made.value, wind);
    if (!speeds.ok) return { measures: [], findings: [noMission(speeds.reason)] };
    const legs = usualLegs(brief, flight.style, speeds.value, 1);
    const found = missionAnswers(flight.model, neutralLevers, drag, legs, made.value.wakes);
    if (!found.ok) return { measures: [], findings: [noMission(found.reason)] };
    const { flown, figures } = found.value;
    // A point on the way that counts on charge which a flight that ends in the air does not reach.
    const turnBack = flown.end === 'landed' ? turnBackDistance(made.value, speeds.value) : undefined;
    const style = craft.unknowns.find(({ lever }) => lever === 'styleScale');
    const states = dayStates(craft, brief, flight).filter(
      ({ raised }) =>
        raised.wind !== wind ||
        raised.levers.thrustScale !== 1 ||
        raised.levers.torqueScale !== 1 ||
        [...MATTERS].some((lever) => raised.levers[lever] !== 1),
    );
    const asFlown = { levers: neutralLevers, balanceShift: 0, wind };
    const measures = bandedMeasures(
      missionForms('a usual flight', USUAL, flown),
      { ...figures, 'turn-back-distance': turnBack },
      [
        ...statesAs(states, (state) => ({ ...state, style: 1, length: 1 })),
        {
          input: 'how far and how long it is flown',
          trust: 'inferred' as const,
          raised: { ...asFlown, style: 1, length: 1 + LENGTH_SPREAD },
        },
        ...(style === undefined
          ? []
          : [
              {
                input: style.label,
                trust: style.trust,
                raised: { ...asFlown, style: 1 + style.deviation, length: 1 },
              },
            ]),
      ],
      (state) => {
        const raised = forwardOf(flight, drag, state, made.value.wakes);
        // In more wind than it flies fast the way out has no end.
        if (!raised.ok || state.wind > speeds.value.out - 0.5) return {};
        const flying = { ...speeds.value, wind: state.wind };
        const again = missionAnswers(
          shifted(flight.model, state.balanceShift),
          state.levers,
          drag,
          usualLegs(brief, flight.style, flying, state.style, state.length),
          made.value.wakes,
        );
        return {
          ...(again.ok ? again.value.figures : {}),
          'turn-back-distance': turnBackDistance(raised.value, flying),
        };
      },
      flight.model.airTemperature,
    );
    return {
      measures,
      findings: [
        ...missionFindings(flown, brief, turnBack),
        ...(flown.end === 'landed' ? downwindFinding(usedDownwind(made.value, speeds.value), brief) : []),
      ],
      data: { mission: missionReport(legs, flown) },
    };
  },
};

/** Legs of one's own: figures with their bands by the same states as any flight's, none of them on the wind, which the legs tell. */
export function legsFlown(
  { craft, brief, flight }: PartContext & { readonly flight: Flight },
  legs: readonly NamedLeg[],
): Outcome<PartResult & Pick<MissionAnswers, 'flown' | 'energy'>> {
  const drag = dragOf(craft);
  const found = missionAnswers(flight.model, neutralLevers, drag, legs);
  if (!found.ok) return found;
  const { flown, figures, energy } = found.value;
  const measures = bandedMeasures(
    missionForms('the flight', 'Legs as told, one after another.', flown),
    figures,
    speedStates(craft, flight),
    ({ levers, balanceShift }) => {
      const again = missionAnswers(shifted(flight.model, balanceShift), levers, drag, legs);
      return again.ok ? again.value.figures : {};
    },
    flight.model.airTemperature,
  );
  return solved({ measures, findings: flownFindings('The flight', flown, brief.reserve), flown, energy });
}

/** A mission for tables: equal legs of a style's rounds stay apart. */
export function missionReport(legs: readonly NamedLeg[], flown: MissionFlown): MissionReport {
  return {
    legs: flown.legs.map((leg, i) => ({
      what: legs[i]?.what ?? leg.leg.kind,
      duration: leg.duration,
      distance: leg.distance,
      meanCurrent: leg.meanCurrent,
      lowestVoltage: leg.lowestVoltage,
      ...(leg.eased === undefined ? {} : { eased: leg.eased }),
      ...(leg.hottestWinding > WINDING_BEARS ? {} : { hottestWinding: leg.hottestWinding }),
      chargeLeft: leg.after.charge,
    })),
    end: flown.end,
  };
}
