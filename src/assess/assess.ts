import { tipGaps } from '../airframe/tipGaps.ts';
import type { Craft, CraftRotor } from '../build/craft.ts';
import type { Reading } from '../build/read/fileError.ts';
import type { BuildPlace } from '../build/resolve/findParts.ts';
import { flightModelOf } from '../build/resolve/flightModelOf.ts';
import { resolveBuild } from '../build/resolve/resolveBuild.ts';
import type { Brief } from '../build/schema/brief.ts';
import type { Build } from '../build/schema/build.ts';
import type { Shelf } from '../build/shelf.ts';
import type { HoverStory } from '../flight/hoverStory.ts';
import { styles } from '../flight/styles.ts';
import { type FlightModel, neutralLevers, type Style } from '../flight/types.ts';
import type { SectionTables } from '../rotor/sections.ts';
import { airOf } from './dayOf.ts';
import { exactMeasures } from './exactMeasures.ts';
import { type FigureName, tellHover } from './figures.ts';
import { fitLines } from './fit/fitLines.ts';
import { toFinding } from './fit/types.ts';
import { hoverFindings } from './hoverFindings.ts';
import { hoverMeasureForms } from './hoverMeasures.ts';
import { leverStates } from './levers.ts';
import { costLines } from './money/costLines.ts';
import { moneyFindings, moneyMeasures, moneyReport } from './money/moneyMeasures.ts';
import { obstaclesOf } from './obstacles.ts';
import { type PreparedRotors, prepareRotors } from './prepareRotors.ts';
import { propagate } from './propagate.ts';
import { rotorDoubt } from './rotorDoubt.ts';
import type { Assessment, Finding, Measure, StationReport } from './types.ts';
import { windowFindings } from './windowFindings.ts';

/** What an assessment leans on beside the build. */
export interface AssessContext {
  readonly brief: Brief;
  readonly shelf: Shelf;
  readonly sections: SectionTables;
  /** Rotors made ready before in the same air, so that they are not made again. */
  readonly rotors?: PreparedRotors;
  /** The file the build was read from, so that errors name their line. */
  readonly where?: BuildPlace;
}

/**
 * The one function: a build under a brief, with a shelf, to everything computed of it. Pure. A build
 * that names parts the shelf does not hold is an error in words; whatever is wrong with the aircraft
 * itself is a finding. Use `assessCraft` when the craft is resolved already.
 */
export function assess(build: Build, context: AssessContext): Reading<Assessment> {
  const craft = resolveBuild(build, context.shelf, context.where, factsOf(context.rotors));
  return craft.ok ? { ok: true, value: assessCraft(craft.value, context) } : craft;
}

/** What resolving takes over from rotors made before. */
export function factsOf(rotors: PreparedRotors = new Map()): ReadonlyMap<string, CraftRotor> {
  return new Map([...rotors].map(([id, { facts }]) => [id, facts]));
}

/** As `assess`, for a resolved craft. */
export function assessCraft(craft: Craft, context: AssessContext): Assessment {
  const { brief } = context;
  const gaps = tipGaps(
    craft.layout,
    Math.max(...craft.rotors.map((rotor) => rotor.blade.diameter)),
    obstaclesOf(craft),
  );
  const flown = fly(craft, context);
  const massDeviation = craft.unknowns.find((unknown) => unknown.lever === 'massScale')?.deviation ?? 0.03;
  const money = moneyReport(costLines(craft, brief, context.shelf), brief);
  const measures = [
    ...exactMeasures(craft, gaps, massDeviation),
    ...(flown.ok ? flown.measures : []),
    ...moneyMeasures(money),
  ];
  const figure = (id: FigureName) => measures.find((measure) => measure.id === id)?.value;
  const peakMotorCurrent = figure('full-throttle-motor-current');
  const peakPackCurrent = figure('full-throttle-pack-current');
  const fullThrottleCellVoltage = figure('full-throttle-cell-voltage');
  const fit = fitLines({
    craft,
    brief,
    gaps,
    figures: {
      ...(peakMotorCurrent === undefined ? {} : { peakMotorCurrent }),
      ...(peakPackCurrent === undefined ? {} : { peakPackCurrent }),
      ...(fullThrottleCellVoltage === undefined ? {} : { fullThrottleCellVoltage }),
    },
  });
  const stations = stationReports(craft, flown.ok ? flown.story : undefined);
  const findings = [
    ...(flown.ok ? hoverFindings(flown.story, measures, stations, brief) : [flown.finding]),
    ...windowFindings(measures),
    ...fit.filter((line) => !line.passes).map(toFinding),
    ...moneyFindings(money, measures, brief),
  ];
  return {
    build: craft.build.name,
    brief: brief.name,
    flies: flown.ok,
    measures,
    findings: bySeverity(findings),
    fit,
    stations,
    money,
    inferred: craft.inferred,
  };
}

