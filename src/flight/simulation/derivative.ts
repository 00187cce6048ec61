import { type BarDrag, writeBodyForce } from '../forward/bodyDrag.ts';
import { writeRotation } from './attitude.ts';
import type { PreparedCraft, PreparedRotor } from './prepare.ts';
import { at, type SimulationState } from './types.ts';

const NO_BARS: readonly BarDrag[] = [];

/**
 * Rates of change of the state of one rigid craft with turning rotors [per s]: Newton for the centre of
 * gravity, Euler for the body with the rotors' angular momentum in it,
 *
 *     I w' = M - w x (I w + sum J W s) - sum J W' s,
 *
 * s a rotor's spin axis, W its speed, J its polar moment. The last term and the propeller's torque
 * together are the motor's reaction, so angular momentum is kept when nothing outside acts. (Stevens,
 * Lewis and Johnson, Aircraft Control and Simulation, ch. 1; quaternion kinematics ibid.)
 *
 * Forces: each rotor's thrust at its own axial speed (so rolling is damped), its in-plane drag, the body's
 * drag by `writeBodyForce`, weight. Edgewise flow changes thrust and torque, and makes side forces and hub
 * moments, only for rotors that have an `oblique` reader.
 *
 * @param commands what the drives are asked: speed [rad/s] for a lag, voltage [V] for a motor
 * @param wind in the world [m/s]
 * @param out as long as the state
 */
