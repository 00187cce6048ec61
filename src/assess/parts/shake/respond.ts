import {
  campbellCrossings,
  hubShake,
  mountTransmission,
  type ShakeModel,
  shakeOverSpeed,
} from '../../../airframe/shake.ts';
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
/** How much more with a mode than without it counts as felt. */
export const FELT = 1.5;

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

/**
 * How much more the board shakes at each mode than it would without that mode, for one force of all
 * motors: turning or axial, acceleration or rate of turn, whichever tells more. 1 for a mode that the
 * middle does not move in.
 */
export function feltAt(craft: Craft, structure: Structure, forcing: Forcing): readonly number[] {
  const place = boardPlace(craft);
  const { shaken } = structure;
  const amplitudes = (model: ShakeModel, frequency: number): readonly number[] =>
    [
      { turning: 1, axial: 0 },
      { turning: 0, axial: 1 },
    ].flatMap((force) => {
      const each = forcing.motors.map(({ arm, discHeight, spin }) =>
        hubShake(model, { arm, discHeight, spin, ...force }, 2 * Math.PI * frequency, place),
      );
      return [
        Math.hypot(...each.map(({ acceleration }) => acceleration)),
        Math.hypot(...each.map(({ turnRate }) => turnRate)),
      ];
    });
  return structure.modes.map(({ frequency }, i) => {
    const hub = shaken.hub.slice();
    // The six rigid motions come first.
    hub.fill(0, 6 * (i + 6), 6 * (i + 7));
    const without = amplitudes({ ...shaken, hub }, frequency);
    return Math.max(
      ...amplitudes(shaken, frequency).map((value, k) => value / Math.max(without[k] ?? 0, 1e-12)),
    );
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
export function responseOver(
  craft: Craft,
  structure: Structure,
  forcing: Forcing,
  doubt: ForceDoubt = likely,
): readonly ShakePoint[] {
  const steps = 2 * (forcing.throttles.length - 1);
  return Array.from({ length: steps + 1 }, (_, i) => pointAt(forcing.throttles, i / steps)).flatMap(
    (point) => (point === undefined ? [] : [boardShake(craft, structure, forcing, point, doubt)]),
  );
}
