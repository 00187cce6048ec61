import { campbellCrossings, hubShake, mountTransmission, shakeOverSpeed } from '../../../airframe/shake.ts';
import type { Craft } from '../../../build/craft.ts';
import type { Vector3 } from '../../../numerics/vector3.ts';
import { shakeInPicture } from '../../../view/shakeBlur.ts';
import type { CameraShake, CrossingReport, ShakePoint } from '../airframeData.ts';
import { type Forcing, pointAt, sourcesAt, type ThrottlePoint, throttleAt } from './forcing.ts';
import type { Structure } from './structure.ts';

/** A board on rubber feet, and a camera in a soft print: own frequency [Hz] and damping (common practice, no source). */
const SOFT_BOARD = { frequency: 120, damping: 0.15 };
const SOFT_CAMERA = { frequency: 50, damping: 0.2 };
/** Reading all rows, and pictures a second (common practice, no source). */
const READOUT = { rowsTime: 0.012, pictureRate: 60 };
/** How much more at a mode than beside it counts as felt. */
const FELT = 1.5;

/** What is not known of the forces, as factors. */
export interface ForceDoubt {
  readonly imbalance: number;
  readonly pulse: number;
}
export const likely: ForceDoubt = { imbalance: 1, pulse: 1 };

interface Swing {
  /** [Hz] */
  readonly frequency: number;
  /** [m/s2] and [rad/s] */
  readonly acceleration: number;
  readonly turnRate: number;
}

/** Shake of every order but the motor's own ripple at one place, motors' phases unknown. */
function swings(
  structure: Structure,
  forcing: Forcing,
  point: ThrottlePoint,
  place: Vector3,
  doubt: ForceDoubt,
): readonly Swing[] {
  return forcing.orders.flatMap(({ order, what }): readonly Swing[] => {
    if (what === 'motor ripple') return [];
    const scale = what === 'imbalance' ? doubt.imbalance : doubt.pulse;
    const sources = () => sourcesAt(forcing.motors, what, point);
    const [found] = shakeOverSpeed(structure.shaken, sources, [point.angularSpeed], order, place);
    const frequency = (order * point.angularSpeed) / (2 * Math.PI);
    return found === undefined
      ? []
      : [{ frequency, acceleration: scale * found.acceleration, turnRate: scale * found.turnRate }];
  });
}

/** The nicked blade's own shake, on the motor whose nick shakes the place most. */
function nickSwing(structure: Structure, forcing: Forcing, point: ThrottlePoint, place: Vector3): Swing {
  const w = point.angularSpeed;
  let worst = { acceleration: 0, turnRate: 0 };
  for (const { arm, discHeight, spin, nick } of forcing.motors) {
    const source = { arm, discHeight, spin, turning: nick * w * w, axial: 0 };
    const one = hubShake(structure.shaken, source, w, place);
    if (one.turnRate > worst.turnRate) worst = one;
  }
  return { frequency: w / (2 * Math.PI), ...worst };
}

const total = (list: readonly Swing[], read: (swing: Swing) => number) => Math.hypot(...list.map(read));

/** Shake at the flight controller and its gyro at one throttle. */
export function boardShake(
  craft: Craft,
  structure: Structure,
  forcing: Forcing,
  point: ThrottlePoint,
  doubt: ForceDoubt = likely,
): ShakePoint {
  const place = boardPlace(craft);
  const board = swings(structure, forcing, point, place, doubt);
  const nick = nickSwing(structure, forcing, point, place);
  const soft = isSoft(craft);
  const through = ({ frequency }: Swing) =>
    soft ? mountTransmission(frequency, SOFT_BOARD.frequency, SOFT_BOARD.damping) : 1;
  const gyroTurnRate = total(board, (swing) => swing.turnRate * through(swing));
  return {
    throttle: point.throttle,
    angularSpeed: point.angularSpeed,
    acceleration: total(board, (swing) => swing.acceleration),
    turnRate: total(board, (swing) => swing.turnRate),
    gyroAcceleration: total(board, (swing) => swing.acceleration * through(swing)),
    gyroTurnRate,
    nickedTurnRate: Math.hypot(gyroTurnRate, nick.turnRate * through(nick)),
  };
}

/** Whether the gyro's board stands on rubber. */
export const isSoft = ({ build, parts }: Craft): boolean =>
  (build.flightController.gyroMounting ?? parts.flightController.gyroMounting) === 'soft';

function boardPlace({ stack, massProperties }: Craft): Vector3 {
  return stack.find(({ seat }) => seat === 'flightController')?.place ?? massProperties.centreOfGravity;
}