export function writeDerivative(
  craft: PreparedCraft,
  state: Readonly<SimulationState>,
  commands: Readonly<Float64Array>,
  wind: Readonly<Float64Array>,
  out: SimulationState,
): void {
  const { model, scratch } = craft;
  const { loads, rotation: r } = scratch;
  const value = (i: number): number => state[i] as number;
  const turn = (i: number): number => r[i] as number;
  writeRotation(state, at.attitude, r);
  const p = value(at.rates);
  const q = value(at.rates + 1);
  const s = value(at.rates + 2);

  // Through the air, in the craft's axes: the transpose of the rotation.
  const wx = value(at.velocity) - (wind[0] as number);
  const wy = value(at.velocity + 1) - (wind[1] as number);
  const wz = value(at.velocity + 2) - (wind[2] as number);
  const u = turn(0) * wx + turn(3) * wy + turn(6) * wz;
  const v = turn(1) * wx + turn(4) * wy + turn(7) * wz;
  const w = turn(2) * wx + turn(5) * wy + turn(8) * wz;

  writeBodyForce(model.dragArea, model.bars ?? NO_BARS, u, v, w, model.airDensity, scratch.force);
  let fx = scratch.force[0] as number;
  let fy = scratch.force[1] as number;
  let fz = scratch.force[2] as number;
  const [dx, dy, dz] = craft.dragLever;
  let mx = dy * fz - dz * fy;
  let my = dz * fx - dx * fz;
  let mz = dx * fy - dy * fx;
  let hx = 0;
  let hy = 0;
  let hz = 0;

  for (let i = 0; i < craft.rotors.length; i++) {
    const prepared = craft.rotors[i] as PreparedRotor;
    const { rotor, lever, axis, spinAxis } = prepared;
    const speed = value(at.rotors + i);
    const hubX = u + q * lever[2] - s * lever[1];
    const hubY = v + s * lever[0] - p * lever[2];
    const hubZ = w + p * lever[1] - q * lever[0];
    const axial = hubX * axis[0] + hubY * axis[1] + hubZ * axis[2];
    const edgeX = hubX - axial * axis[0];
    const edgeY = hubY - axial * axis[1];
    const edgeZ = hubZ - axial * axis[2];
    let drag: number; // in-plane force over edgewise speed
    let side = 0; // the same of the force to the right of the way, and of the hub moments
    let tipAside = 0;
    let tipAft = 0;
    if (rotor.oblique === undefined) {
      rotor.rotor(speed, axial, loads);
      drag = -model.inPlaneDragPerThrust * loads.thrust;
    } else {
      const edgewise = Math.hypot(edgeX, edgeY, edgeZ);
      rotor.oblique(speed, axial, edgewise, loads);
      const per = edgewise > 0 ? 1 / edgewise : 0;
      drag = -loads.inPlaneForce * per;
      // A rotor that turns clockwise seen from above advances on its left.
      side = -rotor.spin * loads.sideForce * per;
      tipAside = -rotor.spin * loads.momentAdvancingUp * per;
      tipAft = loads.momentAftUp * per;
    }
    const thrust = loads.thrust * (1 - rotor.downloadShare);
    // Right of the way: the edgewise velocity crossed with the thrust axis.
    const rightX = edgeY * axis[2] - edgeZ * axis[1];
    const rightY = edgeZ * axis[0] - edgeX * axis[2];
    const rightZ = edgeX * axis[1] - edgeY * axis[0];
    const gx = thrust * axis[0] + drag * edgeX + side * rightX;
    const gy = thrust * axis[1] + drag * edgeY + side * rightY;
    const gz = thrust * axis[2] + drag * edgeZ + side * rightZ;
    const spinUp = rotorAcceleration(prepared, speed, loads.torque, commands[i] as number);
    const reaction = loads.torque + rotor.rotatingInertia * spinUp;
    const momentum = rotor.rotatingInertia * speed;
    fx += gx;
    fy += gy;
    fz += gz;
    // Lifting the right side turns against the way; lifting the aft side, against the right.
    mx += lever[1] * gz - lever[2] * gy - reaction * spinAxis[0] - tipAside * edgeX - tipAft * rightX;
    my += lever[2] * gx - lever[0] * gz - reaction * spinAxis[1] - tipAside * edgeY - tipAft * rightY;
    mz += lever[0] * gy - lever[1] * gx - reaction * spinAxis[2] - tipAside * edgeZ - tipAft * rightZ;
    hx += momentum * spinAxis[0];
    hy += momentum * spinAxis[1];
    hz += momentum * spinAxis[2];
    out[at.rotors + i] = spinUp;
  }

  const [ix, iy, iz] = model.inertia;
  hx += ix[0] * p + ix[1] * q + ix[2] * s;
  hy += iy[0] * p + iy[1] * q + iy[2] * s;
  hz += iz[0] * p + iz[1] * q + iz[2] * s;
  mx -= q * hz - s * hy;
  my -= s * hx - p * hz;
  mz -= p * hy - q * hx;
  const [jx, jy, jz] = craft.inverseInertia;
  out[at.rates] = jx[0] * mx + jx[1] * my + jx[2] * mz;
  out[at.rates + 1] = jy[0] * mx + jy[1] * my + jy[2] * mz;
  out[at.rates + 2] = jz[0] * mx + jz[1] * my + jz[2] * mz;

  for (let i = 0; i < 3; i++) {
    out[at.place + i] = value(at.velocity + i);
    out[at.velocity + i] = (turn(3 * i) * fx + turn(3 * i + 1) * fy + turn(3 * i + 2) * fz) / model.mass;
  }
  out[at.velocity + 2] = (out[at.velocity + 2] as number) + model.gravity;

  const [a, b, c, d] = [value(6), value(7), value(8), value(9)];
  out[at.attitude] = 0.5 * (-b * p - c * q - d * s);
  out[at.attitude + 1] = 0.5 * (a * p + c * s - d * q);
  out[at.attitude + 2] = 0.5 * (a * q - b * s + d * p);
  out[at.attitude + 3] = 0.5 * (a * s + b * q - c * p);
}

/** [rad/s2], under the propeller's torque [N m] and the drive's command. */
function rotorAcceleration({ rotor }: PreparedRotor, speed: number, torque: number, command: number): number {
  const { drive } = rotor;
  if (drive.kind === 'lag') return (command - speed) / drive.timeConstant;
  const current = (command - speed / drive.speedConstant) / drive.resistance;
  return (current / drive.speedConstant - drive.noLoadTorque - torque) / rotor.rotatingInertia;
}
