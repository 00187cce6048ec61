import { frameArms, solveArms } from '../airframe/askFrame.ts';
import { tipGaps } from '../airframe/tipGaps.ts';
import type { Craft, CraftRotor } from '../build/craft.ts';
import type { Reading } from '../build/read/fileError.ts';
import type { BuildPlace } from '../build/resolve/findParts.ts';
import { resolveBuild } from '../build/resolve/resolveBuild.ts';
import type { Brief } from '../build/schema/brief.ts';
import type { Build } from '../build/schema/build.ts';
import type { Shelf } from '../build/shelf.ts';
import type { Outcome } from '../numerics/outcome.ts';
import { recall } from '../numerics/recall.ts';
import type { SectionTables } from '../rotor/sections.ts';
import type { Assessment } from './assessment.ts';
import { exactMeasures } from './exactMeasures.ts';
import type { FigureName } from './figures.ts';
import { fitLines } from './fit/fitLines.ts';
import { type FitFigures, toFinding } from './fit/types.ts';
import { flownMeasures } from './flownMeasures.ts';
import { hoverFindings } from './hoverFindings.ts';
import { chargingMeasures } from './money/charging.ts';
import { costLines } from './money/costLines.ts';
import { moneyFindings, moneyMeasures, moneyReport } from './money/moneyMeasures.ts';
import { obstaclesOf } from './obstacles.ts';
import type { PartData } from './parts/data.ts';
import { tipGives } from './parts/hits/hitAll.ts';
import { quickHits } from './parts/hits/hitsPart.ts';
import { runParts } from './parts/index.ts';
import { quickPicture } from './parts/picture/pictureMeasures.ts';
import { craftFrame } from './parts/shake/craftFrame.ts';
import { quickModes } from './parts/shake/shakeMeasures.ts';
import type { Flight, PartResult } from './parts/types.ts';
import { prepareFlight } from './prepareFlight.ts';
import type { PreparedRotors } from './prepareRotors.ts';
import type { QuickMemory } from './quickMemory.ts';
import { stationReports } from './stationReports.ts';
import { fastTipFindings } from './tipMach.ts';
import type { Finding, Measure } from './types.ts';
import { windowFindings } from './windowFindings.ts';

/**
 * How much is worked out. `hover`: the hover story, mass, fit and money, for searches. `quick` (when none is
 * told): with the cameras' view, the frame's first modes and the hits in closed form, for a slider. `full`:
 * every part, with findings and data of its own; measures shared with `quick` have the same values.
 */
export type Tier = 'hover' | 'quick' | 'full';

/** What an assessment leans on beside the build. */
export interface AssessContext {
  readonly brief: Brief;
  readonly shelf: Shelf;
  readonly sections: SectionTables;
  /** Rotors made ready before in the same air, so that they are not made again. */
  readonly rotors?: PreparedRotors;
  /** Propellers matched to their measured points before, from the same shelf. */
  readonly blades?: ReadonlyMap<string, CraftRotor>;
  /** The file the build was read from, so that errors name their line. */
  readonly where?: BuildPlace;
  readonly tier?: Tier;
  /** The craft made ready to fly before, in the same air. */
  readonly readyFlight?: Outcome<Flight>;
  /** For one who asks again and again for a build that is slid about: see `emptyMemory`. */
  readonly memory?: QuickMemory;
  /** What `airframeOf` an answer before was, to stand as it was: for whoever asks for it anew a moment later. */
  readonly airframe?: readonly Measure[];
  /** Results of the parts where they have been run one by one already, in their order; then none is run. */
  readonly parts?: readonly PartResult[];
}

/**
 * The one function: a build under a brief, with a shelf, to everything computed of it. Pure. A build
 * that names parts the shelf does not hold is an error in words; whatever is wrong with the aircraft
 * itself is a finding. Use `assessCraft` when the craft is resolved already.
 */
export function assess(build: Build, context: AssessContext): Reading<Assessment> {
  const craft = resolveBuild(build, context.shelf, context.where, factsOf(context));
  return craft.ok ? { ok: true, value: assessCraft(craft.value, context) } : craft;
}

/** What resolving takes over from rotors and blades made before. */
export function factsOf(context: Pick<AssessContext, 'rotors' | 'blades'>): ReadonlyMap<string, CraftRotor> {
  const made = [...(context.rotors ?? [])].map(([id, { facts }]) => [id, facts] as const);
  return new Map([...(context.blades ?? []), ...made]);
}

