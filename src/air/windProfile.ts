/**
 * Mean wind over level ground against height, neutral air (a windy or overcast day). On calm sunny
 * days and behind a crest or a wood neither law holds.
 */

/** A ground's roughness. */
export interface Ground {
  /** In words: what it looks like. */
  readonly name: string;
  /** Aerodynamic roughness length z0 [m]. */
  readonly roughnessLength: number;
}

/**
 * Davenport's classes as revised by Wieringa (1992), as in WMO-No. 8, Guide to Instruments and
 * Methods of Observation, part I, ch. 5, annex. From memory.
 */
export const grounds: readonly Ground[] = [
  { name: 'open sea or lake, 5 km of it upwind', roughnessLength: 0.0002 },
  { name: 'mud flats, snow, no obstacles', roughnessLength: 0.005 },
  { name: 'open flat terrain, short grass', roughnessLength: 0.03 },
  { name: 'low crops, scattered obstacles', roughnessLength: 0.1 },
  { name: 'high crops, hedges', roughnessLength: 0.25 },
  { name: 'parkland, bushes, many obstacles', roughnessLength: 0.5 },
  { name: 'suburb, forest', roughnessLength: 1 },
];

/** Height [m] from which the log law is meant: 20 roughness lengths; below it, the air between the stems. */
export const lawStartsAt = (roughnessLength: number): number => 20 * roughnessLength;

/** A wind known at one height over one ground. */
export interface MeasuredWind {
  /** [m/s], >= 0 */
  readonly speed: number;
  /** Above ground [m], at least 2 z0; weather stations measure at 10 m. */
  readonly height: number;
  /** [m], 1e-5 to 2 */
  readonly roughnessLength: number;
}

/**
 * Mean wind [m/s] at a height by the logarithmic law, u = u_ref ln(z/z0) / ln(z_ref/z0)
 * (WMO-No. 8, I.5; MIL-F-8785C 3.7.3.4 has the same law from 20 ft). Valid in the lowest 100 m or
 * so; nearer the ground than 20 z0 the law has no meaning and the wind at 20 z0 is given, or the measured wind where it was
 * measured lower still: both on the safe side. A wind measured below 20 z0 is taken to higher ones by the law all the same,
 * since a floor there would understate the wind aloft: say so to the reader (`lawStartsAt`).
 *
 * @param height above ground [m], > 0
 * @throws RangeError outside those ranges
 */
export function windAtHeight(wind: MeasuredWind, height: number): number {
  const { speed, roughnessLength } = wind;
  if (!(speed >= 0)) throw new RangeError(`speed must be 0 m/s or more; found ${speed} m/s`);
  if (!(roughnessLength >= 1e-5 && roughnessLength <= 2)) {
    throw new RangeError(`roughnessLength must be between 1e-5 and 2 m; found ${roughnessLength} m`);
  }
  const measured = aboveGround('wind.height', wind.height);
  if (!(measured >= 2 * roughnessLength)) {
    throw new RangeError(`wind.height must be at least 2 roughnessLength; found ${measured} m`);
  }
  const lowest = Math.min(lawStartsAt(roughnessLength), measured);
  const read = Math.max(aboveGround('height', height), lowest);
  return (speed * Math.log(read / roughnessLength)) / Math.log(measured / roughnessLength);
}

/**
 * Mean wind [m/s] at a height by the power law, u = u_ref (z/z_ref)^alpha, for when the exponent is
 * what is known: 1/7 over open land (common practice). Use `windAtHeight` where the ground is known.
 *
 * @param exponent 0 to 0.6
 * @throws RangeError outside those ranges
 */
export function windByPowerLaw(
  speed: number,
  measuredHeight: number,
  height: number,
  exponent: number,
): number {
  if (!(exponent >= 0 && exponent <= 0.6)) {
    throw new RangeError(`exponent must be between 0 and 0.6; found ${exponent}`);
  }
  if (!(speed >= 0)) throw new RangeError(`speed must be 0 m/s or more; found ${speed} m/s`);
  return speed * (aboveGround('height', height) / aboveGround('measuredHeight', measuredHeight)) ** exponent;
}

function aboveGround(name: string, height: number): number {
  if (!(height > 0 && height <= 1000)) {
    throw new RangeError(`${name} must be over 0 and up to 1000 m; found ${height} m`);
  }
  return height;
}
