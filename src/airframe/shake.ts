import type { Vector3 } from '../numerics/vector3.ts';
import { type FreeModes, RIGID } from './frameModel.ts';
import { tipMotion } from './frameModes.ts';
import type { Spin } from './types.ts';

/** A frame ready to be shaken: all its modes, the rigid ones too, with their damping. */
export interface ShakeModel {
  /** [rad/s], rising; 0 for the rigid ones. */
  readonly angularFrequencies: Float64Array;
  /** Damping ratio of every elastic mode, of critical. */
  readonly damping: number;
  /** The hub's motion at the origin for mode k, six from 6 k; the arms' tips in their own axes. */
  readonly hub: Float64Array;
  readonly tips: readonly { readonly name: string; readonly yaw: number; readonly shapes: Float64Array }[];
}

/**
 * @param damping ratio of critical, 0.01 to 0.03 for carbon frames with screwed joints (common practice, no source)
 * @throws RangeError for a damping out of 0 to 1
 */
export function shakeModel({ model, values, vectors }: FreeModes, damping: number): ShakeModel {
  if (!(damping > 0 && damping < 1)) throw new RangeError(`damping: must be between 0 and 1, got ${damping}`);
  const { size } = model;
  const hub = new Float64Array(size * 6);
  const tips = model.arms.map(({ arm }) => ({
    name: arm.name,
    yaw: arm.yaw,
    shapes: new Float64Array(size * 6),
  }));
  for (let k = 0; k < size; k++) {
    const vector = vectors.subarray(k * size, (k + 1) * size);
    hub.set(vector.subarray(0, 6), k * 6);
    for (const [i, reduced] of model.arms.entries()) tips[i]?.shapes.set(tipMotion(vector, reduced), k * 6);
  }
  const angularFrequencies = values.map((value, k) => (k < RIGID ? 0 : Math.sqrt(Math.max(0, value))));
  return { angularFrequencies, damping, hub, tips };
}

/** A periodic force at one motor, amplitude [N]. */
export interface ShakeSource {
  readonly arm: string;
  /** Height of the prop's disc above the arm's mid-plane [m]. */
  readonly discHeight: number;
  /** Turning with the prop in its disc, as imbalance does. */
  readonly turning: number;
  /** Which way it turns. */
  readonly spin: Spin;
  /** Along the motor's axis, as blade passing does. */
  readonly axial: number;
}

/** Amplitudes at a place on the hub: of the vector of acceleration and of the rate of turn. */
export interface Shake {
  /** [m/s2] */
  readonly acceleration: number;
  /** [rad/s] */
  readonly turnRate: number;
}

/**
 * Steady shake at a place that rides on the hub (flight controller, camera) from one source, by modal
 * superposition (Craig and Kurdila, ch. 11): each mode answers with
 * phi (phi . F) / (omega_k2 - omega2 + 2 i zeta omega_k omega), rigid ones with omega_k = 0.
 *
 * Amplitude is the root of the summed squares over the axes, at most sqrt 2 over the largest swing.
 *
 * @param angularFrequency of the force [rad/s], over 0
 */
export function hubShake(
  model: ShakeModel,
  source: ShakeSource,
  angularFrequency: number,
  place: Vector3,
): Shake {
  if (!(angularFrequency > 0))
    throw new RangeError(`angularFrequency: must be over 0 rad/s, got ${angularFrequency}`);
  const tip = model.tips.find(({ name }) => name === source.arm);
  if (tip === undefined) throw new RangeError(`arm: no arm is named ${source.arm}`);
  const w = angularFrequency;
  const { turning, axial, spin, discHeight: h } = source;
  const { hub, angularFrequencies, damping } = model;
  const { shapes } = tip;
  const real = new Float64Array(6);
  const imaginary = new Float64Array(6);
  for (let k = 0; k < angularFrequencies.length; k++) {
    const wk = angularFrequencies[k] as number;
    const at = 6 * k;
    // A force F at height h above: along and across move by the turns, (theta x r) with r = (0, 0, -h).
    const along = (shapes[at] as number) - (shapes[at + 4] as number) * h;
    const across = (shapes[at + 1] as number) + (shapes[at + 3] as number) * h;
    const forceRe = turning * along + axial * (shapes[at + 2] as number);
    const forceIm = -turning * spin * across;
    const dRe = wk * wk - w * w;
    const dIm = 2 * damping * wk * w;
    const scale = 1 / (dRe * dRe + dIm * dIm);
    const qRe = (forceRe * dRe + forceIm * dIm) * scale;
    const qIm = (forceIm * dRe - forceRe * dIm) * scale;
    for (let i = 0; i < 6; i++) {
      const moved = hub[at + i] as number;
      real[i] = (real[i] as number) + moved * qRe;
      imaginary[i] = (imaginary[i] as number) + moved * qIm;
    }
  }
  return {
    acceleration: w * w * Math.sqrt(shiftSquared(real, place) + shiftSquared(imaginary, place)),
    turnRate: w * Math.sqrt(turnSquared(real) + turnSquared(imaginary)),
  };
}

