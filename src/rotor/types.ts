import type { Air } from '../air/standardAtmosphere.ts';

/** What is known of a propeller's shape; each step narrows the band of its forecast. */
export type KnownBy = 'nameplate' | 'nameplate and chord' | 'blade table';

/** One propeller as blade elements see it. Stations run from root to tip. */
export interface Blade {
  /** Tip to tip [m], 0.02 to 1. */
  readonly diameter: number;
  /** 1 to 8. */
  readonly bladeCount: number;
  /** r/R of each station, rising, 0 < r/R <= 1. */
  readonly radiusRatio: Float64Array;
  /** Chord over tip radius at each station. */
  readonly chordRatio: Float64Array;
  /** Section pitch angle to the disc plane at each station [rad], before `pitchOffset`. */
  readonly twist: Float64Array;
  readonly knownBy: KnownBy;
  /** True once `anchorBlade` or `fitBlade` has matched it to measured points. */
  readonly anchored: boolean;
  /** Reynolds numbers at 0.75 R that the measured points span; away from them the band widens. */
  readonly anchorReynolds?: readonly [lowest: number, highest: number];
  /** Tip Mach numbers that the measured points span; away from them the band widens. */
  readonly anchorTipMach?: readonly [lowest: number, highest: number];
  /**
   * What the measured points leave open beyond a usual stand, 1 sd, relative: their own spreads, or what they contradict
   * each other by. Absent where a stand's 2 % holds.
   */
  readonly anchorSpread?: { readonly thrust: number; readonly power: number };
  /** Added to the twist of every station [rad]; 0 until fitted. */
  readonly pitchOffset: number;
  /** Multiplies the profile drag of every section; 1 until fitted. */
  readonly dragScale: number;
}

/** The name printed on a propeller. */
export interface Nameplate {
  /** [m] */
  readonly diameter: number;
  /** Geometric advance a turn [m]. */
  readonly pitch: number;
  readonly bladeCount: number;
  /** Chord at 0.75 of the tip radius [m], when somebody has measured it. */
  readonly chordAt75?: number;
}

/** A measured blade shape, stations from root to tip. */
export interface BladeTable {
  /** [m] */
  readonly diameter: number;
  readonly bladeCount: number;
  /** Nameplate pitch [m], when known: steadies the measured twist. */
  readonly pitch?: number;
  /** r/R, rising, 0 < r/R <= 1. */
  readonly radiusRatio: ArrayLike<number>;
  /** c/R */
  readonly chordRatio: ArrayLike<number>;
  /** [rad] */
  readonly twist: ArrayLike<number>;
}

/** What a rotor is doing in axial flow. */
export interface RotorCondition {
  /** [rad/s], > 0 */
  readonly angularSpeed: number;
  /** Speed along the thrust direction [m/s]: positive climbing, negative descending. */
  readonly axialSpeed: number;
  readonly air: Air;
}

/**
 * `hover`: no axial speed; `climb`: pulling forward; `windmill`: driven by the air, thrust
 * backward; `descent`: slow axial descent that momentum theory still carries.
 */
export type FlowRegime = 'hover' | 'climb' | 'windmill' | 'descent';

/** A solved rotor. Intermediates are kept, so that a result can be questioned. */
export interface RotorState {
  /** [N] along the axis, positive forward. */
  readonly thrust: number;
  /** [N m] asked of the shaft; negative when windmilling. */
  readonly torque: number;
  /** [W] asked of the shaft. */
  readonly power: number;
  /** T / (rho n^2 D^4), n in rev/s. */
  readonly thrustCoefficient: number;
  /** P / (rho n^3 D^5). */
  readonly powerCoefficient: number;
  /** V / (n D). */
  readonly advanceRatio: number;
  readonly regime: FlowRegime;
  /** Mach number of the tip along its helix. */
  readonly tipMach: number;
  /** Reynolds number at 0.75 R, on the chord. */
  readonly reynolds75: number;
  readonly stations: RotorStations;
}

/** What each blade element sees, root to tip. */
export interface RotorStations {
  /** r/R at the middle of each element. */
  readonly radiusRatio: Float64Array;
  /** [rad] */
  readonly inflowAngle: Float64Array;
  /** [rad] */
  readonly angleOfAttack: Float64Array;
  readonly reynolds: Float64Array;
  readonly mach: Float64Array;
  readonly liftCoefficient: Float64Array;
  readonly dragCoefficient: Float64Array;
  /** Prandtl tip and hub loss factor, 0 to 1. */
  readonly lossFactor: Float64Array;
  /** dT/dr of the whole rotor [N/m]. */
  readonly thrustPerSpan: Float64Array;
  /** dQ/dr of the whole rotor [N]. */
  readonly torquePerSpan: Float64Array;
  /** Induced axial velocity at the disc [m/s]. */
  readonly axialInduced: Float64Array;
  /** Induced swirl at the disc [m/s]. */
  readonly swirlInduced: Float64Array;
}

/** One measured point of a propeller in still air or axial flow. */
export interface MeasuredPoint {
  /** [rad/s] */
  readonly angularSpeed: number;
  /** [m/s]; 0 on a thrust stand. */
  readonly axialSpeed?: number;
  /** [N] */
  readonly thrust: number;
  /** Shaft power [W]. */
  readonly power: number;
  /** How well each is known, 1 sd, relative; `STAND_SPREAD` when absent. */
  readonly thrustSpread?: number;
  readonly powerSpread?: number;
  readonly air: Air;
}

