import { shownIn, type UnitSystem } from '../units/shownUnits.ts';
import { type Chart, drawChart, type Mark } from './chart.ts';
import type { Drawing } from './shapes.ts';

/** What a simulated flight leaves: histories over the same times. */
export interface TraceHistories {
  /** [s] */
  readonly time: readonly number[];
  /** Over the ground [m/s]. */
  readonly speed: readonly number[];
  /** [rad] */
  readonly roll: readonly number[];
  readonly pitch: readonly number[];
  /** North, east, down [m]. */
  readonly place: readonly (readonly number[])[];
  /** One a motor, 0 to 1. */
  readonly throttle: readonly (readonly number[])[];
  /** [V] */
  readonly packVoltage: readonly number[];
}

/** One quantity over time in one panel. */
interface Line {
  readonly name?: string;
  readonly values: readonly number[];
  readonly dashed?: boolean;
}

const degrees = 180 / Math.PI;
/** Panels with less than this between bottom and top would magnify rounding. */
const LEAST_RANGE = { angle: 2, speed: 0.5, length: 0.1, throttle: 5, voltage: 0.2 };
const HEIGHT = 150;

/** A simulated flight as panels over one time, top to bottom: attitude, speed, drift, throttle of every motor, volts. */
export function traceDrawings(
  trace: TraceHistories,
  motors: readonly string[],
  says: string,
  width: number,
  system: UnitSystem = 'metric',
): readonly Drawing[] {
  const { time, roll, pitch, speed, place, throttle, packVoltage } = trace;
  const [north = [], east = [], down = []] = place;
  const away = north.map((x, i) => Math.hypot(x, east[i] ?? 0, down[i] ?? 0));
  const speedUnit = shownIn('speed', 0, { system });
  // Of a room rather than of a part: feet and metres, however near it stays.
  const awayUnit = shownIn('length', 1, { system });
  const panel = (label: string, least: number, lines: readonly Line[]): Drawing =>
    drawChart(panelChart(label, least, time, lines, says), width, HEIGHT);
  return [
    panel('attitude, deg', LEAST_RANGE.angle, [
      { name: 'pitch', values: pitch.map((each) => each * degrees) },
      { name: 'roll', values: roll.map((each) => each * degrees), dashed: true },
    ]),
    panel(`speed, ${speedUnit.text}`, LEAST_RANGE.speed, [{ values: speed.map(speedUnit.convert) }]),
    panel(`away from the start, ${awayUnit.text}`, LEAST_RANGE.length, [
      { values: away.map(awayUnit.convert) },
    ]),
    panel(
      'throttle, %',
      LEAST_RANGE.throttle,
      throttle.map((of, i) => ({
        values: of.map((each) => 100 * each),
        ...(apart(throttle, i) ? { name: motors[i] ?? '' } : {}),
        dashed: i % 2 === 1,
      })),
    ),
    panel('pack, V', LEAST_RANGE.voltage, [{ values: packVoltage }]),
  ];
}

/** Motors that do the same all along share a line: only the first of them is named. */
function apart(throttle: readonly (readonly number[])[], i: number): boolean {
  const own = throttle[i] ?? [];
  return throttle
    .slice(0, i)
    .every((other) => own.some((each, k) => Math.abs(each - (other[k] ?? 0)) > 0.003));
}

function panelChart(
  label: string,
  least: number,
  time: readonly number[],
  lines: readonly Line[],
  says: string,
): Chart {
  const all = lines.flatMap(({ values }) => values);
  const [bottom, top] = all.reduce(
    ([low, high], each) => [Math.min(low, each), Math.max(high, each)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
  const spare = Math.max(least - (top - bottom), 0.1 * (top - bottom)) / 2;
  const marks = lines.map(
    ({ values, name, dashed }): Mark => ({
      kind: 'curve',
      points: values.map((y, i) => ({ x: time[i] ?? 0, y })),
      ...(name === undefined ? {} : { name }),
      ...(dashed === true ? { dashed } : {}),
    }),
  );
  return {
    description: `${label} over time. ${says}`,
    across: { label: 'time, s', low: 0, high: time.at(-1) ?? 1 },
    upright: { label, low: bottom - spare, high: top + spare },
    marks,
  };
}
