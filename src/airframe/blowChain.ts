/**
 * What a struck arm's end is a chain of: the ground, the motor, the arm, the craft behind it and what
 * is strapped to the craft loosely. Masses as felt along the blow [kg], stiffnesses [N/m].
 */
export interface BlowChain {
  /** Of the surface and of whatever gives between it and the motor. */
  readonly contact: number;
  /** Speed of a rebound over that of the hit, 0 to 1: what the ground gives back. */
  readonly restitution: number;
  /** What stops at the contact itself: motor, propeller, the arm's own share. */
  readonly tip: number;
  readonly arm: number;
  /** What the arm has to stop. */
  readonly craft: number;
  /** Nothing loose: 0 for both. */
  readonly loose: number;
  readonly strap: number;
}

/** Of the fastest swing in radians a step: its frequency to a thousandth. */
const STEP = 0.15;
const MOST_STEPS = 20_000;

/**
 * Largest force in the arm for a hit at 1 m/s [N s/m]; it is proportional to speed, since lifting off the ground
 * is a matter of sign alone. By leapfrog (Hairer, Lubich and Wanner 2003) until the craft has stopped; the
 * contact's dashpot gives the tip alone the restitution told. With all the mass behind the arm and no loss it
 * is sqrt(k m) of the springs in series.
 */
export function armForce({ contact, restitution, tip, arm, craft, loose, strap }: BlowChain): number {
  const loss = -Math.log(Math.min(0.99, Math.max(0.01, restitution)));
  const dashpot = ((2 * loss) / Math.hypot(Math.PI, loss)) * Math.sqrt(contact * tip);
  const fastest = Math.sqrt(
    Math.max((contact + arm) / tip, (arm + strap) / craft, loose > 0 ? strap / loose : 0),
  );
  const step = STEP / fastest;
  let [x1, x2, x3] = [0, 0, 0];
  let [v1, v2, v3] = [1, 1, 1];
  let peak = 0;
  for (let i = 0; i < MOST_STEPS && (v2 > 0 || v3 > 0); i++) {
    x1 += v1 * step;
    x2 += v2 * step;
    x3 += v3 * step;
    const ground = Math.max(0, contact * x1 + dashpot * v1);
    const bent = arm * (x2 - x1);
    const held = strap * (x3 - x2);
    v1 += ((bent - ground) / tip) * step;
    v2 += ((held - bent) / craft) * step;
    if (loose > 0) v3 -= (held / loose) * step;
    else v3 = v2;
    if (bent > peak) peak = bent;
  }
  return peak;
}