type Flown =
  | { readonly ok: true; readonly story: HoverStory; readonly measures: readonly Measure[] }
  | { readonly ok: false; readonly finding: Finding };

function fly(craft: Craft, context: AssessContext): Flown {
  const { brief, sections } = context;
  const air = airOf(brief);
  const prepared = prepareRotors(craft, air, sections, context.rotors);
  if (!prepared.ok) return grounded(prepared.reason, 'propellers');
  const rotors = craft.rotors.flatMap((rotor) => prepared.value.get(rotor.partId) ?? []);
  const model = flightModelOf(
    craft,
    rotors.map((rotor) => rotor.read),
    air,
    brief.reserve,
  );
  const style = styleOf(brief);
  const told = tellHover(model, neutralLevers, style, craft);
  if (!told.ok) return grounded(told.reason, 'motors');
  const { story, figures } = told.value;
  const first = rotors[0];
  const hoverSpeed = figures['hover-speed'];
  if (first === undefined || hoverSpeed === undefined)
    return grounded('no propeller is on board', 'propellers');

  const doubt = rotorDoubt(craft, first, sections, air, hoverSpeed);
  const { banded, unbanded } = propagate(
    figures as Readonly<Record<FigureName, number>>,
    leverStates(craft.unknowns, doubt),
    ({ levers, balanceShift }) => {
      const raised = tellHover(shifted(model, balanceShift), levers, style, craft);
      return raised.ok ? raised.value.figures : {};
    },
  );
  const measures = hoverMeasureForms(brief.purpose, style.name).flatMap((form): readonly Measure[] => {
    const found = banded[form.id];
    if (found !== undefined) return [{ ...form, ...found }];
    const value = figures[form.id];
    if (value === undefined || !unbanded.includes(form.id)) return [];
    // One raised input has no solution: the value stands with the widest honest band and says so.
    return [
      {
        ...form,
        value,
        band: [value * 0.5, value * 1.5],
        how: `${form.how} Near the edge of what it can do: the band is a guess.`,
        leansOn: [],
      },
    ];
  });
  return { ok: true, story, measures };
}

/** The model with its balance moved forward [m]. */
function shifted(model: FlightModel, forward: number): FlightModel {
  if (forward === 0) return model;
  const [x, y, z] = model.centreOfGravity;
  return { ...model, centreOfGravity: [x + forward, y, z] };
}

function grounded(reason: string, part: string): Flown {
  return {
    ok: false,
    finding: {
      id: 'no-hover',
      sheet: 'lift',
      severity: 'stop',
      says: `It does not fly: ${reason}.`,
      remedy:
        'Less mass, larger propellers, stronger motors or more cells; or bring the centre of gravity to the middle.',
      source: 'static equilibrium and the coupled operating point',
      parts: [part],
    },
  };
}

/** How the pilot of the brief flies. */
export function styleOf(brief: Brief): Style {
  switch (brief.flyingStyle) {
    case 'cruising':
      return styles.cruise;
    case 'easy':
      return styles.novice;
    case 'freestyle':
      return styles.freestyle;
    case 'race':
      return styles.race;
    case undefined:
      break;
  }
  switch (brief.purpose) {
    case 'race':
      return styles.race;
    case 'freestyle':
    case 'micro':
      return styles.freestyle;
    case 'guarded filming':
      return styles.filming;
    case 'cruising':
      return styles.cruise;
  }
}

function stationReports(craft: Craft, story: HoverStory | undefined): readonly StationReport[] {
  return craft.motors.map((motor, index): StationReport => {
    const base = { name: motor.place.name, place: motor.discPlace, spin: motor.place.spin };
    const hover = story?.hover.stations[index];
    const full = story?.punch.stations[index];
    if (story === undefined || hover === undefined || full === undefined) return base;
    const settled = story.hoverHeat[index]?.settled;
    const limit = story.punchHeat[index]?.timeToLimit;
    return {
      ...base,
      hover: {
        thrust: hover.netThrust,
        angularSpeed: hover.angularSpeed,
        motorCurrent: hover.motorCurrent,
        throttle: hover.throttle,
        ...(settled === undefined
          ? {}
          : { windingTemperature: settled.winding, caseTemperature: settled.case }),
      },
      fullThrottle: {
        thrust: full.netThrust,
        angularSpeed: full.angularSpeed,
        motorCurrent: full.motorCurrent,
        ...(limit === undefined || !Number.isFinite(limit) ? {} : { timeToLimit: limit }),
      },
    };
  });
}

const RANK = { stop: 0, risk: 1, note: 2 } as const;

const bySeverity = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity]);
