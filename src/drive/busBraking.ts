import { secantRoot } from '../numerics/secantRoot.ts';
import { advance, type Bus, type BusModel, busStep, dot, riseOf } from './busCircuit.ts';
import { type BusRipple, rippleAt } from './busRipple.ts';

/** Motors alike on one bus, running. */
export interface BrakedMotors {
  readonly count: number;
  /** At full throttle, where it begins [rad/s], >= 0. */
  readonly angularSpeed: number;
  /** K_V [rad/s per V] */
  readonly speedConstant: number;
  /** Of winding, controller and motor leads at rest [ohm], and what speed adds to it [ohm s/rad]. */
  readonly resistance: number;
  readonly resistanceSlope: number;
  /** No-load current [A] = idleConstant + idleSlope x angular speed. */
  readonly idleConstant: number;
  readonly idleSlope: number;
  /** Propeller torque over angular speed squared [N m s2], >= 0. */
  readonly torqueFactor: number;
  /** Of everything that turns [kg m2]. */
  readonly rotatingInertia: number;
}

/** How the duty falls. */
export interface DutyDrop {
  /** From full throttle to the lowest duty [s], > 0: straight. */
  readonly duration: number;
  /** Lowest duty, 0 to 0.2. */
  readonly idleDuty: number;
}

/** One moment of the drop. */
export interface BrakingPoint {
  /** [s] */
  readonly time: number;
  readonly duty: number;
  /** Of the bus over the pack's voltage without load, mean over a pulse [V]; negative while it sags. */
  readonly rise: number;
  /** Highest in a pulse, all controllers in step [V]. */
  readonly crest: number;
  /** Back to the bus, mean [A]; negative while drawn. */
  readonly returned: number;
  /** Largest braking current in a motor [A]; negative while driven. */
  readonly motorCurrent: number;
}

/** The whole drop, for whoever wants to follow it. */
export interface BrakingTrace {
  readonly points: readonly BrakingPoint[];
  /** Angular speed of each group, point by point [rad/s]. */
  readonly angularSpeeds: readonly (readonly number[])[];
}

const STEPS = 128;
/** Looked at beyond the end of the drop, as a share of it: large capacitors fill late. */
const BEYOND = 0.25;

/**
 * Motors braked from full throttle by controllers that switch their low side in step with the high side (active freewheeling;
 * common practice, no source). At duty d a motor with back-voltage e carries (d u - e)/R, so it pushes current back as soon as d u is
 * under e, and of that current the share d reaches the bus. Most comes back at d = e/(2 V): e^2/(4 V R) a motor. In time,
 *
 *   J w' = (i - i0)/K_V - k w^2,   i = (d u - w/K_V)/R(w),   q = sum of d i
 *
 * with the bus's own equations (`busModel`) between: the higher it stands the less comes back. The circuit steps exactly with the
 * draw straight between steps, the speed by the trapezium rule. The pulses ride on it settled (`busRipple`), all controllers in
 * step: an upper bound, as the electronics' own draw is left out. The winding's inductance is left out: L/R is some
 * 0.2 ms (common practice, no source). No limit of a controller on braking current is counted on.
 */
