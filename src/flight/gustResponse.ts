import { drydenSpectrum, type GustComponent, type Turbulence } from '../air/dryden.ts';
import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import type { GustCraft } from './gustCraft.ts';

/** A plain cascade: place and speed to tilt, tilt as a second-order loop; height to thrust with a lag. */
export interface HoldController {
  /** Wanted acceleration over error of place [1/s2], > 0. */
  readonly placeGain: number;
  /** Wanted acceleration over error of speed [1/s], > 0. */
  readonly speedGain: number;
  /** Natural frequency of the tilt loop [rad/s], > 0. */
  readonly tiltFrequency: number;
  /** Damping ratio of the tilt loop, > 0. */
  readonly tiltDamping: number;
  /** First-order lag of thrust [s], > 0. */
  readonly thrustLag: number;
}

/** Gains of a steady camera craft of a few hundred grams: common practice, no source. */
export const plainHold: HoldController = {
  placeGain: 1,
  speedGain: 2,
  tiltFrequency: 12,
  tiltDamping: 0.8,
  thrustLag: 0.05,
};

export interface HoldRequest extends GustCraft {
  /** Mean wind at the craft, which is also its airspeed [m/s], > 0. */
  readonly wind: number;
  readonly turbulence: Turbulence;
  readonly controller: HoldController;
}

/** Root mean squares. */
export interface HoldMotion {
  /** [m] */
  readonly place: number;
  /** [m/s] */
  readonly speed: number;
  /** [m/s2] */
  readonly acceleration: number;
  /** Of the controller's answer: tilt about its mean [rad], or thrust over weight for the vertical. */
  readonly answer: number;
}

export type HoldResponse = Readonly<Record<GustComponent, HoldMotion>>;

/**
 * How a craft holding its place moves in Dryden turbulence: transfer functions from gust to motion,
 * linear about the mean wind, integrated over the spectrum (Hoblit 1988, ch. 4, from memory). With d the
 * drag rate [1/s], P(s) the inverse of the answer's lag, a plain cascade gives
 * x / u = d P / (P (s2 + d s) + k_v s + k_p),
 * d = (rho C_D A V + k_rotor)/m along the wind and (rho C_D A V/2 + k_rotor)/m across it.
 *
 * Tilts of more than some 20 degrees and saturated motors are outside this.
 *
 * @returns words when these gains don't hold the craft (Routh and Hurwitz)
 * @throws RangeError when an argument is out of range
 */
export function holdInGusts(request: HoldRequest): Outcome<HoldResponse> {
  checkRequest(request);
  const { mass, gravity, airDensity, dragArea, rotorDragSlope, wind, controller } = request;
  const pressureSlope = airDensity * dragArea * wind;
  const { tiltFrequency, tiltDamping, thrustLag, placeGain, speedGain } = controller;
  const tiltLag: Lag = [1, (2 * tiltDamping) / tiltFrequency, tiltFrequency ** -2];
  const motion = (component: GustComponent, force: number, lag: Lag): Outcome<HoldMotion> =>
    axisMotion({ dragRate: force / mass, lag, placeGain, speedGain, gravity }, (omega) =>
      drydenSpectrum(request.turbulence, component, omega, wind),
    );
  const longitudinal = motion('longitudinal', pressureSlope + rotorDragSlope, tiltLag);
  if (!longitudinal.ok) return longitudinal;
  const lateral = motion('lateral', pressureSlope / 2 + rotorDragSlope, tiltLag);
  if (!lateral.ok) return lateral;
  const vertical = motion('vertical', request.axialThrustSlope, [1, thrustLag, 0]);
  if (!vertical.ok) return vertical;
  return solved({ longitudinal: longitudinal.value, lateral: lateral.value, vertical: vertical.value });
}

/** Coefficients of P(s), rising powers. */
type Lag = readonly [number, number, number];

interface HoldAxis {
  readonly dragRate: number;
  readonly lag: Lag;
  readonly placeGain: number;
  readonly speedGain: number;
  readonly gravity: number;
}

/** The integral runs over ln omega, where the integrands are smooth, until nothing is left at either end. */
const LOWEST = Math.log(1e-8);
const HIGHEST = Math.log(1e7);
const POINTS = 3600;

function axisMotion(axis: HoldAxis, spectrum: (omega: number) => number): Outcome<HoldMotion> {
  const { dragRate, placeGain, speedGain, gravity } = axis;
  const [p0, p1, p2] = axis.lag;
  const a0 = placeGain;
  const a1 = p0 * dragRate + speedGain;
  const a2 = p0 + p1 * dragRate;
  const a3 = p1 + p2 * dragRate;
  const a4 = p2;
  if (!(a3 * a2 > a4 * a1 && a3 * a2 * a1 > a4 * a1 * a1 + a3 * a3 * a0)) {
    return noSolution('with these gains the craft sways ever more: the tilt or thrust answers too slowly');
  }
  let [place, speed, acceleration, answer] = [0, 0, 0, 0];
  const step = (HIGHEST - LOWEST) / POINTS;
  for (let i = 0; i <= POINTS; i++) {
    const w = Math.exp(LOWEST + i * step);
    const w2 = w * w;
    const denominator = (a4 * w2 * w2 - a2 * w2 + a0) ** 2 + (a1 * w - a3 * w2 * w) ** 2;
    const gust = (spectrum(w) * w * step * dragRate * dragRate) / denominator;
    const lag2 = (p0 - p2 * w2) ** 2 + (p1 * w) ** 2;
    place += gust * lag2;
    speed += gust * lag2 * w2;
    acceleration += gust * lag2 * w2 * w2;
    answer += gust * (placeGain * placeGain + speedGain * speedGain * w2);
  }
  return solved({
    place: Math.sqrt(place),
    speed: Math.sqrt(speed),
    acceleration: Math.sqrt(acceleration),
    answer: Math.sqrt(answer) / gravity,
  });
}

function checkRequest(request: HoldRequest): void {
  const { mass, gravity, airDensity, wind, controller } = request;
  for (const [name, value] of Object.entries({ mass, gravity, airDensity, wind, ...controller })) {
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`${name} must be over 0; found ${value}`);
  }
  const { dragArea, rotorDragSlope, axialThrustSlope } = request;
  for (const [name, value] of Object.entries({ dragArea, rotorDragSlope, axialThrustSlope })) {
    if (!(value >= 0 && Number.isFinite(value))) {
      throw new RangeError(`${name} must be 0 or more; found ${value}`);
    }
  }
}
