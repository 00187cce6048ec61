/** A ring round a propeller, as far as the air cares. */
export interface GuardShape {
  /** Between blade tip and ring [m], >= 0. */
  readonly tipGap: number;
  /** Radius of the rounded inlet lip [m]; 0 for a plain hoop. */
  readonly lipRadius: number;
  /** Exit area over disc area, 0.5 to 1.3; 1 for a straight ring of some depth. */
  readonly expansionRatio: number;
  /** Of the ring along the rotor's axis [m], >= 0. */
  readonly depth: number;
  /** Area of ring struts and mesh that the slipstream blows on [m2], >= 0. */
  readonly blockedArea: number;
}

/** What a guard changes in hover, against the same rotor open. */
export interface GuardEffect {
  /** Power over open power at equal total thrust. */
  readonly powerAtEqualThrust: number;
  /** Total thrust over open thrust at equal power. */
  readonly thrustAtEqualPower: number;
  /** Share of the total thrust that the blades carry, the rest on the ring. */
  readonly rotorShare: number;
  /** Wake area over disc area that this ring reaches. */
  readonly wakeRatio: number;
  /** Share of its momentum along the disc that the air through the ring leaves in it, 0 to 1: see `turningShare`. */
  readonly turning: number;
}

/** An open rotor's wake contracts to half its disc. */
const OPEN_WAKE = 0.5;
/** Tip gap over radius where a ring works fully, and where it no longer does (after Pereira 2008, from memory). */
const GAP_FULL = 0.01;
const GAP_GONE = 0.06;
/** Lip radius over diameter that keeps the inlet flow attached (after Pereira 2008, from memory). */
const LIP_FULL = 0.06;
/** Drag coefficient of flat struts across the flow (Hoerner 1965, ch. 3). */
const STRUT_DRAG = 1.2;

/**
 * Hover with a guard ring, by the momentum theory of a shrouded rotor (McCormick 1967, ch. 9):
 * P = T^1.5 / sqrt(4 sigma rho A), the rotor carrying 1 / (2 sigma). A plain hoop with a wide gap is an open
 * rotor with struts in its way: it loses. In forward flight the air it turns drags on it (`ringDrag` in `flight/`).
 *
 * @param radius of the rotor [m], > 0
 * @throws RangeError for lengths below 0 and an expansion ratio outside 0.5 to 1.3
 */
export function guardEffect(guard: GuardShape, radius: number): GuardEffect {
  const { tipGap, lipRadius, expansionRatio, depth, blockedArea } = guard;
  for (const [name, value] of Object.entries({ tipGap, lipRadius, depth, blockedArea })) {
    if (!(value >= 0)) throw new RangeError(`${name} must be at least 0; found ${value}`);
  }
  if (!(expansionRatio >= OPEN_WAKE && expansionRatio <= 1.3)) {
    throw new RangeError(`expansionRatio must be between 0.5 and 1.3; found ${expansionRatio}`);
  }
  if (!(radius > 0)) throw new RangeError(`radius must be above 0 m; found ${radius} m`);
  const gap = share((GAP_GONE - tipGap / radius) / (GAP_GONE - GAP_FULL));
  const lip = share(lipRadius / (2 * radius) / LIP_FULL);
  const wakeRatio = OPEN_WAKE + (expansionRatio - OPEN_WAKE) * gap * lip;
  // Struts feel the disc's flow, v2 = sigma T / (rho A): their drag over T is half C_d sigma of their share of the disc.
  const drag = 0.5 * STRUT_DRAG * wakeRatio * (blockedArea / (Math.PI * radius * radius));
  const kept = Math.max(1 - drag, 0.05);
  const powerAtEqualThrust = 1 / (Math.sqrt(2 * wakeRatio) * kept ** 1.5);
  return {
    powerAtEqualThrust,
    thrustAtEqualPower: powerAtEqualThrust ** (-2 / 3),
    rotorShare: 1 / (2 * wakeRatio),
    wakeRatio,
    turning: turningShare(depth / (2 * (radius + tipGap))),
  };
}

/**
 * Share of the cross-wise momentum of the air through a ring that the ring takes out, by its depth over its diameter, lambda.
 * A ring wing's side force has the slope pi2 / (1 + lambda (pi/2 + arctan 1.2 lambda)) on depth times diameter (Weissinger
 * 1955, from memory); a long one has twice what turning its inside air gives, half of it outside, and that half is
 * pi lambda / (1 + lambda (pi/2 + arctan 1.2 lambda)): 0 without depth, 1 for a long duct, 0.5 at a quarter of the diameter.
 */
export function turningShare(depthOverDiameter: number): number {
  const lambda = depthOverDiameter;
  return (Math.PI * lambda) / (1 + lambda * (Math.PI / 2 + Math.atan(1.2 * lambda)));
}

const share = (value: number) => Math.min(1, Math.max(0, value));