export function brakeOnBus(
  model: BusModel,
  { packVoltage }: Pick<Bus, 'packVoltage'>,
  motors: readonly BrakedMotors[],
  drop: DutyDrop,
  ripple: BusRipple,
): BrakingTrace {
  if (!(drop.duration > 0)) throw new RangeError(`duration must be above 0 s; found ${drop.duration} s`);
  const step = drop.duration / STEPS;
  const stepping = busStep(model, step);
  const dutyAt = (n: number) => 1 - (1 - drop.idleDuty) * Math.min(n / STEPS, 1);
  let speeds = motors.map(({ angularSpeed }) => angularSpeed);
  const first = drawOf(packVoltage, motors, speeds, 1);
  const resistance = -riseOf(model, model.atRest, 1);
  let rise = (-resistance * first.steady) / (1 + resistance * first.slope);
  let before = rise;
  let draw = first.steady + first.slope * rise;
  let state = model.atRest.map((value) => value * draw);
  let next = new Float64Array(model.size);
  // What a draw at the end of a step does to the bus there.
  const gives = model.stiffness - dot(model.reads, stepping.to);
  const points: BrakingPoint[] = [];
  const angularSpeeds: (readonly number[])[] = [];
  const steps = Math.ceil(STEPS * (1 + BEYOND));
  for (let n = 0; n <= steps; n++) {
    const duty = dutyAt(n);
    if (n > 0) {
      const between = (duty + dutyAt(n - 1)) / 2;
      // In the middle of the step, straight on from the last one.
      const output = between * (packVoltage + 1.5 * rise - 0.5 * before);
      before = rise;
      speeds = speeds.map((speed, g) => slowed(motors[g] as BrakedMotors, speed, output, step));
      advance(stepping, state, draw, 0, next);
      const free = dot(model.reads, next);
      const { steady, slope } = drawOf(packVoltage, motors, speeds, duty);
      rise = (free - gives * steady) / (1 + gives * slope);
      const now = steady + slope * rise;
      advance(stepping, state, draw, now, next);
      [state, next] = [next, state];
      draw = now;
    }
    let [pulses, most] = [0, Number.NEGATIVE_INFINITY];
    for (const [g, each] of motors.entries()) {
      const current = currentAt(each, speeds[g] as number, duty * (packVoltage + rise));
      pulses += each.count * current;
      most = Math.max(most, -current);
    }
    const swing = pulses < 0 ? -pulses * rippleAt(ripple.under, duty) : pulses * rippleAt(ripple.over, duty);
    points.push({
      time: n * step,
      duty,
      rise,
      crest: rise + swing,
      returned: -draw,
      motorCurrent: most,
    });
    angularSpeeds.push(speeds);
  }
  return { points, angularSpeeds };
}

/** What all motors draw at a duty: `steady` with the bus at the pack's voltage [A], and `slope` for every volt over it. */
function drawOf(
  packVoltage: number,
  motors: readonly BrakedMotors[],
  speeds: readonly number[],
  duty: number,
): { readonly steady: number; readonly slope: number } {
  let [steady, slope] = [0, 0];
  for (const [g, each] of motors.entries()) {
    const speed = speeds[g] as number;
    steady += each.count * duty * currentAt(each, speed, duty * packVoltage);
    slope += (each.count * duty * duty) / resistanceAt(each, speed);
  }
  return { steady, slope };
}

const resistanceAt = ({ resistance, resistanceSlope }: BrakedMotors, angularSpeed: number): number =>
  resistance + resistanceSlope * angularSpeed;

/** In one motor whose controller gives `voltage` [A]; negative while it brakes. */
const currentAt = (motors: BrakedMotors, angularSpeed: number, voltage: number): number =>
  (voltage - angularSpeed / motors.speedConstant) / resistanceAt(motors, angularSpeed);

/** Speed a step later, by the trapezium rule with the air's torque k w w' [rad/s]. */
function slowed(motors: BrakedMotors, angularSpeed: number, voltage: number, step: number): number {
  const { speedConstant, idleConstant, idleSlope, torqueFactor, rotatingInertia } = motors;
  const resistance = resistanceAt(motors, angularSpeed);
  const drag = (1 / (speedConstant * resistance) + idleSlope) / (2 * speedConstant);
  const push = (voltage / resistance - idleConstant) / speedConstant;
  const holds = rotatingInertia / step;
  return Math.max(0, (angularSpeed * (holds - drag) + push) / (holds + drag + torqueFactor * angularSpeed));
}

/**
 * Speed of each group at full throttle, settled on a pack [rad/s]: the same motors and propellers on another voltage.
 *
 * @param sourceResistance of pack and leads [ohm]
 */
export function fullThrottleSpeeds(
  motors: readonly BrakedMotors[],
  packVoltage: number,
  sourceResistance: number,
): readonly number[] {
  const speedOn = (each: BrakedMotors, voltage: number): number => {
    const freeSpeed = voltage * each.speedConstant;
    const excess = (w: number) =>
      each.idleConstant +
      each.idleSlope * w +
      each.torqueFactor * each.speedConstant * w * w -
      currentAt(each, w, voltage);
    return excess(0) >= 0 ? 0 : secantRoot(excess, 0, freeSpeed, Math.min(each.angularSpeed, freeSpeed));
  };
  const draw = (voltage: number) =>
    motors.reduce((sum, each) => sum + each.count * currentAt(each, speedOn(each, voltage), voltage), 0);
  const short = (voltage: number) => voltage + sourceResistance * draw(voltage) - packVoltage;
  const voltage = secantRoot(short, 0, packVoltage, 0.9 * packVoltage);
  return motors.map((each) => speedOn(each, voltage));
}
