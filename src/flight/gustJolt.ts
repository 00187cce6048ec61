import type { RotorLoads, RotorRead } from './types.ts';

/** One craft as a sharp gust finds it, hovering in its steady wind. */
export interface GustCraft {
  /** [kg], > 0 */
  readonly mass: number;
  /** [m/s2], > 0 */
  readonly gravity: number;
  /** [kg/m3] */
  readonly airDensity: number;
  /** Drag coefficient times area facing the wind [m2], >= 0. */
  readonly dragArea: number;
  /** Drag coefficient times area seen from above [m2], >= 0. */
  readonly topDragArea: number;
  /** In-plane drag of all rotors over edgewise speed at hover [N s/m], >= 0. */
  readonly rotorDragSlope: number;
  /** Thrust of all rotors lost per speed along the thrust at hover [N s/m], >= 0: see `axialThrustSlope`. */
  readonly axialThrustSlope: number;
}

export interface SharpGust {
  /** Steady wind before it [m/s], >= 0. */
  readonly wind: number;
  /** Added to the wind, along it [m/s]. */
  readonly along: number;
  /** Upwards [m/s]. */
  readonly upward: number;
  /** Time before the craft leans against it [s], >= 0. */
  readonly reactionTime: number;
}

export interface Jolt {
  /** Horizontal acceleration when it strikes [m/s2]. */
  readonly push: number;
  /** Of which by the rotors [m/s2]. */
  readonly pushByRotors: number;
  /** Upward acceleration when it strikes [m/s2]. */
  readonly heave: number;
  /** Load factor along the thrust, 1 in calm hover. */
  readonly loadFactor: number;
  /** Size of the two accelerations together over gravity. */
  readonly jolt: number;
  /** Speed got by the time the craft answers, at most [m/s]. */
  readonly speedGained: number;
  /** Way drifted by then, at most [m]. */
  readonly drift: number;
}

/**
 * What a sharp-edged gust does before anything answers: forces of the new airspeed less those of the
 * old, on the mass alone. Drag after Hoerner's 1/2 rho C_D A V2 and the rotors' in-plane drag, linear in
 * speed; a vertical gust changes thrust at fixed rotor speed. That the gust is over the whole craft at
 * once and that the wake answers at once are both on the hard side (the inflow of a small rotor takes a
 * few hundredths of a second).
 *
 * @throws RangeError when mass or gravity is not positive or another argument below 0
 */
export function gustJolt(craft: GustCraft, gust: SharpGust): Jolt {
  for (const [name, value] of Object.entries({ mass: craft.mass, gravity: craft.gravity })) {
    if (!(value > 0)) throw new RangeError(`${name} must be over 0; found ${value}`);
  }
  for (const [name, value] of Object.entries({
    dragArea: craft.dragArea,
    topDragArea: craft.topDragArea,
    rotorDragSlope: craft.rotorDragSlope,
    axialThrustSlope: craft.axialThrustSlope,
    wind: gust.wind,
    reactionTime: gust.reactionTime,
  })) {
    if (!(value >= 0)) throw new RangeError(`${name} must be 0 or more; found ${value}`);
  }
  const pressure = (speed: number): number => 0.5 * craft.airDensity * speed * Math.abs(speed);
  const struck = gust.wind + gust.along;
  const pushByRotors = (craft.rotorDragSlope * gust.along) / craft.mass;
  const push = pushByRotors + (craft.dragArea * (pressure(struck) - pressure(gust.wind))) / craft.mass;
  const heave =
    (craft.axialThrustSlope * gust.upward + craft.topDragArea * pressure(gust.upward)) / craft.mass;
  return {
    push,
    pushByRotors,
    heave,
    loadFactor: 1 + heave / craft.gravity,
    jolt: Math.hypot(push, heave) / craft.gravity,
    speedGained: push * gust.reactionTime,
    drift: 0.5 * push * gust.reactionTime ** 2,
  };
}

/**
 * Thrust of one rotor lost per speed along its thrust, at fixed rotor speed [N s/m], by central
 * difference over +-`step`.
 *
 * @param angularSpeed [rad/s]
 * @param about axial speed at the disc [m/s]
 * @param step [m/s], > 0
 */
export function axialThrustSlope(rotor: RotorRead, angularSpeed: number, about = 0, step = 0.25): number {
  const loads: RotorLoads = { thrust: 0, torque: 0 };
  rotor(angularSpeed, about - step, loads);
  const descending = loads.thrust;
  rotor(angularSpeed, about + step, loads);
  return (descending - loads.thrust) / (2 * step);
}
