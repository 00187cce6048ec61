import { noSolution, type Outcome, solved } from '../numerics/outcome.ts';
import { withUnit } from '../units/formatQuantity.ts';
import { balanceOf, type Effectiveness, effectivenessOf, leastThrusts } from './allocation.ts';
import type { Circuit } from './circuit.ts';
import { distanceOutside } from './hull.ts';
import { emptyLoad, type Load, loadForThrusts } from './load.ts';
import type { FlightModel } from './types.ts';

/** How an aircraft stands still in the air, motor by motor. */
export interface HoverTrim {
  /** Net of download [N], one a station, about the true centre of gravity. */
  readonly thrusts: Float64Array;
  /** What the motors turn at for it; does not depend on the battery. */
  readonly load: Load;
  /** Tilt of a tail servo [rad], positive tilts the thrust to the right; 0 without one. */
  readonly servoAngle: number;
  /** Attitude that points the summed thrust straight up [rad]: 0 unless rotors are canted. Nose up and right side down. */
  readonly pitch: number;
  readonly roll: number;
}

/** Reaction torques follow the thrusts, so allocation and rotor take turns; the ratio hardly moves. */
const ROUNDS = 60;
/** Of weight; a round's change is some hundred times smaller than the last one's, so what is left is below 1e-9. */
const SETTLED = 1e-7;

/**
 * Thrusts that hold weight and leave no roll, pitch or yaw moment about the centre of gravity. Never assumes equal
 * motors. Four motors leave no freedom; with more, least square sum. A tail servo takes the yaw where there is one.
 *
 * No solution when the centre of gravity lies outside the motors, when reaction torques cannot balance, or
 * when a propeller cannot give its share. Whether battery and motors can is another question (`feed`).
 *
 * @param near a trim of nearly the same aircraft, to start from: saves two thirds of the work and changes nothing
 */
export function hoverTrim(model: FlightModel, circuit: Circuit, near?: HoverTrim): Outcome<HoverTrim> {
  const count = model.stations.length;
  const servo = model.stations.findIndex((station) => station.servoTilt !== undefined);
  const ratios = new Float64Array(count);
  const load = emptyLoad(count);
  let thrusts: Float64Array = new Float64Array(count).fill(circuit.weight / count);
  let servoAngle = 0;
  if (near?.thrusts.length === count) {
    thrusts = near.thrusts.slice();
    servoAngle = near.servoAngle;
    load.angularSpeed.set(near.load.angularSpeed);
  }
  for (let round = 0; round < ROUNDS; round++) {
    const turning = loadForThrusts(circuit, thrusts, 0, load);
    if (!turning.ok) return turning;
    for (let i = 0; i < count; i++) {
      const net = thrusts[i] as number;
      if (net > 0) ratios[i] = (load.torque[i] as number) / net;
    }
    const stations =
      servo < 0 || servoAngle === 0
        ? model.stations
        : model.stations.map((station, i) =>
            i === servo
              ? { ...station, thrustAxis: [0, Math.sin(servoAngle), -Math.cos(servoAngle)] as const }
              : station,
          );
    const effect = effectivenessOf(stations, model.centreOfGravity, ratios);
    const { rows } = balanceOf(effect, model.stations, model.centreOfGravity, servo < 0);
    const shares = leastThrusts(rows, servo < 0 ? [1, 0, 0, 0] : [1, 0, 0]);
    if (!shares.ok) return noSolution(whyNot(model, rows));
    const tilt = tiltOf(effect, shares.value);
    let change = 0;
    for (let i = 0; i < count; i++) {
      const next = ((shares.value[i] as number) * circuit.weight) / tilt.magnitude;
      change = Math.max(change, Math.abs(next - (thrusts[i] as number)));
      shares.value[i] = next;
    }
    thrusts = shares.value;
    if (servo >= 0) {
      const asked = servoFor(model, servo, servoAngle, ratios, thrusts);
      if (!asked.ok) return asked;
      change = Math.max(change, Math.abs(asked.value - servoAngle) * circuit.weight);
      servoAngle = asked.value;
    }
    if (change <= SETTLED * circuit.weight) {
      const last = loadForThrusts(circuit, thrusts, 0, load);
      return last.ok ? solved({ thrusts, load, servoAngle, pitch: tilt.pitch, roll: tilt.roll }) : last;
    }
  }
  return noSolution('reaction torques and thrusts do not settle on one another');
}

/** Length and direction of the summed thrust of given shares. */
function tiltOf(
  effect: Effectiveness,
  shares: ArrayLike<number>,
): { magnitude: number; pitch: number; roll: number } {
  const sum = (row: readonly number[]): number =>
    row.reduce((total, value, i) => total + value * (shares[i] ?? 0), 0);
  const up = sum(effect.lift);
  const forward = sum(effect.forward);
  const right = sum(effect.right);
  return {
    magnitude: Math.hypot(up, forward, right),
    pitch: Math.atan2(forward, up),
    roll: -Math.atan2(right, up),
  };
}

/** Tilt of the tail servo whose sideways thrust cancels the reaction torques [rad]. */
function servoFor(
  model: FlightModel,
  servo: number,
  angle: number,
  ratios: ArrayLike<number>,
  thrusts: ArrayLike<number>,
): Outcome<number> {
  const station = model.stations[servo];
  if (station === undefined) return solved(0);
  const reaction = model.stations.reduce(
    (sum, other, i) =>
      sum - other.spin * (ratios[i] ?? 0) * (thrusts[i] ?? 0) * (i === servo ? Math.cos(angle) : 1),
    0,
  );
  const lever = station.position[0] - model.centreOfGravity[0];
  const sine = -reaction / (lever * (thrusts[servo] ?? 0));
  const limit = station.servoTilt ?? 0;
  if (!(Math.abs(sine) <= Math.sin(limit))) {
    const asked = (Math.asin(Math.min(Math.abs(sine), 1)) * 180) / Math.PI;
    return noSolution(
      `the tail servo would have to tilt ${asked.toFixed(0)} degrees to hold the yaw; it goes to ${((limit * 180) / Math.PI).toFixed(0)}`,
    );
  }
  return solved(Math.asin(sine));
}

/** The reason in words why no thrusts balance. */
function whyNot(model: FlightModel, rows: readonly (readonly number[])[]): string {
  const points = model.stations.map(({ position }) => [position[0], position[1]] as const);
  const outside = distanceOutside(points, [model.centreOfGravity[0], model.centreOfGravity[1]]);
  if (outside > 0) {
    return `the centre of gravity lies ${withUnit((outside * 1000).toFixed(0), 'mm')} outside the motors: no thrusts can balance it`;
  }
  const withoutYaw = leastThrusts(rows.slice(0, 3), [1, 0, 0]);
  return withoutYaw.ok
    ? 'the reaction torques of the propellers cannot be balanced together with the centre of gravity: check the spins, or bring the centre of gravity to the middle'
    : 'the motors cannot balance weight and moments together';
}
