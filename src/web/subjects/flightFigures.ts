import { barDrawing } from '../../report/barDrawing.ts';
import type { Mark } from '../../report/chart.ts';
import { sayInWords } from '../../report/sayFigure.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { chartOf } from '../sheets/charts.ts';
import { axisUnit, type Figure, measureOf, roof, type Subject } from './figure.ts';

/** Minutes by style, power over speed, the pack's voltage, a usual flight and the control in reserve. */
export function flightFigures(subject: Subject): readonly Figure[] {
  return [
    ...minutesByStyle(subject),
    ...powerCurve(subject),
    ...discharge(subject),
    ...usualFlight(subject),
    ...momentOutline(subject),
  ];
}

function minutesByStyle(subject: Subject): readonly Figure[] {
  const { curves, manner } = subject;
  if (!curves || curves.styles.length === 0) return [];
  const flown = measureOf(subject, 'flown-time');
  // Every style is as unsure as the brief's own.
  const told = (duration: number) => {
    const [low, high] = (flown?.band ?? []).map((end) => (duration * end) / (flown?.value ?? end));
    return formatQuantity(duration, 'time', { ...manner, band: [low ?? duration, high ?? duration] });
  };
  const bars = curves.styles.map(({ style, duration, asked }) => ({
    name: style,
    value: duration,
    says: told(duration),
    chosen: asked,
  }));
  const says = bars.map(({ name, says: time }) => `${name} ${time}`).join(', ');
  return [
    {
      key: 'styles',
      title: 'Minutes, by how it is flown',
      says: 'From a full pack to the landing reserve; the brief is flown as set bold.',
      draw: {
        kind: 'drawing',
        of: (width) => ({
          drawing: barDrawing(bars, width, 'minutes to the reserve', `Minutes by style: ${says}.`),
          pen: 1,
        }),
      },
    },
  ];
}

function powerCurve(subject: Subject): readonly Figure[] {
  const curve = subject.assessment.data?.powerCurve;
  if (curve === undefined || curve.length < 2) return [];
  const fastest = curve.at(-1)?.speed ?? 0;
  const unit = axisUnit(subject, 'speed', fastest);
  const points = curve.map(({ speed, power }) => ({ x: unit.convert(speed), y: power }));
  const powerAt = (speed: number): number => {
    const after = points.findIndex(({ x }) => x >= speed);
    const [a, b] = [points[after - 1], points[after]];
    if (a === undefined || b === undefined) return b?.y ?? points.at(-1)?.y ?? 0;
    return a.y + ((speed - a.x) / (b.x - a.x)) * (b.y - a.y);
  };
  const spots = SPEEDS.flatMap(([id, name, side]): readonly Mark[] => {
    const value = measureOf(subject, id)?.value;
    if (value === undefined) return [];
    const found = unit.convert(value);
    // The top speed is told for a fuller pack than the curve's: it may lie beyond its end.
    return found > (points.at(-1)?.x ?? 0)
      ? [{ kind: 'plumb', at: found, name: `${name}, fresh pack` }]
      : [{ kind: 'spot', at: { x: found, y: powerAt(found) }, name, side }];
  });
  return [
    {
      key: 'power',
      title: 'Power over speed',
      says: 'In still air at half charge. Where the curve is lowest it stays up longest; where a line from nought touches it, it gets furthest.',
      draw: {
        kind: 'chart',
        chart: {
          description: `Power from the pack against airspeed, up to ${sayInWords(fastest, 'speed', subject.manner)}.`,
          across: {
            label: `speed, ${unit.text}`,
            low: 0,
            high: roof([
              ...points.map(({ x }) => x),
              unit.convert(measureOf(subject, 'top-speed')?.value ?? 0) * 1.06,
            ]),
          },
          upright: { label: 'watts from the pack', low: 0, high: roof(points.map(({ y }) => y)) },
          marks: [{ kind: 'curve', points }, ...spots],
        },
      },
    },
  ];
}

const SPEEDS: readonly (readonly [string, string, 'over' | 'under'])[] = [
  ['best-endurance-speed', 'longest', 'under'],
  ['best-range-speed', 'furthest', 'under'],
  ['camera-level-speed', 'camera level', 'over'],
  ['top-speed', 'top speed', 'over'],
];

function discharge({ curves, assessment, brief }: Subject): readonly Figure[] {
  const chart = curves && chartOf('flight', curves, assessment.measures, brief);
  return chart ? [{ key: 'discharge', title: 'The pack under load', draw: { kind: 'chart', chart } }] : [];
}

function momentOutline({ assessment }: Subject): readonly Figure[] {
  const corners = assessment.data?.rollAndPitch;
  if (corners === undefined || corners.length < 3) return [];
  const points = corners.map(([x, y]) => ({ x, y }));
  const reach = roof(points.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]));
  return [
    {
      key: 'moments',
      title: 'Control in reserve',
      says: 'Roll and pitch that can be had at once out of a hover, yaw held. The larger and rounder, the more is left to steer with.',
      draw: {
        kind: 'chart',
        square: true,
        chart: {
          description: `Outline of attainable moments: roll up to ${Math.max(...points.map(({ x }) => x)).toFixed(2)}, pitch up to ${Math.max(...points.map(({ y }) => y)).toFixed(2)} newton metres.`,
          across: { label: 'roll, N m', low: -reach, high: reach },
          upright: { label: 'pitch, N m', low: -reach, high: reach },
          marks: [
            { kind: 'outline', points },
            { kind: 'dot', at: { x: 0, y: 0 } },
          ],
        },
      },
    },
  ];
}

function usualFlight({ assessment, brief, manner }: Subject): readonly Figure[] {
  const mission = assessment.data?.mission;
  if (mission === undefined || mission.legs.length === 0) return [];
  let time = 0;
  const points = [{ x: 0, y: 100 }];
  for (const leg of mission.legs) {
    time += leg.duration;
    points.push({ x: time / 60, y: leg.chargeLeft * 100 });
  }
  // Rounds of one kind are one thing to a reader.
  const longest = new Map<string, number>();
  for (const { what, duration } of mission.legs) longest.set(what, (longest.get(what) ?? 0) + duration);
  const spent = [...longest].toSorted(([, a], [, b]) => b - a).slice(0, 3);
  return [
    {
      key: 'mission',
      title: 'A usual flight',
      says: `Most of the time: ${spent.map(([what, duration]) => `${what}, ${formatQuantity(duration, 'time', { ...manner, band: [0.9 * duration, 1.1 * duration] })}`).join('; ')}.`,
      draw: {
        kind: 'chart',
        chart: {
          description: `Charge left over a usual flight of ${sayInWords(time, 'time', manner)}, which ${mission.end === 'landed' ? 'lands' : `ends in the air: ${mission.end}`}.`,
          across: { label: 'minutes', low: 0, high: roof([time / 60]) },
          upright: { label: 'charge left, %', low: 0, high: 100 },
          marks: [
            { kind: 'limit', at: brief.reserve * 100, name: 'landing reserve' },
            { kind: 'curve', points },
            {
              kind: 'spot',
              at: points.at(-1) ?? { x: 0, y: 0 },
              name: mission.end === 'landed' ? 'landed' : `ends in the air: ${mission.end}`,
              side: 'over',
            },
          ],
        },
      },
    },
  ];
}
