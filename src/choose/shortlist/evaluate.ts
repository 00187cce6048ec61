import type { Air } from '../../air/standardAtmosphere.ts';
import { tipGaps } from '../../airframe/tipGaps.ts';
import { type AssessContext, factsOf } from '../../assess/assess.ts';
import { exactMeasures } from '../../assess/exactMeasures.ts';
import { tellHover } from '../../assess/figures.ts';
import { fitLines } from '../../assess/fit/fitLines.ts';
import { costLines } from '../../assess/money/costLines.ts';
import { moneyMeasures, moneyReport } from '../../assess/money/moneyMeasures.ts';
import { obstaclesOf } from '../../assess/obstacles.ts';
import { styleOf } from '../../assess/prepareFlight.ts';
import type { PreparedRotors } from '../../assess/prepareRotors.ts';
import { hoverThrottleStop } from '../../assess/windows.ts';
import type { Craft, CraftRotor } from '../../build/craft.ts';
import { flightModelOf } from '../../build/resolve/flightModelOf.ts';
import { WINDING_BEARS } from '../../drive/insulation.ts';
import { neutralLevers } from '../../flight/types.ts';
import { resolveCandidate } from './candidate.ts';
import { standingOf, worthOf } from './softWants.ts';
import { type Choice, type HardLimit, keyOf, type Scored, type ShortlistQuestion } from './types.ts';

/** A candidate that counts, or the first thing that takes it out: a rule, a limit, or that it does not fly. */
export type Verdict =
  | { readonly ok: true; readonly scored: Scored }
  | { readonly ok: false; readonly because: string };

/** What evaluating asks for; rotors must hold every propeller of the space. */
export interface EvaluationContext extends AssessContext {
  readonly rotors: PreparedRotors;
  readonly air: Air;
  readonly ready: ReadonlyMap<string, CraftRotor>;
}

export function evaluationContext(
  context: AssessContext & { readonly rotors: PreparedRotors },
  air: Air,
): EvaluationContext {
  return { ...context, air, ready: factsOf(context) };
}

/**
 * Judges one combination as `assess` does, with the very same functions but without the bands: resolved,
 * its hover story told, its money added up, its fit rules held against it. `assess` gives the same values, stops
 * and risks of fit (tested); only the budget is held to the listed sum here, where `assess` grants
 * the spread between shops.
 *
 * @param worthIt told the standing before risks; false leaves the candidate as not worth its fit rules
 */
export function evaluate(
  question: ShortlistQuestion,
  choice: Choice,
  context: EvaluationContext,
  worthIt: (standing: number) => boolean = () => true,
): Verdict {
  const resolved = resolveCandidate(question.template, choice, context.shelf, context.ready);
  return resolved.ok ? evaluateCraft(question, resolved.value, context, worthIt) : out('no aircraft');
}

/** As `evaluate`, for a craft that is resolved already. */
export function evaluateCraft(
  question: ShortlistQuestion,
  craft: Craft,
  context: EvaluationContext,
  worthIt: (standing: number) => boolean = () => true,
): Verdict {
  const { brief, shelf } = context;
  const choice = choiceOf(craft);
  const values = quickValues(craft, context);
  if (typeof values === 'string') return out(values);
  if ((values['hover-throttle'] ?? 1) > hoverThrottleStop) return out('hover-throttle-stop');
  const winding = values['hover-winding-temperature'] ?? Number.POSITIVE_INFINITY;
  if (winding > WINDING_BEARS) return out('hover-heat-runaway');
  const broken = brokenLimit(question.limits, values) ?? budgetBroken(values, context);
  if (broken !== undefined) return out(broken);
  const before = standingOf(question.wants, (want) => worthOf(want, values), 0, 0);
  if (!worthIt(before)) return out('not worth it');
  const fit = fitLines({ craft, brief, shelf, gaps: gapsOf(craft), figures: fitFigures(values) });
  const stop = fit.find((line) => !line.passes && line.severity === 'stop');
  if (stop !== undefined) return out(stop.id);
  const risks = fit.filter((line) => !line.passes && line.severity === 'risk').length;
  const told = new Set([
    ...question.wants.map((want) => want.measure),
    ...question.limits.map((limit) => limit.measure),
    ...question.front,
  ]);
  return {
    ok: true,
    scored: {
      key: keyOf(choice),
      choice,
      standing: standingOf(question.wants, (want) => worthOf(want, values), risks, question.riskCost),
      risks,
      values: Object.fromEntries([...told].map((id) => [id, values[id] ?? Number.NaN])),
    },
  };
}