/** Squared shift of a place on a body that moves as told at the origin: shift and theta x r. */
function shiftSquared(motion: Float64Array, [x, y, z]: Vector3): number {
  const [u, v, w, a, b, c] = motion as unknown as [number, number, number, number, number, number];
  const along = u + b * z - c * y;
  const across = v + c * x - a * z;
  const down = w + a * y - b * x;
  return along * along + across * across + down * down;
}

function turnSquared(motion: Float64Array): number {
  const [, , , a, b, c] = motion as unknown as [number, number, number, number, number, number];
  return a * a + b * b + c * c;
}

/** Shake over rotor speeds from every motor at one multiple of the speed, phases unknown: root sum of squares. */
export function shakeOverSpeed(
  model: ShakeModel,
  sources: (angularSpeed: number) => readonly ShakeSource[],
  angularSpeeds: readonly number[],
  order: number,
  place: Vector3,
): readonly (Shake & { readonly angularSpeed: number })[] {
  return angularSpeeds.map((angularSpeed) => {
    let [acceleration, turnRate] = [0, 0];
    for (const source of sources(angularSpeed)) {
      const one = hubShake(model, source, order * angularSpeed, place);
      acceleration += one.acceleration ** 2;
      turnRate += one.turnRate ** 2;
    }
    return { angularSpeed, acceleration: Math.sqrt(acceleration), turnRate: Math.sqrt(turnRate) };
  });
}

/**
 * Permissible residual eccentricity of a rotor's mass by balance grade, e = G/Omega (ISO 21940-11: G 6.3 is
 * 6.3 mm/s). A residual stays once made: its force grows with the square of speed, so the grade is
 * taken at the highest speed.
 *
 * @param grade [m/s]: 0.0063 for G 6.3
 * @param highestSpeed [rad/s]
 * @returns [m]
 */
export function residualEccentricity(grade: number, highestSpeed: number): number {
  if (!(grade > 0 && highestSpeed > 0)) throw new RangeError(`grade: and speed must be over 0, got ${grade}`);
  return grade / highestSpeed;
}

/** Force of an imbalance, mass times eccentricity [kg m], at a rotor speed [rad/s], in newtons. */
export const imbalanceForce = (imbalance: number, angularSpeed: number): number =>
  imbalance * angularSpeed ** 2;

/** Where a rotor order meets a mode in a Campbell diagram. */
export interface Crossing {
  /** Index among the frequencies asked about. */
  readonly mode: number;
  /** Shakes in one turn of the rotor. */
  readonly order: number;
  /** [rad/s] */
  readonly angularSpeed: number;
  /** Speeds within the half width of resonance of it [rad/s]. */
  readonly avoid: readonly [number, number];
}

/**
 * Crossings of modes by multiples of the rotor's speed, inside a speed range, rising in speed.
 *
 * @param margin relative half width to keep away: 0.1 is usual (common practice, no source)
 */
export function campbellCrossings(
  frequencies: readonly number[],
  orders: readonly number[],
  [low, high]: readonly [number, number],
  margin = 0.1,
): readonly Crossing[] {
  return frequencies
    .flatMap((frequency, mode) =>
      orders.map((order): Crossing => {
        const angularSpeed = (2 * Math.PI * frequency) / order;
        return {
          mode,
          order,
          angularSpeed,
          avoid: [angularSpeed * (1 - margin), angularSpeed * (1 + margin)],
        };
      }),
    )
    .filter(({ avoid }) => avoid[1] >= low && avoid[0] <= high)
    .sort((a, b) => a.angularSpeed - b.angularSpeed);
}

/**
 * Share of a shake that passes a soft mount of one natural frequency (Den Hartog, Mechanical Vibrations,
 * eq. 2.42): over 1 below sqrt 2 times that frequency, whatever the damping.
 *
 * @param frequency of the shake, and the mount's own, in one unit
 * @param damping ratio of the mount's rubber, some 0.1 to 0.2 (common practice, no source)
 */
export function mountTransmission(frequency: number, mountFrequency: number, damping: number): number {
  if (!(mountFrequency > 0)) throw new RangeError(`mountFrequency: must be over 0, got ${mountFrequency}`);
  const r = frequency / mountFrequency;
  const friction = (2 * damping * r) ** 2;
  return Math.sqrt((1 + friction) / ((1 - r * r) ** 2 + friction));
}

/**
 * How far a picture smears while the shutter is open, from an angular shake of one frequency [pixels].
 *
 * @param turnRate amplitude [rad/s], at `angularFrequency` [rad/s]
 * @param exposure [s]
 * @param focalLength in pixels at the picture's centre
 */
export function imageBlur(
  turnRate: number,
  angularFrequency: number,
  exposure: number,
  focalLength: number,
): number {
  const swing = Math.min(Math.PI / 2, (angularFrequency * exposure) / 2);
  return focalLength * 2 * (turnRate / angularFrequency) * Math.sin(swing);
}