/** Honest spread of a forecast: where the measured value lies, 10th to 90th percentile. */
export interface RotorBand {
  /** C_T at the 10th and 90th percentile. */
  readonly thrustCoefficient: readonly [number, number];
  /** C_P at the 10th and 90th percentile. */
  readonly powerCoefficient: readonly [number, number];
  /** Correlation of the errors of thrust and power, -1 to 1. */
  readonly correlation: number;
}

/** How fine a rotor map is: `coarse` while a slider moves, `full` for a verdict. */
export type MapDetail = 'coarse' | 'full';

/**
 * Thrust and torque over speed of turn and axial speed, ready to be read fast. Made by
 * `buildRotorMap` at one air; `readRotorMap` corrects for another.
 */
export interface RotorMap {
  readonly blade: Blade;
  /** The air it was built in. */
  readonly air: Air;
  readonly detail: MapDetail;
  /** Rows: square root of tip speed [m/s], evenly spaced. */
  readonly rootTipFirst: number;
  readonly rootTipStep: number;
  readonly rows: number;
  /** Columns: asinh(V / (0.4 omega R)), evenly spaced. */
  readonly flowFirst: number;
  readonly flowStep: number;
  readonly columns: number;
  /** T / (rho R^2 (V^2 + (omega R)^2)), row by row. */
  readonly thrust: Float64Array;
  /** Q / (rho R^3 (V^2 + (omega R)^2)), row by row. */
  readonly torque: Float64Array;
  /** The part of each that compressibility makes. */
  readonly thrustByMach: Float64Array;
  readonly torqueByMach: Float64Array;
}

/** What `readRotorMap` fills in. */
export interface RotorReading {
  /** [N] */
  thrust: number;
  /** [N m] */
  torque: number;
  /** dT/d omega at constant axial speed [N s/rad]. */
  thrustByAngularSpeed: number;
  /** dQ/d omega [N m s/rad]. */
  torqueByAngularSpeed: number;
  /** dT/dV at constant angular speed [N s/m]. */
  thrustByAxialSpeed: number;
  /** dQ/dV [N s]. */
  torqueByAxialSpeed: number;
  /** False outside the map (vortex ring, hard windmilling, tip beyond Mach 0.85): held at its edge. */
  inside: boolean;
  /** Working room of the reader. */
  readonly weights: Float64Array;
  readonly coefficients: Float64Array;
}

/** A rotor in oblique flow: through the disc and along it. */
export interface EdgewiseCondition extends RotorCondition {
  /** Along the disc [m/s], >= 0. */
  readonly edgewiseSpeed: number;
  /** Multiplies the growth of the inflow across the disc; 1 (Drees') when absent. */
  readonly inflowLean?: number;
}

/**
 * Loads of a rotor in oblique flow, averaged over a turn. 'Aft' is where the wind along the disc goes,
 * 'advancing side' is where blades move against it (right of the path for a rotor turning
 * anticlockwise seen from above); a rotor of the other hand is the mirror image.
 */
export interface EdgewiseState {
  /** [N] along the axis. */
  readonly thrust: number;
  /** [N m] asked of the shaft. */
  readonly torque: number;
  /** [W] */
  readonly power: number;
  /** In the disc, aft [N]: the H-force. */
  readonly inPlaneForce: number;
  /** In the disc, to the advancing side [N]. */
  readonly sideForce: number;
  /** Hub moment that lifts the advancing side [N m], blades taken as rigid. */
  readonly momentAdvancingUp: number;
  /** Hub moment that lifts the aft side [N m]. */
  readonly momentAftUp: number;
  /** Mean induced speed of Glauert's disc [m/s]. */
  readonly inducedSpeed: number;
  /** Of the wake to the axis [rad], 0 in axial flow. */
  readonly wakeSkew: number;
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
  /** Edgewise speed over tip speed. */
  readonly edgewiseRatio: number;
  /** Of the advancing tip. */
  readonly tipMach: number;
}

/** What moving along the disc adds to a `RotorMap`, in its coefficients. Made by `buildEdgewiseMap`. */
export interface EdgewiseMap {
  readonly axial: RotorMap;
  /** Layers: edgewise speed over tip speed, evenly spaced from 0. */
  readonly ratioStep: number;
  readonly layers: number;
  /** Rows: square root of tip speed [m/s], evenly spaced. */
  readonly rootTipFirst: number;
  readonly rootTipStep: number;
  readonly rows: number;
  /** Columns: asinh(V / (0.4 omega R)), evenly spaced from 0. */
  readonly flowStep: number;
  readonly columns: number;
  /**
   * Tables layer by layer, row by row, over rho R^2 (omega R)^2 (times R for torque and moments): thrust and
   * torque beyond those of the axial map, H-force, side force, the two hub moments.
   */
  readonly tables: readonly Float64Array[];
}

/** What `readEdgewiseMap` fills in: see `EdgewiseState`. */
export interface EdgewiseReading {
  thrust: number;
  torque: number;
  inPlaneForce: number;
  sideForce: number;
  momentAdvancingUp: number;
  momentAftUp: number;
  /** False outside the map, as in `RotorReading`. */
  inside: boolean;
  /** Working room of the reader. */
  readonly axial: RotorReading;
  readonly weights: Float64Array;
}
