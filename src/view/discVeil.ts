import type { SweptDisc } from './types.ts';

/** How much of the light a turning propeller keeps out of one exposure, all 0 to 1. */
export interface DiscVeil {
  /** Mean over the disc and over where the blades happen to be: the blades' share of its area. */
  readonly meanOpacity: number;
  /** Darkest and lightest places on the three-quarter radius in one exposure. */
  readonly darkest: number;
  readonly lightest: number;
  /** Share of the disc that some blade passes during the exposure. */
  readonly sweptShare: number;
}

/**
 * A blade of angular width w sweeping s = angular speed times exposure darkens each place for a part
 * of the exposure; spaced 2 pi / B apart, k whole spacings pass and a rest of one more. The mean is the
 * solidity whatever the exposure, B c / (pi (R + r_hub)) for an even chord; the shutter only decides
 * whether it is a veil or B separate blades. Seen along the shaft; from aside the same mean is used.
 *
 * @param exposure [s], > 0
 * @throws RangeError for radii, chord or blade count out of range
 */
export function discVeil(disc: SweptDisc, exposure: number): DiscVeil {
  const { radius, hubRadius, chord, blades, angularSpeed } = disc;
  if (!(radius > hubRadius && hubRadius >= 0)) {
    throw new RangeError(`radius must exceed hubRadius >= 0; found ${radius} and ${hubRadius} m`);
  }
  if (!(chord >= 0 && blades >= 1 && angularSpeed >= 0 && exposure > 0)) {
    throw new RangeError(
      `chord, angularSpeed >= 0, blades >= 1, exposure > 0 are needed; found ${chord} m, ${angularSpeed} rad/s, ${blades}, ${exposure} s`,
    );
  }
  const spacing = (2 * Math.PI) / blades;
  const width = Math.min(spacing, chord / (0.75 * radius));
  const sweep = angularSpeed * exposure;
  const passes = Math.floor(sweep / spacing);
  const rest = sweep - passes * spacing;
  return {
    meanOpacity: Math.min(1, (blades * chord) / (Math.PI * (radius + hubRadius))),
    darkest: sweep > 0 ? (passes * width + Math.min(width, rest)) / sweep : 1,
    lightest: sweep > 0 ? (passes * width + Math.max(0, rest - (spacing - width))) / sweep : 0,
    sweptShare: Math.min(1, (width + sweep) / spacing),
  };
}
