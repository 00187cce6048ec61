import { residualEccentricity, type ShakeSource } from '../../../airframe/shake.ts';
import type { Craft } from '../../../build/craft.ts';
import { pointForThrottles } from '../../../flight/operatingPoint.ts';
import { neutralLevers } from '../../../flight/types.ts';
import type { OrderKind } from '../airframeData.ts';
import type { Flight } from '../types.ts';

/** Balance grade of a fresh propeller on its bell [m/s]: G 6.3 of ISO 21940-11, its row for fans. */
const GRADE = 6.3e-3;
/** Share of a motor's mass that turns (common practice, no source). */
const TURNING_SHARE = 0.5;
/** A nick: this share of one blade lost, at this share of the radius. Blades hold four fifths of the mass (all our choice). */
const NICK = { share: 0.01, radius: 0.9, bladesShare: 0.8 };
/** Of the mean download on an arm, what pulses as a blade passes over it (common practice, no source). */
const PULSE = 0.5;
const STEPS = 20;

/** How the motors shake the frame over the throttle. */
export interface Forcing {
  readonly orders: readonly { readonly order: number; readonly what: OrderKind }[];
  /** Idle to full, half charge. */
  readonly throttles: readonly ThrottlePoint[];
  readonly motors: readonly MotorForcing[];
}

export interface ThrottlePoint {
  readonly throttle: number;
  /** Mean of the motors [rad/s]. */
  readonly angularSpeed: number;
  /** Mean of the rotors, before download [N]. */
  readonly thrust: number;
}

export interface MotorForcing {
  readonly arm: string;
  readonly discHeight: number;
  readonly spin: 1 | -1;
  /** Mass times eccentricity left by the grade [kg m], and added by a nick. */
  readonly imbalance: number;
  readonly nick: number;
  readonly downloadShare: number;
}

export function forcingOf(craft: Craft, flight: Flight): Forcing {
  const throttles = throttleTable(flight);
  const full = throttles.at(-1)?.angularSpeed ?? flight.told.figures['hover-speed'] ?? 1;
  const motors = craft.motors.flatMap((motor, index): readonly MotorForcing[] => {
    const arm = craft.frame.arms[motor.place.armIndex];
    const propeller = craft.parts.propellers[index];
    const own = craft.parts.motors[index];
    const rotor = craft.rotors[motor.rotor];
    if (arm === undefined || propeller === undefined || own === undefined || rotor === undefined) return [];
    const turning = propeller.mass.value + TURNING_SHARE * own.mass.value;
    const { diameter, bladeCount } = rotor.blade;
    const lost = (NICK.share * NICK.bladesShare * propeller.mass.value) / bladeCount;
    return [
      {
        arm: arm.name,
        discHeight: arm.tip[2] - motor.discPlace[2],
        spin: motor.place.spin,
        imbalance: turning * residualEccentricity(GRADE, full),
        nick: (lost * NICK.radius * diameter) / 2,
        downloadShare: motor.downloadShare,
      },
    ];
  });
  const poles = craft.parts.motors[0]?.poles ?? 14;
  const blades = craft.rotors[0]?.blade.bladeCount ?? 2;
  return {
    orders: [
      { order: 1, what: 'imbalance' },
      { order: blades, what: 'blade passing' },
      // Six steps each electrical turn, half as many electrical turns as poles each turn of the shaft.
      { order: 3 * poles, what: 'motor ripple' },
    ],
    throttles,
    motors,
  };
}

function throttleTable({ model }: Flight): readonly ThrottlePoint[] {
  return Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS).flatMap(
    (throttle): readonly ThrottlePoint[] => {
      const point = pointForThrottles(
        model,
        neutralLevers,
        model.stations.map(() => throttle),
        { charge: 0.5 },
      );
      if (!point.ok) return [];
      const { stations } = point.value;
      const mean = (read: (each: (typeof stations)[number]) => number) =>
        stations.reduce((sum, each) => sum + read(each), 0) / stations.length;
      const angularSpeed = mean((each) => each.angularSpeed);
      return angularSpeed > 0 ? [{ throttle, angularSpeed, thrust: mean((each) => each.thrust) }] : [];
    },
  );
}

/** Forces of all motors at one order: imbalance turns at once a turn, the arms' download pulses with the blades. */
export function sourcesAt(
  motors: readonly MotorForcing[],
  what: OrderKind,
  point: ThrottlePoint,
  imbalanceScale = 1,
): readonly ShakeSource[] {
  return motors.map(({ arm, discHeight, spin, imbalance, downloadShare }) => ({
    arm,
    discHeight,
    spin,
    turning: what === 'imbalance' ? imbalanceScale * imbalance * point.angularSpeed ** 2 : 0,
    axial: what === 'blade passing' ? PULSE * downloadShare * point.thrust : 0,
  }));
}

/** Throttle at a rotor speed, 0 to 1, between the table's points; undefined outside it. */
export function throttleAt(throttles: readonly ThrottlePoint[], angularSpeed: number): number | undefined {
  for (let i = 1; i < throttles.length; i++) {
    const [low, high] = [throttles[i - 1], throttles[i]];
    if (low === undefined || high === undefined) continue;
    if (angularSpeed < low.angularSpeed || angularSpeed > high.angularSpeed) continue;
    const share = (angularSpeed - low.angularSpeed) / Math.max(high.angularSpeed - low.angularSpeed, 1e-9);
    return low.throttle + share * (high.throttle - low.throttle);
  }
  return undefined;
}

/** The table's point at a throttle, straight between its rows. */
export function pointAt(throttles: readonly ThrottlePoint[], throttle: number): ThrottlePoint | undefined {
  const after = throttles.findIndex((each) => each.throttle >= throttle);
  const [low, high] = [throttles[Math.max(0, after - 1)], throttles[after]];
  if (low === undefined || high === undefined) return throttles.at(-1);
  const share = high.throttle > low.throttle ? (throttle - low.throttle) / (high.throttle - low.throttle) : 1;
  const mix = (a: number, b: number) => a + share * (b - a);
  return {
    throttle,
    angularSpeed: mix(low.angularSpeed, high.angularSpeed),
    thrust: mix(low.thrust, high.thrust),
  };
}
