const AZIMUTHS = 36;
const azimuth = (i: number): number => (2 * Math.PI * (i + 0.5)) / AZIMUTHS;
const COSINE = Float64Array.from({ length: AZIMUTHS }, (_, i) => Math.cos(azimuth(i)));
const SINE = Float64Array.from({ length: AZIMUTHS }, (_, i) => Math.sin(azimuth(i)));

/**
 * Velocity along a rotor's axis that its wake makes anywhere round it, over that at its own centre: the semi-infinite
 * skewed vortex cylinder of an evenly loaded disc (Coleman, Feingold and Stempin, NACA ARR L5E10, 1945; fields of it:
 * Castles and De Leeuw, NACA Report 1184, 1954). Rings lie in the disc plane and follow one another along the wake, so the
 * law of Biot and Savart is integrated along it in closed form, and round the rim by the trapezium rule:
 *
 *   w = 1/(2 pi) integral (t x e)_z / (D - d.k) dpsi,   e = d/D - k
 *
 * t the rim's tangent, d from the rim to the point, D its length, k the wake's direction. At the centre it is 1 at every
 * skew. Inside it grows to 2 downstream; outside it is a downwash above and below the tube and an upwash beside it; in the
 * disc plane of an unskewed wake it is nothing outside. The tube neither contracts nor rolls up, and has sharp edges: not
 * for points on its skin.
 *
 * @param x, y, z from the rotor's centre over its radius: x ahead, y to the side, z along the wash
 * @param skew of the wake from the rotor's axis [rad], 0 hovering to pi/2 flat; it is swept towards -x
 */
export function skewedTube(x: number, y: number, z: number, skew: number): number {
  const [kx, kz] = [-Math.sin(skew), Math.cos(skew)];
  let sum = 0;
  for (let i = 0; i < AZIMUTHS; i++) {
    const c = COSINE[i] as number;
    const s = SINE[i] as number;
    const dx = x - c;
    const dy = y - s;
    const length = Math.sqrt(dx * dx + dy * dy + z * z);
    sum -= (s * (dy / length) + c * (dx / length - kx)) / (length - (dx * kx + z * kz));
  }
  return sum / AZIMUTHS;
}
