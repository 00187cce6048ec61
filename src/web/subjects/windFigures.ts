import { leanDrawing } from '../../report/leanDrawing.ts';
import { sayFigure, sayInWords } from '../../report/sayFigure.ts';
import { sideExtent } from '../../report/sideDrawing.ts';
import { axisUnit, type Figure, measureOf, roof, type Subject } from './figure.ts';

/** Largest duty that leaves something to steer with, as the measure of the wind held takes it. */
const STEERING = 80;

/** How it leans into the brief's wind, and what the hardest motor works in every wind up to its limit. */
export function windFigures(subject: Subject): readonly Figure[] {
  return [...lean(subject), ...throttle(subject)];
}

function lean(subject: Subject): readonly Figure[] {
  const tilt = measureOf(subject, 'wind-tilt');
  const { brief, picture, manner } = subject;
  if (tilt === undefined) return [];
  const extent = sideExtent(picture, 'right');
  const { text, unit } = sayFigure(tilt, manner);
  return [
    {
      key: 'lean',
      title: 'Holding its place',
      says: 'Nose into the wind, leaning so far that the lift takes the drag as well as the weight.',
      wide: true,
      draw: {
        kind: 'drawing',
        of: (width) => {
          const pen = extent.width / Math.max(Math.min(width, 760) - 170, 120);
          const drawing = leanDrawing(picture, {
            pen,
            tilt: tilt.value,
            wind: `wind ${sayInWords(brief.site.wind.value, 'speed', manner)}`,
            says: `leans ${text} ${unit}`,
          });
          return { drawing, pen };
        },
      },
    },
  ];
}

function throttle(subject: Subject): readonly Figure[] {
  const curve = subject.assessment.data?.powerCurve;
  const held = measureOf(subject, 'wind-held');
  if (curve === undefined || curve.length < 2) return [];
  const wind = subject.brief.site.wind.value;
  const fastest = curve.at(-1)?.speed ?? 0;
  const unit = axisUnit(subject, 'speed', fastest);
  const points = curve.map(({ speed, largestDuty }) => ({ x: unit.convert(speed), y: largestDuty * 100 }));
  return [
    {
      key: 'throttle',
      title: 'What the wind asks of the hardest motor',
      says: 'At half charge. Above the line less than a fifth of the throttle is left to steer with; on the reserve it comes sooner.',
      wide: true,
      draw: {
        kind: 'chart',
        chart: {
          description: `Duty of the hardest-worked motor against the wind it holds station in, up to ${sayInWords(fastest, 'speed', subject.manner)}.`,
          across: { label: `wind, ${unit.text}`, low: 0, high: roof(points.map(({ x }) => x)) },
          upright: { label: 'duty of the hardest motor, %', low: 0, high: 100 },
          marks: [
            { kind: 'limit', at: STEERING, name: 'a fifth left to steer with' },
            { kind: 'plumb', at: unit.convert(wind), name: "the brief's wind" },
            ...(held
              ? [{ kind: 'plumb' as const, at: unit.convert(held.value), name: 'held at the reserve' }]
              : []),
            { kind: 'curve', points },
          ],
        },
      },
    },
  ];
}
