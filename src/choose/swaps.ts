import type { Build } from '../build/schema/build.ts';

/** The seats that may differ between two builds, in the order they are swapped. */
const SEATS = [
  'frame',
  'motors',
  'propellers',
  'controllers',
  'flightController',
  'pack',
  'cameras',
  'videoLink',
  'receiver',
  'antennas',
  'extras',
  'wiring',
  'screws',
  'measured',
] as const;

export type Seat = (typeof SEATS)[number];

/** A build on the way from one to another: with the seat's parts of the other, and all before it. */
export interface Swap {
  readonly seat: Seat;
  readonly build: Build;
}

/** The way from one build to another, seat by seat in the order of `SEATS`; only seats that differ. */
export function swapsBetween(from: Build, to: Build): readonly Swap[] {
  const swaps: Swap[] = [];
  let build = from;
  for (const seat of SEATS) {
    if (JSON.stringify(build[seat]) === JSON.stringify(to[seat])) continue;
    build = { ...build, [seat]: to[seat] };
    swaps.push({ seat, build });
  }
  return swaps;
}