/** What a craft is made of, as a choice. */
function choiceOf({ parts, build }: Craft): Choice {
  const flying = build.cameras.find(({ role }) => role === 'flying')?.part;
  return {
    frame: parts.frame.id,
    motor: parts.motors[0]?.id ?? '',
    propeller: parts.propellers[0]?.id ?? '',
    pack: parts.pack.id,
    electronics: {
      ...(parts.controllers === undefined ? {} : { controllers: parts.controllers.id }),
      flightController: parts.flightController.id,
    },
    ...(flying === undefined ? {} : { camera: flying }),
  };
}

const out = (because: string): Verdict => ({ ok: false, because });

/** Values of the quick tier's measures by id; the reason in one word where it does not fly. */
function quickValues(craft: Craft, context: EvaluationContext): Readonly<Record<string, number>> | string {
  const { brief, shelf, air, rotors } = context;
  const reads = craft.rotors.flatMap((rotor) => rotors.get(rotor.partId)?.read ?? []);
  const model = flightModelOf(craft, reads, air, brief.reserve);
  const told = tellHover(model, neutralLevers, styleOf(brief), craft);
  if (!told.ok) return 'no-hover';
  const values: Record<string, number> = { 'full-throttle-time-to-limit': Number.POSITIVE_INFINITY };
  for (const { id, value } of exactMeasures(craft, gapsOf(craft), brief.purpose)) values[id] = value;
  for (const { id, value } of moneyMeasures(moneyReport(costLines(craft, brief, shelf), brief)))
    values[id] = value;
  return Object.assign(values, told.value.figures);
}

function gapsOf(craft: Craft) {
  const diameter = Math.max(...craft.rotors.map((rotor) => rotor.blade.diameter));
  return tipGaps(craft.layout, diameter, obstaclesOf(craft));
}

/** As `assessCraft` hands them to the rules. */
function fitFigures(values: Readonly<Record<string, number>>) {
  const pick = (name: string, id: string) => {
    const value = values[id];
    return value === undefined ? {} : { [name]: value };
  };
  return {
    ...pick('peakMotorCurrent', 'full-throttle-motor-current'),
    ...pick('peakPackCurrent', 'full-throttle-pack-current'),
    ...pick('fullThrottleCellVoltage', 'full-throttle-cell-voltage'),
    ...pick('hoverCaseTemperature', 'hover-case-temperature'),
  };
}

/** The first hard limit a candidate breaks, as `limit: measure`; a measure it has no value for is broken. */
function brokenLimit(
  limits: readonly HardLimit[],
  values: Readonly<Record<string, number>>,
): string | undefined {
  const broken = limits.find(({ measure, least, most }) => {
    const value = values[measure] ?? Number.NaN;
    return !(value >= (least ?? Number.NEGATIVE_INFINITY) && value <= (most ?? Number.POSITIVE_INFINITY));
  });
  return broken === undefined ? undefined : limitName(broken);
}

export const limitName = ({ measure }: HardLimit) => `limit: ${measure}`;

/** Money the brief allows; infinite where it tells none in its own currency. */
export function budgetOf({ brief }: Pick<AssessContext, 'brief'>): number {
  return brief.budget?.currency === brief.currency ? brief.budget.amount : Number.POSITIVE_INFINITY;
}

const budgetBroken = (values: Readonly<Record<string, number>>, context: EvaluationContext) =>
  (values['first-flight-cost'] ?? 0) > budgetOf(context) ? 'budget' : undefined;
