import { barDrawing } from '../../report/barDrawing.ts';
import { formatQuantity } from '../../units/formatQuantity.ts';
import { type Figure, roof, type Subject } from './figure.ts';

/** Money over the flights, and where it goes. */
export function knocksFigures({ assessment, manner }: Subject): readonly Figure[] {
  const knocks = assessment.data?.knocks;
  if (knocks === undefined) return [];
  const { curve, parts, otherCut } = knocks;
  const line = (values: readonly number[]) => [{ x: 0, y: 0 }, ...values.map((y, i) => ({ x: i + 1, y }))];
  const end = curve.mean.at(-1) ?? 0;
  // Every sum is as unsure as the whole of it.
  const money = (value: number) => {
    const [low, high] = [curve.p10.at(-1) ?? end, curve.p90.at(-1) ?? end].map((at) =>
      end > 0 ? (value * at) / end : value,
    );
    return formatQuantity(value, 'money', { ...manner, band: [low ?? value, high ?? value] });
  };
  const bars = parts
    .filter(({ money }) => money > 0)
    .toSorted((a, b) => b.money - a.money)
    .slice(0, 7)
    .map((part) => ({
      name: `${part.id}, ${part.broken.toFixed(1)} broken`,
      value: part.money,
      says: money(part.money),
    }));
  return [
    {
      key: 'money',
      title: `Repairs over ${knocks.flights} flights`,
      says: `The line is the mean of ${knocks.histories} histories; four in five stay inside the band. The same knocks with ${otherCut.construction === 'one-piece plate' ? 'a one-piece plate' : 'separate arms'} would take ${money(otherCut.money)}.`,
      draw: {
        kind: 'chart',
        chart: {
          description: `Money for repairs over ${knocks.flights} flights, ${money(end)} in the mean.`,
          across: { label: 'flights', low: 0, high: knocks.flights },
          upright: { label: manner.currency, low: 0, high: roof(curve.p90) },
          marks: [
            { kind: 'band', lower: line(curve.p10), upper: line(curve.p90) },
            { kind: 'curve', points: line(curve.mean), name: 'mean' },
          ],
        },
      },
    },
    ...(bars.length === 0
      ? []
      : [
          {
            key: 'parts',
            title: 'Where it goes',
            says: 'Mean over the histories.',
            draw: {
              kind: 'drawing' as const,
              of: (width: number) => ({
                drawing: barDrawing(
                  bars,
                  width,
                  `${manner.currency} for repairs, in the mean`,
                  `Repairs by part: ${bars.map(({ name, says }) => `${name} ${says}`).join(', ')}.`,
                ),
                pen: 1,
              }),
            },
          },
        ]),
  ];
}
