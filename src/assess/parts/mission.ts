import type { Unknown } from '../../build/craft.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { MissionFlown } from '../../flight/mission/types.ts';
import { neutralLevers } from '../../flight/types.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { wholePercent } from '../../units/wholePercent.ts';
import { shifted } from '../flownMeasures.ts';
import type { Finding } from '../types.ts';
import { usualDistance } from '../windows.ts';
import { bandedMeasures, type MeasureForm } from './banded.ts';
import type { MissionReport } from './data.ts';
import { dragOf } from './dragOf.ts';
import { missionAnswers, TURN_BACK, turnBackDistance, usedDownwind } from './mission/missionFigures.ts';
import { missionSpeeds } from './mission/missionSpeeds.ts';
import { type NamedLeg, usualLegs } from './mission/usualLegs.ts';
import { dayStates, forwardOf } from './speedStates.ts';
import { type AssessPart, NOTHING, type PartContext, type PartResult } from './types.ts';

const SOURCE = 'legs: common practice, no source; docs/method/flight.md';
/** Levers that move a mission by more than a hundredth. */
const MATTERS = new Set<Unknown['lever']>([
  'packCapacityScale',
  'packResistanceScale',
  'noLoadCurrentScale',
  'avionicsPowerScale',
  'massScale',
  'dragScale',
  'inPlaneScale',
]);

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
    const turnBack = turnBackDistance(made.value, speeds.value);
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
      missionForms(),
      { ...figures, 'turn-back-distance': turnBack },
      [
        ...states.map((each) => ({ ...each, raised: { ...each.raised, style: 1, length: 1 } })),
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
    );
    return {
      measures,
      findings: [
        ...missionFindings(flown, brief, turnBack),
        ...downwindFinding(usedDownwind(made.value, speeds.value), brief),
      ],
      data: { mission: missionReport(legs, flown) },
    };
  },
};

/** A mission for tables: equal legs of a style's rounds stay apart. */
export function missionReport(legs: readonly NamedLeg[], flown: MissionFlown): MissionReport {
  return {
    legs: flown.legs.map((leg, i) => ({
      what: legs[i]?.what ?? leg.leg.kind,
      duration: leg.duration,
      distance: leg.distance,
      meanCurrent: leg.meanCurrent,
      lowestVoltage: Number.isFinite(leg.lowestVoltage) ? leg.lowestVoltage : 0,
      chargeLeft: leg.after.charge,
    })),
    end: flown.end,
  };
}

function noMission(reason: string): Finding {
  return {
    id: 'no-usual-flight',
    sheet: 'flight',
    severity: 'risk',
    says: `The flight that this purpose usually is cannot be flown: ${reason}.`,
    remedy: 'A calmer day, less mass, or thrust to spare.',
    source: SOURCE,
    parts: ['motors', 'propellers', 'pack'],
  };
}

function missionFindings(
  flown: MissionFlown,
  brief: Brief,
  turnBack: number | undefined,
): readonly Finding[] {
  const findings: Finding[] = [];
  if (flown.end !== 'landed' || flown.intoReserve) {
    findings.push({
      id: 'usual-flight-short',
      sheet: 'flight',
      severity: 'risk',
      says:
        flown.end === 'landed'
          ? `A usual flight for this purpose lands with ${wholePercent(flown.chargeLeft)} of the charge; ${wholePercent(brief.reserve)} is asked.`
          : `A usual flight for this purpose ends in the air after ${formatQuantity(flown.duration, 'time')}: ${flown.end === 'empty' ? 'the pack is empty' : 'the cells fall under their cut-off voltage'}.`,
      number: { value: flown.chargeLeft, limit: brief.reserve, quantity: 'share' },
      remedy: 'A larger pack, a shorter flight, or a gentler one.',
      source: SOURCE,
      parts: ['pack'],
    });
  }
  const farthest = brief.farthest ?? usualDistance(brief.purpose);
  if (turnBack !== undefined && turnBack < farthest) {
    findings.push({
      id: 'turn-back-short',
      sheet: 'flight',
      severity: brief.farthest === undefined ? 'note' : 'risk',
      says: `Against the wind ${wholePercent(TURN_BACK)} of the charge is used after ${formatQuantity(turnBack, 'length')}; it is meant to go ${formatQuantity(farthest, 'length')} out.`,
      number: { value: turnBack, limit: farthest, quantity: 'length' },
      remedy: 'Stay nearer, or take a larger pack or one of higher energy.',
      source: SOURCE,
      parts: ['pack'],
    });
  }
  return findings;
}

function downwindFinding(used: number | undefined, brief: Brief): readonly Finding[] {
  // Who stays near never gets so far out.
  if (brief.purpose !== 'cruising' || used === undefined || used <= 1 - brief.reserve) return [];
  return [
    {
      id: 'downwind-trap',
      sheet: 'wind',
      severity: 'note',
      says:
        used > 1
          ? `Flown out with the wind until ${wholePercent(TURN_BACK)} is used it does not come home against it.`
          : `Flown out with the wind until ${wholePercent(TURN_BACK)} is used it comes home with ${wholePercent(1 - used)} left.`,
      number: { value: used, limit: 1 - brief.reserve, quantity: 'share' },
      remedy: 'Fly out against the wind and home with it.',
      source: SOURCE,
      parts: ['pack'],
    },
  ];
}

function missionForms(): readonly MeasureForm[] {
  const base = { sheet: 'flight', source: SOURCE } as const;
  return [
    {
      ...base,
      id: 'mission-time',
      label: 'a usual flight takes',
      quantity: 'time',
      better: 'neither',
      how: 'Up, out against the wind, two minutes of what it is for, home with the wind, landing; each leg by its distance or its clock.',
    },
    {
      ...base,
      id: 'mission-charge-left',
      label: 'and lands with',
      quantity: 'share',
      better: 'more',
      how: 'Current of every leg integrated on a pack that keeps its charge, its polarisation and its warmth.',
    },
    {
      ...base,
      id: 'mission-energy',
      label: 'energy it takes',
      quantity: 'energy',
      better: 'less',
      how: 'Open-circuit voltage over the charge drawn, resistance losses included.',
    },
    {
      ...base,
      id: 'mission-cell-voltage',
      label: 'lowest cell voltage on the way',
      quantity: 'voltage',
      better: 'more',
      how: 'Loaded, at the hardest moment of the flight.',
    },
    {
      ...base,
      id: 'turn-back-distance',
      label: 'turn back after',
      quantity: 'length',
      better: 'more',
      how: 'Way made against the wind when 40 % of the charge is used.',
    },
  ];
}
