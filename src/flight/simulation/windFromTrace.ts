import type { GustTrace } from '../../air/drydenTrace.ts';
import type { WindRead } from './types.ts';

/**
 * Wind of the world from a steady wind and a trace of gusts along it: blows from `from` towards the other side,
 * gusts added along, across and up and down, straight lines between samples, the last one held.
 *
 * @param speed steady wind [m/s], >= 0
 * @param from compass direction it comes from [rad], 0 north, pi/2 east
 * @param trace from `drydenTrace`
 * @param timeStep of the trace [s]
 */
export function windFromTrace(speed: number, from: number, trace: GustTrace, timeStep: number): WindRead {
  const [north, east] = [-Math.cos(from), -Math.sin(from)];
  const last = trace.longitudinal.length - 1;
  return (time, out) => {
    const place = Math.min(last, Math.max(0, time / timeStep));
    const i = Math.min(Math.floor(place), Math.max(0, last - 1));
    const share = place - i;
    const read = (gust: Float64Array): number =>
      share === 0 ? (gust[i] ?? 0) : (1 - share) * (gust[i] ?? 0) + share * (gust[i + 1] ?? 0);
    const along = speed + read(trace.longitudinal);
    const across = read(trace.lateral);
    out[0] = along * north - across * east;
    out[1] = along * east + across * north;
    out[2] = -read(trace.vertical);
  };
}
