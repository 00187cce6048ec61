import type { Chart, Mark } from '../../report/chart.ts';
import type { Manner } from '../../report/sayFigure.ts';
import type { SearchReport } from '../worker/searchProtocol.ts';

/** As many of the list are numbered in it. */
const NUMBERED = 3;

/** The Pareto front as minutes over money, with the first of the list numbered. Nothing without a front. */
export function frontChart({ front, list }: SearchReport, { currency }: Manner): Chart | undefined {
  if (front.length < 2) return undefined;
  const points = front.map(({ cost, time }) => ({ x: cost, y: time / 60 }));
  const numbered = list.slice(0, NUMBERED).flatMap(({ measures }, index) => {
    const value = (wanted: string) => measures.find(({ id }) => id === wanted)?.value;
    const [x, time] = [value('first-flight-cost'), value('flown-time')];
    return x === undefined || time === undefined
      ? []
      : [{ at: { x, y: time / 60 }, name: String(index + 1) }];
  });
  const all = [...points, ...numbered.map(({ at }) => at)];
  const [xs, ys] = [all.map(({ x }) => x), all.map(({ y }) => y)];
  const spare = (values: readonly number[]) => 0.08 * (Math.max(...values) - Math.min(...values)) + 0.01;
  return {
    description: `Pareto front of ${front.length} over money, mass and minutes, shown as minutes over money; the first of the list are numbered`,
    across: {
      label: `to the first flight, ${currency}`,
      low: Math.min(...xs) - spare(xs),
      high: Math.max(...xs) + spare(xs),
    },
    upright: {
      label: 'flown, min',
      low: Math.max(Math.min(...ys) - spare(ys), 0),
      high: Math.max(...ys) + spare(ys),
    },
    marks: [
      ...points.map((at): Mark => ({ kind: 'dot', at, faint: true })),
      ...numbered.map(
        ({ at, name }, index): Mark => ({ kind: 'spot', at, name, side: index % 2 === 0 ? 'over' : 'under' }),
      ),
    ],
  };
}
