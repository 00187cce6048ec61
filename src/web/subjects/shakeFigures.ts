import type { ShakeReport } from '../../assess/parts/airframeData.ts';
import type { Mark } from '../../report/chart.ts';
import { type Figure, measureOf, roof, type Subject } from './figure.ts';

const TURN = 2 * Math.PI;
const DEGREE = Math.PI / 180;
/** Modes that the flight controller feels less than this more than their neighbours are drawn faint. */
const FELT = 2;

/** Where turning meets ringing over the throttle, and what the gyro feels of it. */
export function shakeFigures(subject: Subject): readonly Figure[] {
  const shake = subject.assessment.data?.shake;
  if (shake === undefined) return [];
  return [...campbell(shake, subject), ...response(shake, subject)];
}

/** Campbell's figure (1924): modes level, multiples of the rotor's speed rising, crossings where they meet. */
function campbell(shake: ShakeReport, subject: Subject): readonly Figure[] {
  const { throttles, modes, orders, crossings } = shake;
  if (throttles.length < 2) return [];
  const hover = measureOf(subject, 'hover-throttle')?.value;
  const fastest = Math.max(...throttles.map(({ angularSpeed }) => angularSpeed)) / TURN;
  const top = roof([fastest * 1.15]);
  const shown = modes.filter(({ frequency }) => frequency < top);
  const near = (a: number, i: number): boolean =>
    shown.slice(0, i).some(({ frequency }) => Math.abs(frequency - a) < top * 0.035);
  const marks: Mark[] = [
    ...shown.map(
      ({ frequency, band, shape, felt }, i): Mark => ({
        kind: 'level',
        at: frequency,
        name: near(frequency, i) ? '' : shape,
        ...(felt >= FELT ? { band } : {}),
      }),
    ),
    ...orders.map(
      ({ order, what }): Mark => ({
        kind: 'curve',
        points: throttles.map(({ throttle, angularSpeed }) => ({
          x: throttle * 100,
          y: (order * angularSpeed) / TURN,
        })),
        ...(order <= 3 ? { name: `${order} a turn, ${what}` } : {}),
        dashed: order > 1,
      }),
    ),
    ...(hover === undefined ? [] : [{ kind: 'plumb' as const, at: hover * 100, name: 'hover' }]),
    ...crossings
      .filter(({ mode }) => (modes[mode]?.frequency ?? top) < top)
      .map(
        ({ mode, throttle }): Mark => ({
          kind: 'dot',
          at: { x: throttle * 100, y: modes[mode]?.frequency ?? 0 },
          faint: (modes[mode]?.felt ?? 1) < FELT,
        }),
      ),
  ];
  return [
    {
      key: 'campbell',
      title: 'Where turning meets ringing',
      says: 'Level lines: modes of the frame, with the band of those the flight controller feels. Rising lines: how often the propellers push. Full dots: throttle to fly through, not in.',
      wide: true,
      draw: {
        kind: 'chart',
        chart: {
          description: `Frequencies of ${shown.length} modes of the frame against the propellers' pushing over the throttle, with ${crossings.length} crossings.`,
          across: { label: 'throttle, %', low: 0, high: 100 },
          upright: { label: 'hertz', low: 0, high: top },
          marks,
        },
      },
    },
  ];
}

function response({ response, cameras }: ShakeReport, subject: Subject): readonly Figure[] {
  if (response.length < 2) return [];
  const hover = measureOf(subject, 'hover-throttle')?.value;
  const fresh = response.map(({ throttle, gyroTurnRate }) => ({
    x: throttle * 100,
    y: gyroTurnRate / DEGREE,
  }));
  const nicked = response.map(({ throttle, nickedTurnRate }) => ({
    x: throttle * 100,
    y: nickedTurnRate / DEGREE,
  }));
  const blur = cameras.map(
    ({ role, blur, nickedBlur }) =>
      `${role} camera ${blur.toFixed(2)} px, nicked ${nickedBlur.toFixed(2)} px`,
  );
  return [
    {
      key: 'gyro',
      title: 'What the gyro feels',
      says: `Through its mount, propellers balanced to the trade's grade. Blur in hover: ${blur.join('; ')}.`,
      wide: true,
      draw: {
        kind: 'chart',
        chart: {
          description:
            'Shake at the gyro over the throttle, with fresh propellers and with one blade nicked.',
          across: { label: 'throttle, %', low: 0, high: 100 },
          upright: {
            label: 'degrees a second at the gyro',
            low: 0,
            high: roof([...fresh, ...nicked].map(({ y }) => y)),
          },
          marks: [
            { kind: 'curve', points: nicked, name: 'one blade nicked', dashed: true },
            { kind: 'curve', points: fresh, name: 'fresh' },
            ...(hover === undefined ? [] : [{ kind: 'plumb' as const, at: hover * 100, name: 'hover' }]),
          ],
        },
      },
    },
  ];
}
