import { apply3, type Matrix3, type Vector3 } from '../../numerics/vector3.ts';
import { quaternionOf } from './attitude.ts';
import type { Mixer } from './mixer.ts';
import {
  at,
  type Command,
  type FlightGains,
  type RotorDrive,
  type SimulationModel,
  type SimulationState,
} from './types.ts';

/**
 * The plain controller: turns a command into what each drive is asked, written into `out`: speed
 * [rad/s] or voltage [V]. Rates by proportion, attitude as a second-order loop on the quaternion's error, place
 * by tilting along the wanted acceleration, a = -k_p x - k_v v. No integral, so a steady wind leaves a
 * steady offset of drag / (m k_p). When a motor would leave its limits all moments shrink together and lift is kept.
 */
export function writeCommands(
  model: SimulationModel,
  mixer: Mixer,
  gains: FlightGains,
  command: Command,
  state: Readonly<SimulationState>,
  out: Float64Array,
): void {
  const thrusts =
    command.kind === 'thrusts' ? command.thrusts : mixed(mixer, ...wanted(model, gains, command, state));
  model.rotors.forEach(({ drive }, i) => {
    const thrust = Math.max(0, thrusts[i] ?? 0);
    const speed = Math.sqrt(thrust / (mixer.thrustFactor[i] ?? 1));
    out[i] = driveCommand(drive, speed, mixer.torqueFactor[i] ?? 0);
  });
}

function driveCommand(drive: RotorDrive, speed: number, torqueFactor: number): number {
  if (drive.kind === 'lag') return clamp(speed, drive.lowestSpeed, drive.highestSpeed);
  const torque = drive.noLoadTorque + torqueFactor * speed * speed;
  const voltage = speed / drive.speedConstant + drive.resistance * drive.speedConstant * torque;
  return clamp(voltage, drive.lowestVoltage, drive.highestVoltage);
}

/** Net thrusts for moments and lift, moments shrunk to what the limits bear at that lift. */
function mixed(mixer: Mixer, moments: Vector3, lift: number): number[] {
  let share = 1;
  const level = mixer.shares.map((s, i) => clamp(s[3] * lift, lowest(mixer, i), highest(mixer, i)));
  const turning = mixer.shares.map((s) => s[0] * moments[0] + s[1] * moments[1] + s[2] * moments[2]);
  turning.forEach((change, i) => {
    const room = change > 0 ? highest(mixer, i) - (level[i] ?? 0) : (level[i] ?? 0) - lowest(mixer, i);
    if (Math.abs(change) > room) share = Math.min(share, room / Math.abs(change));
  });
  return level.map((thrust, i) => thrust + share * (turning[i] ?? 0));
}

const lowest = (mixer: Mixer, i: number): number => mixer.lowestThrust[i] ?? 0;
const highest = (mixer: Mixer, i: number): number => mixer.highestThrust[i] ?? 0;

function wanted(
  model: SimulationModel,
  gains: FlightGains,
  command: Exclude<Command, { kind: 'thrusts' }>,
  state: Readonly<SimulationState>,
): [moments: Vector3, lift: number] {
  const rates: Vector3 = [read(state, at.rates), read(state, at.rates + 1), read(state, at.rates + 2)];
  switch (command.kind) {
    case 'moments':
      return [command.moments, command.lift];
    case 'rates': {
      const [p, q, r] = command.rates;
      const k = gains.rateGain;
      return [
        momentsFor(model.inertia, rates, [k * (p - rates[0]), k * (q - rates[1]), k * (r - rates[2])]),
        command.lift,
      ];
    }
    case 'attitude':
      return [momentsFor(model.inertia, rates, towards(gains, state, command.attitude, rates)), command.lift];
    case 'place': {
      const { attitude, lift } = lean(model, gains, command.place, command.heading, state);
      return [momentsFor(model.inertia, rates, towards(gains, state, attitude, rates)), lift];
    }
  }
}

/** I a + w x I w: the moments of wanted turn accelerations. */
function momentsFor(inertia: Matrix3, [p, q, r]: Vector3, acceleration: Vector3): Vector3 {
  const [hx, hy, hz] = apply3(inertia, [p, q, r]);
  const [mx, my, mz] = apply3(inertia, acceleration);
  return [mx + q * hz - r * hy, my + r * hx - p * hz, mz + p * hy - q * hx];
}

/** Turn acceleration towards an attitude: f^2 error - 2 zeta f rate, error about the craft's own axes. */
function towards(
  gains: FlightGains,
  state: Readonly<SimulationState>,
  attitude: Vector3,
  rates: Vector3,
): Vector3 {
  const [a, b, c, d] = quaternionOf(attitude);
  const [w, x, y, z] = [read(state, 6), read(state, 7), read(state, 8), read(state, 9)];
  const f2 = gains.tiltFrequency ** 2;
  const damping = 2 * gains.tiltDamping * gains.tiltFrequency;
  // conj(q) * q_wanted; twice its vector part is the turn that is left, the short way round.
  const sign = w * a + x * b + y * c + z * d < 0 ? -2 : 2;
  return [
    sign * (w * b - x * a - y * d + z * c) * f2 - damping * rates[0],
    sign * (w * c + x * d - y * a - z * b) * f2 - damping * rates[1],
    sign * (w * d - x * c + y * b - z * a) * f2 - damping * rates[2],
  ];
}

/** Attitude [rad] and lift [N] that holding a place asks for. */
export function lean(
  model: SimulationModel,
  gains: FlightGains,
  place: Vector3,
  heading: number,
  state: Readonly<SimulationState>,
): { readonly attitude: Vector3; readonly lift: number } {
  const wantedAlong = (i: 0 | 1 | 2): number =>
    gains.placeGain * (place[i] - read(state, at.place + i)) - gains.speedGain * read(state, at.velocity + i);
  const [north, east, down] = [wantedAlong(0), wantedAlong(1), wantedAlong(2)];
  const [c, s] = [Math.cos(heading), Math.sin(heading)];
  const limit = gains.largestTilt;
  const pitch = clamp(-Math.atan((c * north + s * east) / model.gravity), -limit, limit);
  const roll = clamp(Math.atan((c * east - s * north) / model.gravity), -limit, limit);
  const upright = Math.cos(pitch) * Math.cos(roll);
  return {
    attitude: [roll, pitch, heading],
    lift: (model.mass * Math.max(0.1 * model.gravity, model.gravity - down)) / upright,
  };
}

const read = (state: Readonly<SimulationState>, i: number): number => state[i] as number;

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
