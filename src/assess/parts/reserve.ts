import { forwardCraft } from '../../flight/forward/forwardPoint.ts';
import { gustCraft } from '../../flight/gustCraft.ts';
import { momentOutline } from '../../flight/reserve/momentOutline.ts';
import { neutralLevers } from '../../flight/types.ts';
import { shifted } from '../flownMeasures.ts';
import { type Doubted, leverStates } from '../levers.ts';
import { statesAs, type Uncertainty } from '../propagate.ts';
import type { Measure } from '../types.ts';
import { bandedMeasures } from './banded.ts';
import { dragOf } from './dragOf.ts';
import { INERTIA_SPREAD, scaled, TURNING_SPREAD, turningAs } from './reserve/inertiaDoubt.ts';
import { hotFigures, hotMotors, reserveAnswers } from './reserve/reserveFigures.ts';
import { noReserve, reserveFindings } from './reserve/reserveFindings.ts';
import { reserveForms } from './reserve/reserveForms.ts';
import { withUnsharedLoad } from './reserve/unsharedLoad.ts';
import { IN_PLANE } from './speedStates.ts';
import { type AssessPart, type Flight, NOTHING, type PartContext, type PartResult } from './types.ts';

/** One way things may really be, inertia and failures among them. */
interface ReserveState extends Doubted {
  /** On every moment of inertia. */
  readonly inertia: number;
  /** On what turns: bell and propeller. */
  readonly turning: number;
  /** On the failures of one motor. */
  readonly failures: number;
  /** On the in-plane drag of the rotors. */
  readonly inPlane: number;
  /** Whether its levers are of heat alone. */
  readonly heat: boolean;
}

/** Nobody has counted them: a factor of three either way is as good a guess as any. */
const FAILURE_SPREAD = 1;

/** Of the levers only these move a moment in hover by more than a hundredth. */
const MATTERS = new Set(['speedConstantScale', 'windingResistanceScale', 'packResistanceScale', 'massScale']);
/** These move what a motor bears for good, and nothing else here by more than a hundredth. */
const HEATS = new Set([
  'coolingScale',
  'noLoadCurrentScale',
  'runningResistanceScale',
  'windingContactScale',
  'speedLossPlaceScale',
]);

/** Control moments in hover and the last minute, how quickly they come, and what one lost or hot motor leaves. */
export const controlInReserve: AssessPart = {
  id: 'reserve',
  label: 'control in reserve',
  run: ({ craft, brief, flight }: PartContext): PartResult => {
    if (flight === undefined) return NOTHING;
    const { inertia } = craft.massProperties;
    const lastCharge = Math.max(brief.reserve, 0.05);
    const inPlane = inPlaneDrag(craft, flight);
    const found = reserveAnswers(flight.model, inertia, neutralLevers, lastCharge, inPlane);
    if (!found.ok) return { measures: [], findings: [noReserve(found.reason)] };
    const { figures, agility, out, hot } = found.value;
    const measures = bandedMeasures(
      reserveForms(),
      figures,
      states(
        flight,
        craft.unknowns.filter(({ lever }) => MATTERS.has(lever)),
        craft.unknowns.filter(({ lever }) => HEATS.has(lever)),
      ),
      (state) => {
        if (state.heat) {
          return { ...figures, ...hotFigures(hotMotors(flight.model, state.levers, agility, inPlane)) };
        }
        if (state.failures !== 1) return failing(figures, state.failures);
        if (state.inPlane !== 1) return turningUnder(figures, state.inPlane);
        const raised = reserveAnswers(
          turningAs(shifted(flight.model, state.balanceShift), state.turning),
          scaled(inertia, state.inertia),
          state.levers,
          lastCharge,
          inPlane,
        );
        return raised.ok ? raised.value.figures : {};
      },
    ).map(atMostAll);
    const outline = momentOutline(agility.onBus.model, { across: 'roll', up: 'pitch', thirdAxis: 'held' });
    return {
      measures: withUnsharedLoad(measures),
      findings: reserveFindings(figures, out, hot, flight.model),
      data: {
        motorOut: out.map(({ reach: _, ...one }) => one),
        motorHot: hot.map(({ reach: _, ...one }) => one),
        ...(outline.ok ? { rollAndPitch: outline.value } : {}),
      },
    };
  },
};

/** No more than all of the control can be left. */
const atMostAll = (measure: Measure): Measure =>
  measure.id.startsWith('left-after-')
    ? { ...measure, band: [Math.min(1, measure.band[0]), Math.min(1, measure.band[1])] }
    : measure;

function states(
  flight: Flight,
  unknowns: Parameters<typeof leverStates>[0],
  heats: Parameters<typeof leverStates>[0],
): readonly Uncertainty<ReserveState>[] {
  const known = {
    levers: neutralLevers,
    balanceShift: 0,
    inertia: 1,
    turning: 1,
    failures: 1,
    inPlane: 1,
    heat: false,
  };
  return [
    ...statesAs(leverStates(unknowns, flight.doubt), (state) => ({ ...known, ...state })),
    ...heats.map(({ label, trust, lever, deviation }) => ({
      input: label,
      trust,
      raised: { ...known, heat: true, levers: { ...neutralLevers, [lever]: 1 + deviation } },
    })),
    { input: 'moments of inertia', trust: 'inferred', raised: { ...known, inertia: 1 + INERTIA_SPREAD } },
    {
      input: 'inertia of bells and propellers',
      trust: 'inferred',
      raised: { ...known, turning: 1 + TURNING_SPREAD },
    },
    {
      input: IN_PLANE.label,
      trust: IN_PLANE.trust,
      raised: { ...known, inPlane: 1 + IN_PLANE.deviation },
    },
    { input: 'failures of one motor', trust: 'inferred', raised: { ...known, failures: 1 + FAILURE_SPREAD } },
  ];
}

/** Over thrust and edgewise speed in hover [s/m]; absent when the rotors have no answer edgewise. */
function inPlaneDrag(craft: PartContext['craft'], flight: Flight): number | undefined {
  const drag = dragOf(craft);
  const forward = forwardCraft(flight.model, neutralLevers, drag.bluff, {
    bars: drag.bars,
    dragCentre: drag.centre,
    wakes: 'left out',
  });
  const gust = forward.ok ? gustCraft(forward.value, flight.model.gravity) : forward;
  if (!gust.ok) return undefined;
  const { rotorDragSlope, mass, gravity } = gust.value;
  return rotorDragSlope > 0 ? rotorDragSlope / (mass * gravity) : undefined;
}

function turningUnder(figures: Readonly<Record<string, number | undefined>>, inPlane: number) {
  const turning = figures['turning-after-motor-out'];
  return { ...figures, 'turning-after-motor-out': turning && turning / inPlane };
}

function failing(figures: Readonly<Record<string, number | undefined>>, by: number) {
  const [all, lost] = [figures['motor-failures'], figures['failures-without-control']];
  return { ...figures, 'motor-failures': all && all * by, 'failures-without-control': lost && lost * by };
}
