import { momentOutline } from '../../flight/reserve/momentOutline.ts';
import { type FlightModel, neutralLevers } from '../../flight/types.ts';
import { type Matrix3, scale3 } from '../../numerics/vector3.ts';
import { shifted } from '../flownMeasures.ts';
import { type Doubted, leverStates } from '../levers.ts';
import type { Uncertainty } from '../propagate.ts';
import { bandedMeasures } from './banded.ts';
import { reserveAnswers, usefullyHeld } from './reserve/reserveFigures.ts';
import { noReserve, reserveFindings } from './reserve/reserveFindings.ts';
import { reserveForms } from './reserve/reserveForms.ts';
import { type AssessPart, type Flight, NOTHING, type PartContext, type PartResult } from './types.ts';

/** One way things may really be, inertia and failures among them. */
interface ReserveState extends Doubted {
  /** On every moment of inertia. */
  readonly inertia: number;
  /** On what turns: bell and propeller. */
  readonly turning: number;
  /** On the failures of one motor. */
  readonly failures: number;
}

/** Parts as even blocks (common practice, no source). */
const INERTIA_SPREAD = 0.06;
/** Bells and propellers by what they weigh and how wide they are (docs/method/build.md). */
const TURNING_SPREAD = 0.2;
/** Nobody has counted them: a factor of three either way is as good a guess as any. */
const FAILURE_SPREAD = 1;

/** Of the levers only these move a moment in hover by more than a hundredth. */
const MATTERS = new Set(['speedConstantScale', 'windingResistanceScale', 'packResistanceScale', 'massScale']);

/** Control moments in hover and the last minute, how quickly they come, and what one lost motor leaves. */
export const controlInReserve: AssessPart = {
  id: 'reserve',
  label: 'control in reserve',
  run: ({ craft, brief, flight }: PartContext): PartResult => {
    if (flight === undefined) return NOTHING;
    const { inertia } = craft.massProperties;
    const lastCharge = Math.max(brief.reserve, 0.05);
    const found = reserveAnswers(flight.model, inertia, neutralLevers, lastCharge);
    if (!found.ok) return { measures: [], findings: [noReserve(found.reason)] };
    const { figures, agility, out } = found.value;
    const measures = bandedMeasures(
      reserveForms(),
      figures,
      states(
        flight,
        craft.unknowns.filter(({ lever }) => MATTERS.has(lever)),
      ),
      (state) => {
        if (state.failures !== 1) return failing(figures, state.failures);
        const raised = reserveAnswers(
          turningAs(shifted(flight.model, state.balanceShift), state.turning),
          scaled(inertia, state.inertia),
          state.levers,
          lastCharge,
        );
        return raised.ok ? raised.value.figures : {};
      },
    );
    const outline = momentOutline(agility.onBus.model, { across: 'roll', up: 'pitch', thirdAxis: 'held' });
    return {
      measures,
      findings: reserveFindings(figures, out, flight.model),
      data: {
        // As findings and measures count it: a hair's breadth is nothing.
        motorOut: out.map((one) => ({
          motor: one.motor,
          held: usefullyHeld(one),
          share: one.share,
          liftToWeight: one.liftToWeight,
        })),
        ...(outline.ok ? { rollAndPitch: outline.value } : {}),
      },
    };
  },
};

function states(
  flight: Flight,
  unknowns: Parameters<typeof leverStates>[0],
): readonly Uncertainty<ReserveState>[] {
  const known = { levers: neutralLevers, balanceShift: 0, inertia: 1, turning: 1, failures: 1 };
  return [
    ...leverStates(unknowns, flight.doubt).map((each) => ({ ...each, raised: { ...known, ...each.raised } })),
    { input: 'moments of inertia', trust: 'inferred', raised: { ...known, inertia: 1 + INERTIA_SPREAD } },
    {
      input: 'inertia of bells and propellers',
      trust: 'inferred',
      raised: { ...known, turning: 1 + TURNING_SPREAD },
    },
    { input: 'failures of one motor', trust: 'inferred', raised: { ...known, failures: 1 + FAILURE_SPREAD } },
  ];
}

function failing(figures: Readonly<Record<string, number | undefined>>, by: number) {
  const [all, lost] = [figures['motor-failures'], figures['failures-without-control']];
  return { ...figures, 'motor-failures': all && all * by, 'failures-without-control': lost && lost * by };
}

const turningAs = (model: FlightModel, by: number): FlightModel =>
  by === 1
    ? model
    : {
        ...model,
        stations: model.stations.map((each) => ({ ...each, rotatingInertia: each.rotatingInertia * by })),
      };

const scaled = (m: Matrix3, by: number): Matrix3 => [scale3(m[0], by), scale3(m[1], by), scale3(m[2], by)];