/** As `assess`, for a resolved craft. */
export function assessCraft(craft: Craft, context: AssessContext): Assessment {
  const { brief } = context;
  const gaps = tipGaps(
    craft.layout,
    Math.max(...craft.rotors.map((rotor) => rotor.blade.diameter)),
    obstaclesOf(craft),
  );
  const flight =
    context.readyFlight ??
    prepareFlight(craft, context, context.tier === 'full' && context.parts === undefined);
  const story = flight.ok ? flight.value.told.story : undefined;
  const full = context.tier === 'full' || context.parts !== undefined;
  const parts =
    context.parts ??
    (context.tier === 'full'
      ? [...runParts({ craft, ...context, ...(flight.ok ? { flight: flight.value } : {}) })].map(
          ({ result }) => result,
        )
      : []);
  const money = moneyReport(costLines(craft, brief, context.shelf), brief);
  const measures = [
    ...exactMeasures(craft, gaps, brief.purpose),
    ...(flight.ok ? flownMeasures(craft, brief, flight.value) : []),
    ...moneyMeasures(money),
    ...chargingMeasures(craft, brief, context.shelf),
    ...parts.flatMap((part) => part.measures),
    ...(full || context.tier === 'hover'
      ? []
      : (context.airframe ?? quickMeasures(craft, brief, context.memory))),
  ];
  const fit = fitLines({
    craft,
    brief,
    shelf: context.shelf,
    gaps,
    figures: fitFigures(measures),
  });
  const stations = stationReports(craft, story);
  const findings = [
    ...(story === undefined ? [] : hoverFindings(story, measures, stations, brief)),
    ...(flight.ok ? fastTipFindings(flight.value, 'At full throttle', fullSpeeds(flight.value)) : []),
    ...(flight.ok ? [] : [grounded(flight.reason)]),
    ...windowFindings(measures),
    ...fit.filter((line) => !line.passes).map(toFinding),
    ...moneyFindings(money, measures, brief),
    ...parts.flatMap((part) => part.findings),
  ];
  return {
    build: craft.build.name,
    brief: brief.name,
    flies: flight.ok,
    measures,
    findings: bySeverity(findings),
    fit,
    stations,
    money,
    inferred: craft.inferred,
    ...(full ? { data: gathered(parts) } : {}),
  };
}

const fullSpeeds = ({ told }: Flight): readonly number[] =>
  told.story.punch.stations.map(({ angularSpeed }) => angularSpeed);

/** What the quick tier adds to the hover tier. */
export const airframeOf = ({ measures }: Assessment): readonly Measure[] =>
  measures.filter(({ sheet }) => sheet === 'picture' || sheet === 'shake' || sheet === 'knocks');

/** Of the airframe what is quick enough for a slider. */
function quickMeasures(craft: Craft, brief: Brief, memory?: QuickMemory): readonly Measure[] {
  const question = craftFrame(craft);
  const arms = recall(memory?.arms, question.arms, () => solveArms(question.arms));
  // An arm that has no modes may still be struck.
  const beams = arms.ok ? arms.value.arms : frameArms(question.arms);
  const gives = recall(memory?.gives, question.arms, () => tipGives(beams));
  return [
    ...quickPicture(craft, memory?.covers),
    ...quickModes(craft, question, arms),
    ...quickHits(craft, brief, beams, gives),
  ];
}

/** Each key is filled by one part at most, so nothing is laid over. */
function gathered(parts: readonly PartResult[]): PartData {
  return Object.assign({}, ...parts.map(({ data }) => data));
}

/** What the fit rules hold against ratings; a rule without its figure stays silent. */
function fitFigures(measures: readonly Measure[]): FitFigures {
  const names: readonly (readonly [keyof FitFigures, FigureName | 'top-speed'])[] = [
    ['peakMotorCurrent', 'full-throttle-motor-current'],
    ['peakPackCurrent', 'full-throttle-pack-current'],
    ['fullThrottleCellVoltage', 'full-throttle-cell-voltage'],
    ['hoverCaseTemperature', 'hover-case-temperature'],
    ['topSpeed', 'top-speed'],
  ];
  return Object.fromEntries(
    names.flatMap(([name, id]) => {
      const value = measures.find((measure) => measure.id === id)?.value;
      return value === undefined ? [] : [[name, value]];
    }),
  );
}

function grounded(reason: string): Finding {
  return {
    id: 'no-hover',
    sheet: 'lift',
    severity: 'stop',
    says: `It does not fly: ${reason}.`,
    remedy:
      'Less mass, larger propellers, stronger motors or more cells; or bring the centre of gravity to the middle.',
    source: 'static equilibrium and the coupled operating point',
    parts: ['motors', 'propellers'],
  };
}

const RANK = { stop: 0, risk: 1, note: 2 } as const;

const bySeverity = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity]);
