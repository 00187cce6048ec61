import type { Craft } from '../build/craft.ts';
import type { Brief } from '../build/schema/brief.ts';
import { cellWords } from '../drive/cellState.ts';
import { chemistries } from '../drive/chemistry.ts';
import { WINDING_BEARS } from '../drive/insulation.ts';
import type { FlightModel } from '../flight/types.ts';
import { isAtOnce } from '../units/atOnce.ts';
import { type FigureName, type Figures, tellHover } from './figures.ts';
import { hoverMeasureForms } from './hoverMeasures.ts';
import { leverStates, namedAtFull } from './levers.ts';
import { openMeasure } from './openEnd.ts';
import type { Flight } from './parts/types.ts';
import { guessedBand } from './propagate.ts';
import { propagateHeat } from './propagateHeat.ts';
import type { Measure } from './types.ts';

/** Under this thrust to weight either side of an input is looked at: on one of them it may not hover. */
const NEAR_THE_GROUND = 1.5;

/** The hover story's measures with their bands. */
export function flownMeasures(craft: Craft, brief: Brief, flight: Flight): readonly Measure[] {
  const { model, style, told, doubt } = flight;
  const figures = settling(told.figures);
  const { banded, unbanded, lost } = propagateHeat(
    figures as Readonly<Record<FigureName, number>>,
    // Drag has no part in a hover: a story saved.
    leverStates(
      craft.unknowns.filter(({ lever }) => lever !== 'dragScale'),
      doubt,
    ),
    ({ levers, balanceShift, leversAtFull }) => {
      const raised = tellHover(shifted(model, balanceShift), levers, style, craft, told.story);
      if (!raised.ok) return {};
      if (leversAtFull === undefined) return settling(raised.value.figures);
      const full = tellHover(model, leversAtFull, style, craft, told.story);
      const figures: Partial<Record<FigureName, number>> = { ...settling(raised.value.figures) };
      for (const name of AT_FULL) {
        const value = full.ok ? full.value.figures[name] : undefined;
        if (value === undefined) delete figures[name];
        else figures[name] = value;
      }
      return figures;
    },
    {
      air: model.airTemperature,
      bears: (name) => (HEATED.some((id) => id === name) ? WINDING_BEARS : undefined),
    },
    (figures['thrust-to-weight-at-reserve'] ?? 0) < NEAR_THE_GROUND,
  );
  const measures = hoverMeasureForms(brief.purpose, told.story.styles[0] ?? { style: style.name }).flatMap(
    (form): readonly Measure[] => {
      const value = figures[form.id];
      if (value === undefined) return [];
      const without = lost[form.id];
      const found = banded[form.id];
      const open =
        without === undefined || found?.words !== undefined
          ? {}
          : openMeasure(form, without, Object.keys(without.record).length > 0, 'cannot hover');
      if (found !== undefined) {
        const leansOn = AT_FULL.includes(form.id) ? namedAtFull(found.leansOn, doubt) : found.leansOn;
        return [{ ...form, ...open, ...found, leansOn, band: possible(form.id, found.band) }];
      }
      if (!unbanded.includes(form.id)) return [];
      const zero = form.quantity === 'temperature' ? model.airTemperature : 0;
      return [{ ...form, ...open, value, band: guessedBand(value, zero), leansOn: [] }];
    },
  );
  const { chemistry, cutOffCellVoltage } = model.pack;
  const { lowestVoltage } = chemistries[chemistry];
  return measures.map((measure) => {
    if (measure.id === LIMIT && isAtOnce(measure.value)) return { ...measure, words: 'at once' };
    if (measure.id !== CELLS || measure.value >= lowestVoltage) return measure;
    const words = cellWords({ chemistry, cutOffCellVoltage }, measure.value);
    const band = [lowestVoltage, lowestVoltage] as const;
    return { ...measure, value: lowestVoltage, band, ...(words === undefined ? {} : { words }) };
  });
}

/** Under what the model of a cell holds for there is no figure. */
const CELLS: FigureName = 'full-throttle-cell-voltage';

/** A motor that a hover already brings to its limit has no time at full throttle. */
const LIMIT: FigureName = 'full-throttle-time-to-limit';

/** Figures that a propeller at full speed decides: its doubt there is larger than in a hover. */
const AT_FULL: readonly FigureName[] = [
  'thrust-to-weight',
  'thrust-to-weight-at-reserve',
  'full-throttle-thrust',
  'full-throttle-pack-current',
  'full-throttle-motor-current',
  'full-throttle-cell-voltage',
  'full-throttle-time-to-limit',
];

const HEATED = ['hover-winding-temperature', 'hover-case-temperature'] as const;

/** A hover is flown with its motors' heat told: without a temperature they never settle. */
function settling(figures: Figures): Figures {
  const told: Partial<Record<FigureName, number>> = { ...figures };
  for (const id of HEATED) told[id] ??= Number.POSITIVE_INFINITY;
  return told;
}

/** The hardest-worked motor cannot work less than the mean, and over full throttle there is no hover. */
function possible(id: FigureName, [low, high]: Measure['band']): Measure['band'] {
  if (id === 'hardest-motor-load') return [Math.max(1, low), Math.max(1, high)];
  return id === 'hover-throttle' ? [Math.min(1, low), Math.min(1, high)] : [low, high];
}

/** The model with its balance moved forward [m]. */
export function shifted(model: FlightModel, forward: number): FlightModel {
  if (forward === 0) return model;
  const [x, y, z] = model.centreOfGravity;
  return { ...model, centreOfGravity: [x + forward, y, z] };
}