/** What the shake does to one camera's picture at one throttle. */
export function cameraShake(
  craft: Craft,
  index: number,
  structure: Structure,
  forcing: Forcing,
  point: ThrottlePoint,
  doubt: ForceDoubt = likely,
): CameraShake | undefined {
  const placed = craft.cameras[index];
  if (placed === undefined) return undefined;
  const soft = craft.parts.extras.some(
    ({ part }) =>
      part.kind === 'mount' && part.material === 'soft print' && part.holds === `${placed.role} camera`,
  );
  const seen = (swing: Swing) => {
    const through = soft ? mountTransmission(swing.frequency, SOFT_CAMERA.frequency, SOFT_CAMERA.damping) : 1;
    const amplitude = (through * swing.turnRate) / (2 * Math.PI * swing.frequency);
    return shakeInPicture(placed.camera, { amplitude, frequency: swing.frequency }, READOUT);
  };
  const usual = swings(structure, forcing, point, placed.place, doubt).map(seen);
  const nick = seen(nickSwing(structure, forcing, point, placed.place));
  const blur = Math.hypot(...usual.map((each) => each.blur));
  const wobble = Math.hypot(...usual.map((each) => each.wobble));
  return {
    camera: index,
    role: placed.role,
    blur,
    wobble,
    nickedBlur: Math.hypot(blur, nick.blur),
    nickedWobble: Math.hypot(wobble, nick.wobble),
    waves: usual[0]?.waves ?? 0,
  };
}

/** How much more the board shakes at each mode than beside it, for one force: turning or axial, whichever tells more. */
export function feltAt(craft: Craft, structure: Structure, forcing: Forcing): readonly number[] {
  const place = boardPlace(craft);
  const amplitude = (frequency: number, turning: number, axial: number) => {
    let [acceleration, turnRate] = [0, 0];
    for (const { arm, discHeight, spin } of forcing.motors) {
      const source = { arm, discHeight, spin, turning, axial };
      const one = hubShake(structure.shaken, source, 2 * Math.PI * frequency, place);
      acceleration += one.acceleration ** 2;
      // A free body's rate of turn falls with the frequency: its acceleration in turn does not.
      turnRate += (one.turnRate * frequency) ** 2;
    }
    return [Math.sqrt(acceleration), Math.sqrt(turnRate)] as const;
  };
  return structure.modes.map(({ frequency }) => {
    const ratios = [
      [1, 0],
      [0, 1],
    ].flatMap(([turning = 0, axial = 0]) => {
      const at = amplitude(frequency, turning, axial);
      const below = amplitude(0.85 * frequency, turning, axial);
      const above = amplitude(1.18 * frequency, turning, axial);
      return at.map((value, i) => value / Math.max((below[i] ?? 0) + (above[i] ?? 0), 1e-12) / 0.5);
    });
    return Math.max(...ratios);
  });
}

/** Where orders meet modes that the board feels, between idle and full, with the throttle to keep out of. */
export function crossingsOf(
  structure: Structure,
  felt: readonly number[],
  { orders, throttles }: Forcing,
): readonly CrossingReport[] {
  const [first, last] = [throttles[0], throttles.at(-1)];
  if (first === undefined || last === undefined) return [];
  return orders.flatMap(({ order, what }) =>
    campbellCrossings(
      structure.modes.map(({ frequency }) => frequency),
      [order],
      [first.angularSpeed, last.angularSpeed],
    ).flatMap(({ mode, angularSpeed, avoid }): readonly CrossingReport[] => {
      if ((felt[mode] ?? 0) < FELT) return [];
      const within = (speed: number) => Math.min(Math.max(speed, first.angularSpeed), last.angularSpeed);
      const at = throttleAt(throttles, within(angularSpeed));
      const [low, high] = avoid.map((speed) => throttleAt(throttles, within(speed)));
      if (at === undefined || low === undefined || high === undefined) return [];
      return [{ mode, order, what, angularSpeed, throttle: at, avoid: [low, high] }];
    }),
  );
}

/** The whole range's shake, a point for each throttle of the table and between. */
export function responseOver(craft: Craft, structure: Structure, forcing: Forcing): readonly ShakePoint[] {
  const steps = 2 * (forcing.throttles.length - 1);
  return Array.from({ length: steps + 1 }, (_, i) => pointAt(forcing.throttles, i / steps)).flatMap(
    (point) => (point === undefined ? [] : [boardShake(craft, structure, forcing, point)]),
  );
}
