import type { Purpose } from '../build/schema/brief.ts';

/** Where the trade expects a measure for a purpose: outside it is a finding, both ways. */
export interface Window {
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const TRADE = 'common practice, no source';

const windowOf = (low: number, high: number): Window => ({ low, high, source: TRADE });

const degrees = Math.PI / 180;
const rpmPerVolt = Math.PI / 30;

/** Static thrust over weight at full throttle on a charged pack. */
export function thrustToWeightWindow(purpose: Purpose): Window {
  switch (purpose) {
    case 'race':
      return windowOf(10, 16);
    case 'freestyle':
      return windowOf(6, 10);
    case 'cruising':
      return windowOf(3, 5);
    case 'guarded filming':
      return windowOf(2.5, 5);
    case 'micro':
      return windowOf(4, 10);
  }
}

/** Throttle in hover, for every purpose. */
export const hoverThrottleWindow: Window = windowOf(0.2, 0.35);

/** Above this throttle in hover nothing is left to fly with: a stop. */
export const hoverThrottleStop = 0.5;

/** Pack over all-up mass. */
export const packShareWindow: Window = windowOf(0.25, 0.35);

/** Tilt of the flying camera [rad]. A novice's window comes before the purpose's. */
export function cameraTiltWindow(purpose: Purpose, novice: boolean): Window {
  if (novice) return windowOf(10 * degrees, 20 * degrees);
  switch (purpose) {
    case 'race':
      return windowOf(35 * degrees, 50 * degrees);
    case 'freestyle':
    case 'micro':
      return windowOf(20 * degrees, 30 * degrees);
    case 'cruising':
    case 'guarded filming':
      return windowOf(10 * degrees, 25 * degrees);
  }
}

/**
 * Motor speed constant [rad/(s V)] by propeller diameter [m] and cells in series.
 * Undefined where the trade has settled on none.
 */
export function speedConstantWindow(propDiameter: number, cells: number): Window | undefined {
  const inches = propDiameter / 0.0254;
  const near = (size: number) => Math.abs(inches - size) < 0.4;
  if (near(5) && cells === 4) return windowOf(2400 * rpmPerVolt, 2700 * rpmPerVolt);
  if (near(5) && cells === 6) return windowOf(1700 * rpmPerVolt, 1950 * rpmPerVolt);
  if (near(7) && cells === 6) return windowOf(1100 * rpmPerVolt, 1500 * rpmPerVolt);
  return undefined;
}

/** Least arm thickness [m] the trade cuts for a propeller diameter [m]. */
export function armThicknessLow(propDiameter: number): number {
  const inches = propDiameter / 0.0254;
  if (inches < 3.5) return 0.003;
  if (inches < 4.5) return 0.004;
  if (inches < 6) return 0.005;
  return 0.006;
}

/** Under thirty flights a pilot counts as a novice (common practice, no source). */
export function isNovice(pilot: { readonly flightsFlown: number }): boolean {
  return pilot.flightsFlown < 30;
}

/** Wind a novice should not exceed [m/s]. */
export const noviceWind = 6;

/** Simulator hours a novice should have before a first aircraft of five inches. */
export const noviceSimulatorHours = 10;
