/**
 * Transcendental functions of the kernel by the polynomials of Abramowitz and Stegun, Handbook of
 * Mathematical Functions, 1964: a few times faster than the engine's, and the same arithmetic in `bench/rotorKernel.c`.
 */

/** sin x for -pi/2 to pi/2 within 4e-9: eq. 4.3.97. */
export function sine(x: number): number {
  const q = x * x;
  return (
    x *
    (1 +
      q * (-0.1666666664 + q * (0.0083333315 + q * (-0.000198409 + q * (0.0000027526 + q * -0.0000000239)))))
  );
}

/** cos x for -pi/2 to pi/2 within 2e-9: eq. 4.3.99. */
export function cosine(x: number): number {
  const q = x * x;
  return (
    1 +
    q * (-0.4999999963 + q * (0.0416666418 + q * (-0.0013888397 + q * (0.0000247609 + q * -0.0000002605))))
  );
}

/** exp(-x) for 0 to 14 within 1e-8 of itself: eq. 4.2.45 at x / 32, squared five times. */
export function decay(x: number): number {
  const y = x * 0.03125;
  const a =
    1 +
    y *
      (-0.9999999995 +
        y *
          (0.4999999206 +
            y *
              (-0.1666653019 +
                y * (0.0416573475 + y * (-0.0083013598 + y * (0.001329882 + y * -0.0001413161))))));
  const b = a * a;
  const c = b * b;
  const d = c * c;
  const e = d * d;
  return e * e;
}

/** arccos x for 0 to 1 within 2e-8: eq. 4.4.46. */
export function arcCosine(x: number): number {
  return (
    Math.sqrt(1 - x) *
    (1.570796305 +
      x *
        (-0.2145988016 +
          x *
            (0.0889789874 +
              x *
                (-0.0501743046 +
                  x * (0.030891881 + x * (-0.0170881256 + x * (0.0066700901 + x * -0.0012624911)))))))
  );
}
