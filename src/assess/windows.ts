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

/** Throttle in hover where no purpose is told: the freestyle one, which the trade quotes for all. */
export const hoverThrottleWindow: Window = windowOf(0.2, 0.35);

/**
 * Throttle in hover. Thrust goes about with throttle squared, so it is near 0.8 / sqrt(thrust to weight) (0.71 to 0.86 over our demo
 * builds): a window that ignored the purpose would contradict `thrustToWeightWindow` for calm craft.
 */
export function hoverThrottleWindowOf(purpose: Purpose): Window {
  switch (purpose) {
    case 'race':
      return windowOf(0.15, 0.3);
    case 'freestyle':
      return hoverThrottleWindow;
    case 'micro':
      return windowOf(0.2, 0.42);
    case 'cruising':
      return windowOf(0.3, 0.48);
    case 'guarded filming':
      return windowOf(0.32, hoverThrottleStop);
  }
}

/** Above this throttle in hover nothing is left to fly with: a stop. */
export const hoverThrottleStop = 0.5;

/** Pack over all-up mass: who flies far carries more of it. */
export const packShareWindow = (purpose: Purpose): Window =>
  purpose === 'cruising' ? windowOf(0.35, 0.5) : windowOf(0.25, 0.35);

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

/**
 * Least arm thickness [m] the trade cuts for a propeller diameter [m]: 2 mm at 2 in, 3 at 3, 5 at 5, 6 at
 * 7, between in proportion and rounded down to the half millimetre that sheet is sold in.
 */
export function armThicknessLow(propDiameter: number): number {
  const inches = propDiameter / 0.0254;
  const thickness = inches < 5 ? Math.max(inches, 1) : Math.min(5 + (inches - 5) / 2, 8);
  return Math.floor(2 * thickness + 1e-9) / 2000;
}

/**
 * Least continuous rating of a speed controller [A] that the trade puts under a propeller diameter [m] on
 * cells in series. Undefined where it has settled on none.
 */
export function controllerClassLow(propDiameter: number, cells: number): number | undefined {
  return Math.abs(propDiameter / 0.0254 - 5) < 0.4 && cells === 6 ? 45 : undefined;
}

/** Under thirty flights a pilot counts as a novice (common practice, no source). */
export function isNovice(pilot: { readonly flightsFlown: number }): boolean {
  return pilot.flightsFlown < 30;
}

/** Wind a novice should not exceed [m/s]. */
export const noviceWind = 6;

/** Simulator hours a novice should have before a first aircraft of five inches. */
export const noviceSimulatorHours = 10;

/** How far out a purpose is usually flown [m] (common practice, no source); the brief's own word counts first. */
export function usualDistance(purpose: Purpose): number {
  switch (purpose) {
    case 'race':
      return 300;
    case 'freestyle':
      return 500;
    case 'micro':
    case 'guarded filming':
      return 200;
    case 'cruising':
      return 2000;
  }
}
