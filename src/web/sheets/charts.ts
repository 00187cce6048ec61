import type { Measure } from '../../assess/types.ts';
import type { Brief } from '../../build/schema/brief.ts';
import type { Chart, Mark } from '../../report/chart.ts';
import type { Point } from '../../report/shapes.ts';
import type { SheetName } from '../state/place.ts';
import type { Curves } from '../worker/protocol.ts';

/** The chart of a sheet, where it has one. */
export function chartOf(
  sheet: SheetName,
  curves: Curves,
  measures: readonly Measure[],
  brief: Brief,
): Chart | undefined {
  const find = (id: string) => measures.find((measure) => measure.id === id);
  switch (sheet) {
    case 'lift':
      return liftChart(curves, find('thrust-to-weight'), find('hover-throttle'));
    case 'heat':
      return currentChart(curves);
    case 'flight':
      return dischargeChart(curves, brief.reserve);
    default:
      return undefined;
  }
}

function liftChart(curves: Curves, most: Measure | undefined, hover: Measure | undefined): Chart {
  const points = curves.throttle.map(({ throttle, liftToWeight }) => ({
    x: throttle * 100,
    y: liftToWeight,
  }));
  const end = points.at(-1);
  const marks: Mark[] = [];
  if (most?.window) {
    const { low, high } = most.window;
    marks.push({ kind: 'window', low, high: Math.min(high, 20), name: 'window for the purpose' });
  }
  marks.push({ kind: 'curve', points }, { kind: 'limit', at: 1, name: 'weight' });
  if (hover) marks.push({ kind: 'spot', at: { x: hover.value * 100, y: 1 }, name: 'hover', side: 'over' });
  if (end && most) marks.push({ kind: 'spot', at: end, name: 'flat out', side: 'over' });
  return {
    description: `Lift over weight against throttle, from 0 to ${end?.y.toFixed(1) ?? 'nothing'} times the weight.`,
    across: { label: 'throttle, %', low: 0, high: 100 },
    upright: { label: 'lift over weight', low: 0, high: roof(points, most?.band[1]) },
    marks,
  };
}

function currentChart({ throttle, continuousCurrent, burstCurrent }: Curves): Chart {
  const points = throttle.map(({ throttle: x, motorCurrent }) => ({ x: x * 100, y: motorCurrent }));
  return {
    description: 'Current of the hardest-worked motor against throttle, beside what its controller bears.',
    across: { label: 'throttle, %', low: 0, high: 100 },
    upright: { label: 'amperes, hardest-worked motor', low: 0, high: roof(points, burstCurrent) },
    marks: [
      { kind: 'limit', at: continuousCurrent, name: 'controller, lasting' },
      { kind: 'limit', at: burstCurrent, name: 'controller, ten seconds' },
      { kind: 'curve', points },
    ],
  };
}

/** Under full throttle a cell should not sag below this [V]. Common practice, no source. */
const SAG_FLOOR = 3.3;

function dischargeChart({ discharge }: Curves, reserve: number): Chart {
  const of = (key: 'hover' | 'fullThrottle'): Point[] =>
    discharge.flatMap((point) => {
      const y = point[key];
      return y === undefined ? [] : [{ x: point.used * 100, y }];
    });
  const [hover, full] = [of('hover'), of('fullThrottle')];
  const all = [...hover, ...full].map(({ y }) => y);
  return {
    description: 'Volts of a cell under load against the charge used, hovering and at full throttle.',
    across: { label: 'charge used, %', low: 0, high: 100 },
    upright: {
      label: 'volts a cell, under load',
      low: Math.min(SAG_FLOOR - 0.1, Math.floor(Math.min(...all) * 5) / 5),
      high: Math.ceil(Math.max(...all) * 5) / 5,
    },
    marks: [
      { kind: 'limit', at: SAG_FLOOR, name: 'floor at full throttle' },
      { kind: 'curve', points: hover, name: 'hover' },
      { kind: 'curve', points: full, name: 'flat out', dashed: true },
      ...(hover.at(-1)
        ? [
            {
              kind: 'spot' as const,
              at: hover.at(-1) ?? { x: 0, y: 0 },
              name: `land, ${Math.round(reserve * 100)} % left`,
              side: 'under' as const,
            },
          ]
        : []),
    ],
  };
}

/** A round number a little over everything shown. */
function roof(points: readonly Point[], also = 0): number {
  const top = Math.max(also, ...points.map(({ y }) => y)) * 1.04;
  const power = 10 ** Math.floor(Math.log10(top));
  const step = top / power < 2 ? power / 5 : top / power < 5 ? power / 2 : power;
  return Math.ceil(top / step) * step;
}
