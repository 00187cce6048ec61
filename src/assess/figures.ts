import type { Craft } from '../build/craft.ts';
import { type HoverStory, hoverStory } from '../flight/hoverStory.ts';
import type { FlightModel, Levers, Style } from '../flight/types.ts';
import type { Outcome } from '../numerics/outcome.ts';

/** Every number of the hover story that is banded, in SI. */
export type FigureName =
  | 'all-up-mass'
  | 'thrust-to-weight'
  | 'thrust-to-weight-at-reserve'
  | 'full-throttle-thrust'
  | 'hover-throttle'
  | 'hover-current'
  | 'hover-power'
  | 'hover-speed'
  | 'hover-endurance'
  | 'flown-time'
  | 'full-throttle-pack-current'
  | 'full-throttle-motor-current'
  | 'full-throttle-cell-voltage'
  | 'hover-winding-temperature'
  | 'hover-case-temperature'
  | 'full-throttle-time-to-limit'
  | 'hardest-motor-load';

export type Figures = Readonly<Partial<Record<FigureName, number>>>;

/** A story with its figures read off. */
export interface Told {
  readonly story: HoverStory;
  readonly figures: Figures;
}

/**
 * The hover story under levers, read off as flat figures; words when it cannot hover.
 *
 * @param near a story of nearly the same, to start from
 */
export function tellHover(
  model: FlightModel,
  levers: Levers,
  style: Style,
  craft: Craft,
  near?: HoverStory,
): Outcome<Told> {
  const outcome = hoverStory(model, levers, [style], near);
  if (!outcome.ok) return outcome;
  const story = outcome.value;
  return { ok: true, value: { story, figures: figuresOf(story, model, levers, craft) } };
}

function figuresOf(story: HoverStory, model: FlightModel, levers: Levers, craft: Craft): Figures {
  const { hover, lastPunch, punch, trim } = story;
  const most = (values: readonly number[]) =>
    values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
  const figures: Partial<Record<FigureName, number>> = {
    'all-up-mass': model.mass * levers.massScale,
    'thrust-to-weight': story.thrustToWeight,
    'thrust-to-weight-at-reserve': story.lastThrustToWeight,
    'full-throttle-thrust': punch.netThrust,
    'hover-throttle': story.hoverThrottle,
    'hover-current': hover.packCurrent,
    'hover-power': hover.packCurrent * hover.packVoltage,
    'hover-speed': mean(hover.stations.map((station) => station.angularSpeed)),
    'hover-endurance': story.endurance.duration,
    'full-throttle-pack-current': punch.packCurrent,
    'full-throttle-motor-current': most(punch.stations.map((station) => station.motorCurrent)),
    'full-throttle-cell-voltage': lastPunch.packVoltage / craft.packModel.series,
    'hardest-motor-load': (most([...trim.thrusts]) * trim.thrusts.length) / sum(trim.thrusts),
  };
  const flown = story.styles[0]?.duration;
  if (flown !== undefined) figures['flown-time'] = flown;
  const hot = story.hoverHeat.map((heat) => heat.settled);
  if (hot.every((each) => each !== undefined)) {
    figures['hover-winding-temperature'] = most(hot.map((each) => each.winding));
    figures['hover-case-temperature'] = most(hot.map((each) => each.case));
  }
  const limit = Math.min(...story.punchHeat.map((heat) => heat.timeToLimit));
  if (Number.isFinite(limit)) figures['full-throttle-time-to-limit'] = limit;
  return figures;
}

const sum = (values: ArrayLike<number>) => Array.from(values).reduce((total, value) => total + value, 0);
